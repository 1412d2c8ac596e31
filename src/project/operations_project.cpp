#include <algorithm>

#include "base/text.hpp"
#include "form/form.hpp"
#include "project/json.hpp"
#include "project/operation_reader.hpp"
#include "project/strand_start.hpp"

namespace evencount::project {
namespace {

using json::Node;

/// The fields given, in order.
using Given = std::vector<std::pair<std::string_view, const Node*>>;

Given read_given(OperationReader& reader, std::span<const std::string_view> names) {
  Given given;
  for (const std::string_view name : names)
    if (const Node* value = reader.value(name)) given.emplace_back(name, value);
  return given;
}

std::string names_of(const Given& given) {
  std::string names;
  for (const auto& [name, value] : given) names += (names.empty() ? "" : ", ") + std::string(name);
  return names.empty() ? "nothing" : names;
}

constexpr std::string_view form_fields[] = {"shape", "name", "points"};

Result<Applied> add_form(const Project& project, OperationReader& reader) {
  const std::string shape = reader.text("shape");
  std::string id = reader.text_or("id", "");
  const Given given = read_given(reader, form_fields);
  if (!reader.finish()) return reader.problem();
  for (std::size_t i = project.forms.size() + 1; id.empty(); ++i)
    if (std::string tried = fmt::format("form-{}", i); !find_form(project, tried)) id = tried;
  Node entry{json::Object{}};
  set_member(entry, "id", Node(id));
  for (const auto& [name, value] : given) set_member(entry, name, *value);
  if (const auto form = form::parse_form(shape); form && !find_member(entry, "name"))
    set_member(entry, "name", Node(form::describe(*form)));
  Draft draft(project);
  draft.list("forms").push_back(std::move(entry));
  return std::move(draft).finish("added the form " + shape);
}

/// Where a form stands in the list.
std::optional<std::size_t> form_place(const Project& project, OperationReader& reader) {
  const std::string id = reader.text("id");
  const auto found = std::find_if(project.forms.begin(), project.forms.end(),
                                  [&](const FormEntry& entry) { return entry.id == id; });
  if (found != project.forms.end()) return static_cast<std::size_t>(found - project.forms.begin());
  reader.refuse(ProblemCode::unknown_name, "id", quote(id), "one of the project's forms");
  return std::nullopt;
}

Result<Applied> change_form(const Project& project, OperationReader& reader) {
  const auto place = form_place(project, reader);
  const Given given = read_given(reader, form_fields);
  if (!reader.finish()) return reader.problem();
  Draft draft(project);
  Node& entry = draft.list("forms")[*place];
  for (const auto& [name, value] : given) set_member(entry, name, *value);
  // A name that only says the shape goes with it.
  const FormEntry& before = project.forms[*place];
  const auto named = [](const auto& field) { return field.first == "name"; };
  if (before.name == form::describe(before.form) && std::none_of(given.begin(), given.end(), named))
    if (const auto* text = find_member(entry, "shape")->as<std::string>())
      if (const auto form = form::parse_form(*text)) set_member(entry, "name", Node(form::describe(*form)));
  // Measured points belong to an outline only.
  const auto* shape = find_member(entry, "shape")->as<std::string>();
  if (shape && !shape->starts_with("outline:")) set_member(entry, "points", Node{});
  return std::move(draft).finish(
      fmt::format("changed {} of the form {}", names_of(given), project.forms[*place].id));
}

Result<Applied> remove_form(const Project& project, OperationReader& reader) {
  const auto place = form_place(project, reader);
  if (place)
    for (const Band& band : project.bands)
      if (band.form == project.forms[*place].id)
        reader.refuse(ProblemCode::in_use, "id", fmt::format("a form that {} goes round", quote(band.name)),
                      "a form that no band goes round");
  if (place && is_strung(project, project.forms[*place].id))
    reader.refuse(ProblemCode::in_use, "id", "a form that is strung as it is", "a form that is not on the strand");
  if (!reader.finish()) return reader.problem();
  Applied applied{project, "removed the form " + project.forms[*place].id};
  applied.project.forms.erase(applied.project.forms.begin() + static_cast<std::ptrdiff_t>(*place));
  return applied;
}

constexpr std::string_view text_fields[] = {"title",   "subtitle",      "designer",
                                            "summary", "finished_size", "terms"};

Result<Applied> change_texts(const Project& project, OperationReader& reader) {
  const Given given = read_given(reader, text_fields);
  if (!reader.finish()) return reader.problem();
  Draft draft(project);
  for (const auto& [name, value] : given) draft.set(name, *value);
  return std::move(draft).finish("changed the " + names_of(given));
}

Result<Applied> change_thread(const Project& project, OperationReader& reader) {
  const Node* given = reader.require("thread");
  const auto* fields = given ? given->as<json::Object>() : nullptr;
  if (given && !fields) reader.refuse(ProblemCode::wrong_type, "thread", json::describe(*given), "an object");
  if (!reader.finish()) return reader.problem();
  Draft draft(project);
  Node thread = *find_member(draft.outline, "thread");
  // Another thread has other figures: those of the old one go with its id.
  const auto* id = find_member(*given, "id");
  if (id && *id != *find_member(thread, "id"))
    for (const std::string_view name : {"name", "diameter_mm", "source"}) set_member(thread, name, Node{});
  for (const auto& [name, value] : *fields) set_member(thread, name, value);
  draft.set("thread", std::move(thread));
  return std::move(draft).finish("changed the thread");
}

/// One field of the project, put in as it is.
Result<Applied> set_field(const Project& project, OperationReader& reader, std::string_view name) {
  const Node* value = reader.require(name);
  if (!reader.finish()) return reader.problem();
  Draft draft(project);
  draft.set(name, *value);
  return std::move(draft).finish("changed the " + std::string(name));
}

Result<Applied> set_allowance(const Project& project, OperationReader& reader) {
  return set_field(project, reader, "allowance");
}
Result<Applied> set_findings(const Project& project, OperationReader& reader) {
  return set_field(project, reader, "findings");
}
Result<Applied> set_tools(const Project& project, OperationReader& reader) {
  return set_field(project, reader, "tools");
}
Result<Applied> set_assembly(const Project& project, OperationReader& reader) {
  return set_field(project, reader, "assembly");
}
Result<Applied> set_beads(const Project& project, OperationReader& reader) {
  return set_field(project, reader, "beads");
}
Result<Applied> set_gauges(const Project& project, OperationReader& reader) {
  return set_field(project, reader, "gauges");
}

Result<Applied> set_costing(const Project& project, OperationReader& reader) {
  return set_field(project, reader, "costing");
}

Result<Applied> set_strand(const Project& project, OperationReader& reader) {
  return set_field(project, reader, "strand");
}

Result<Applied> replace(const Project&, OperationReader& reader) {
  const Node* whole = reader.require("project");
  const std::string sentence = reader.text_or("sentence", "replaced the project");
  if (!reader.finish()) return reader.problem();
  auto project = read_project(*whole);
  if (!project) return project.problem();
  return Applied{std::move(*project), sentence};
}

Result<Applied> several(const Project& project, OperationReader& reader) {
  const std::string sentence = reader.text_or("sentence", "");
  Applied applied{project, ""};
  std::string together;
  reader.fields().each("operations", most_operations, true, [&](const Node& node, const json::Place& place) {
    if (reader.report().failed()) return;
    auto next = apply_node(applied.project, node, place, true);
    if (!next) return reader.report().add_as_is(next.problem());
    together += (together.empty() ? "" : "; ") + next->sentence;
    applied = std::move(*next);
  });
  if (!reader.finish()) return reader.problem();
  applied.sentence = sentence.empty() ? together : sentence;
  return applied;
}

constexpr OperationRow rows[] = {
    {"add_form", add_form},
    {"change_form", change_form},
    {"remove_form", remove_form},
    {"change_texts", change_texts},
    {"change_thread", change_thread},
    {"set_allowance", set_allowance},
    {"set_findings", set_findings},
    {"set_tools", set_tools},
    {"set_assembly", set_assembly},
    {"set_beads", set_beads},
    {"set_gauges", set_gauges},
    {"set_costing", set_costing},
    {"set_strand", set_strand},
    {"replace", replace},
    {"several", several},
};

}  // namespace

std::span<const OperationRow> project_operations() {
  return rows;
}

}  // namespace evencount::project
