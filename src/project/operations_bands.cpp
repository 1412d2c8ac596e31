#include <algorithm>
#include <map>

#include "base/text.hpp"
#include "project/new_band.hpp"
#include "project/operation_reader.hpp"
#include "project/read_band.hpp"
#include "project/resize.hpp"
#include "project/resized_band.hpp"
#include "project/strand_start.hpp"

namespace evencount::project {
namespace {

using json::Node;

std::string shown(const Band& band) {
  return band.name.empty() ? "a band" : band.name;
}

std::optional<bead::Gauge> gauge_of(OperationReader& reader) {
  const Node* node = reader.value("gauge");
  if (!node) return std::nullopt;
  UnknownFields unknown;
  return read_gauge(*node, reader.fields().place_of("gauge"), unknown, reader.report());
}

NewBand read_new_band(const Project& project, OperationReader& reader) {
  NewBand wanted;
  wanted.name = reader.text_or("name", fmt::format("Band {}", project.bands.size() + 1));
  wanted.technique = reader.text_or("technique", "");
  wanted.bead = reader.text_or("bead", project.beads.empty() ? "cylinder-11" : project.beads.front().id);
  if (reader.has("form")) wanted.form = reader.text("form");
  if (const auto use = reader.choice("use", &form::parse_use)) wanted.use = *use;
  wanted.closure = reader.choice("closure", &weave::parse_closure);
  wanted.begin_at = reader.whole_if("begin_at", 0, 2 * chart::most_edge).value_or(0);
  wanted.gauge = gauge_of(reader);
  wanted.columns = reader.whole_if("columns", 1, chart::most_columns);
  wanted.edge = reader.whole_if("edge", 1, chart::most_edge);
  wanted.rows = reader.whole_if("rows", 2, 2 * chart::most_edge);
  wanted.ground = reader.letter_if("letter").value_or(chart::Bead{0});
  return wanted;
}

/// Whatever came of it is within the limits of a project file.
Result<Applied> checked(Project project, std::string sentence) {
  return Draft(project).finish(std::move(sentence));
}

Result<Applied> add_band(const Project& project, OperationReader& reader) {
  const NewBand wanted = read_new_band(project, reader);
  const int count = static_cast<int>(project.bands.size());
  const int at = reader.whole_if("at", 0, count).value_or(count);
  if (project.legend.empty())
    reader.refuse(ProblemCode::missing_field, "letter", "an empty legend",
                  "a bead in the legend to begin with");
  if (!reader.finish()) return reader.problem();
  Project changed = project;
  if (auto added = add_known_bead(changed, wanted.bead, "/bead"); !added) return added.problem();
  auto band = new_band(changed, wanted);
  if (!band) return band.problem();
  std::string sentence =
      fmt::format("added {}, {} x {}", shown(*band), band->chart.columns(), band->chart.edge());
  changed.bands.insert(changed.bands.begin() + at, std::move(*band));
  return checked(std::move(changed), std::move(sentence));
}

Result<Applied> remove_band(const Project& project, OperationReader& reader) {
  const int band = reader.band();
  if (!reader.finish()) return reader.problem();
  const std::string& name = project.bands[static_cast<std::size_t>(band)].name;
  Applied applied{project, "removed " + shown(project.bands[static_cast<std::size_t>(band)])};
  // A namesake takes its place on the strand.
  const auto namesakes = std::count_if(project.bands.begin(), project.bands.end(),
                                       [&](const Band& one) { return one.name == name; });
  if (namesakes == 1 && take_off_strand(project, name, applied.project))
    applied.sentence += applied.project.strand ? ", from the strand too" : " and the strand that only it was on";
  applied.project.bands.erase(applied.project.bands.begin() + band);
  return applied;
}

std::string free_name(const Project& project, const std::string& name) {
  for (int i = 2;; ++i) {
    std::string tried = fmt::format("{} {}", name, i);
    if (std::none_of(project.bands.begin(), project.bands.end(),
                     [&](const Band& band) { return band.name == tried; }))
      return tried;
  }
}

Result<Applied> duplicate_band(const Project& project, OperationReader& reader) {
  const int band = reader.band();
  if (reader.report().failed()) return reader.problem();
  Band copy = project.bands[static_cast<std::size_t>(band)];
  copy.name = reader.text_or("name", free_name(project, copy.name));
  if (!reader.finish()) return reader.problem();
  std::string sentence =
      fmt::format("copied {} as {}", shown(project.bands[static_cast<std::size_t>(band)]), shown(copy));
  Project changed = project;
  changed.bands.insert(changed.bands.begin() + band + 1, std::move(copy));
  return checked(std::move(changed), std::move(sentence));
}

Result<Applied> move_band(const Project& project, OperationReader& reader) {
  const int band = reader.band(), to = reader.band("to");
  if (!reader.finish()) return reader.problem();
  Applied applied{project, fmt::format("moved {} to place {}",
                                       shown(project.bands[static_cast<std::size_t>(band)]), to + 1)};
  const auto first = applied.project.bands.begin();
  if (band < to) std::rotate(first + band, first + band + 1, first + to + 1);
  if (to < band) std::rotate(first + to, first + band, first + band + 1);
  return applied;
}

constexpr std::string_view band_fields[] = {"name",     "technique", "closure", "use",  "gauge",
                                            "begin_at", "copies",    "note",    "form", "bead"};

/// What can be stitched stays so: a technique or closure that can't make the chart is refused, naming why.
Result<Done> check_still_stitched(const Band& before, const Band& after) {
  if (before.technique == after.technique && before.closure == after.closure &&
      before.begin_at == after.begin_at)
    return Done{};
  if (!plan_of(before)) return Done{};
  if (const auto plan = plan_of(after); !plan) return plan.problem();
  return Done{};
}

/// The strand goes on meaning a band by another name, unless it means the first of several with the old one.
Result<Done> keep_strung(const Project& project, std::size_t band, Project& changed) {
  const std::string& before = project.bands[band].name;
  const auto first = std::find_if(project.bands.begin(), project.bands.end(),
                                  [&](const Band& one) { return one.name == before; });
  if (static_cast<std::size_t>(first - project.bands.begin()) != band) return Done{};
  return rename_on_strand(project, before, changed.bands[band].name, changed);
}

Result<Applied> change_band(const Project& project, OperationReader& reader) {
  const int band = reader.band();
  std::vector<std::pair<std::string_view, const Node*>> given;
  for (const std::string_view name : band_fields)
    if (const Node* value = reader.value(name)) given.emplace_back(name, value);
  if (!reader.finish()) return reader.problem();
  Project wider = project;
  std::string words;
  for (const auto& [name, value] : given) {
    words += (words.empty() ? "" : ", ") + std::string(name);
    const auto* id = name == "bead" ? value->as<std::string>() : nullptr;
    if (!id) continue;
    if (auto added = add_known_bead(wider, *id, "/bead"); !added) return added.problem();
  }
  Draft draft(wider);
  Node& there = draft.list("bands")[static_cast<std::size_t>(band)];
  for (const auto& [name, value] : given) set_member(there, name, *value);
  auto applied = std::move(draft).finish(
      fmt::format("changed {} of {}", words, shown(project.bands[static_cast<std::size_t>(band)])));
  if (!applied) return applied.problem();
  const auto i = static_cast<std::size_t>(band);
  if (auto good = check_still_stitched(project.bands[i], applied->project.bands[i]); !good)
    return good.problem();
  if (auto good = keep_strung(project, i, applied->project); !good) return good.problem();
  return applied;
}

Result<Applied> resize_band(const Project& project, OperationReader& reader) {
  const int band = reader.band();
  const int columns = reader.whole("columns", 1, chart::most_columns),
            edge = reader.whole("edge", 1, chart::most_edge);
  CarryOptions options;
  options.method = reader.choice("carry", &parse_carry).value_or(Carry::centre);
  options.border = reader.letter_if("letter");
  if (!reader.finish()) return reader.problem();
  auto resized = resized_to(project.bands[static_cast<std::size_t>(band)], columns, edge, options);
  if (!resized) return resized.problem();
  Project changed = project;
  std::string sentence = fmt::format("resized {} to {} x {}", shown(*resized), columns, edge);
  changed.bands[static_cast<std::size_t>(band)] = std::move(*resized);
  return checked(std::move(changed), std::move(sentence));
}

/// An object of texts.
std::map<std::string, std::string> texts_by_name(OperationReader& reader, std::string_view name) {
  std::map<std::string, std::string> texts;
  const Node* node = reader.value(name);
  if (!node) return texts;
  const auto* object = node->as<json::Object>();
  if (!object) reader.refuse(ProblemCode::wrong_type, name, json::describe(*node), "an object of texts");
  const json::Place place = reader.fields().place_of(name);
  if (object)
    for (const auto& [key, value] : *object)
      texts[key] = json::read_text(value, place.member(key), reader.report());
  return texts;
}

Result<Applied> resize_all(const Project& project, OperationReader& reader) {
  ResizeRequest request;
  request.beads = texts_by_name(reader, "beads");
  for (const auto& [id, notation] : texts_by_name(reader, "forms")) {
    auto form = form::parse_form(notation);
    if (form)
      request.forms.emplace(id, std::move(*form));
    else
      reader.refuse(form.problem().code, "forms", form.problem().found, form.problem().expected);
  }
  if (const auto flat = reader.choice("flat", &parse_flat_keeps)) request.flat = *flat;
  request.carry = reader.choice("carry", &parse_carry);
  if (reader.has("border")) request.border = reader.text("border");
  if (!reader.finish()) return reader.problem();
  auto resized = resize(project, request);
  if (!resized) return resized.problem();
  std::string names;
  for (const BandResize& band : resized->bands) names += (names.empty() ? "" : ", ") + band.name;
  return checked(std::move(resized->project), "resized " + (names.empty() ? "nothing" : names));
}

constexpr OperationRow rows[] = {
    {"add_band", add_band},   {"remove_band", remove_band}, {"duplicate_band", duplicate_band},
    {"move_band", move_band}, {"change_band", change_band}, {"resize_band", resize_band},
    {"resize", resize_all},
};

}  // namespace

std::span<const OperationRow> band_operations() {
  return rows;
}

}  // namespace evencount::project
