#include "project/operation_reader.hpp"

#include <algorithm>

#include "base/text.hpp"

namespace evencount::project {
namespace {

constexpr std::string_view empty_cell = ".";

std::optional<chart::Symmetry> symmetry_of(std::string_view name) {
  if (name == "mirror_across") return chart::Symmetry::mirror_across;
  if (name == "mirror_along") return chart::Symmetry::mirror_along;
  if (name == "half_turn") return chart::Symmetry::half_turn;
  return std::nullopt;
}

int read_coordinate(const json::Node& node, const json::Place& place, int most, json::Report& report) {
  const auto* number = node.as<json::Number>();
  const auto value = number ? parse_integer(number->digits) : std::nullopt;
  if (value && *value >= 0 && *value < most) return static_cast<int>(*value);
  report.add(value ? ProblemCode::out_of_range : ProblemCode::wrong_type, place, json::describe(node),
             fmt::format("a whole number from 0 to {}", most - 1));
  return 0;
}

}  // namespace

chart::Cell read_cell(const json::Node& node, const json::Place& place, json::Report& report) {
  const auto* pair = node.as<json::Array>();
  if (!pair || pair->size() != 2) {
    report.add(ProblemCode::wrong_type, place, json::describe(node), "[column, step]");
    return {};
  }
  return {read_coordinate((*pair)[0], place.item(0), chart::most_columns, report),
          read_coordinate((*pair)[1], place.item(1), chart::most_edge, report)};
}

std::optional<int> OperationReader::whole_if(std::string_view name, int least, int most) {
  if (!has(name)) return std::nullopt;
  return whole(name, least, most);
}

bool OperationReader::flag(std::string_view name) {
  const json::Node* node = fields_.find(name);
  if (!node) return false;
  if (const auto* truth = node->as<bool>()) return *truth;
  refuse(ProblemCode::wrong_type, name, json::describe(*node), "true or false");
  return false;
}

int OperationReader::band(std::string_view name) {
  const int count = static_cast<int>(project_.bands.size());
  if (count == 0) {
    (void)fields_.find(name);
    refuse(ProblemCode::out_of_range, name, "a band", "nothing: the project has no bands yet");
    return 0;
  }
  return whole(name, 0, count - 1);
}

chart::Bead OperationReader::bead_named(const std::string& letter, const json::Place& place) {
  const auto letters = letters_of(project_);
  const auto found = std::find(letters.begin(), letters.end(), letter);
  if (found != letters.end()) return static_cast<chart::Bead>(found - letters.begin());
  report_.add(ProblemCode::unknown_name, place, quote(letter), json::one_of(letters));
  return 0;
}

chart::Bead OperationReader::letter(std::string_view name) {
  const std::string letter = text(name);
  return report_.failed() ? chart::Bead{0} : bead_named(letter, fields_.place_of(name));
}

chart::Bead OperationReader::letter_or_empty(std::string_view name) {
  const std::string letter = text(name);
  if (letter == empty_cell) return chart::no_bead;
  return report_.failed() ? chart::Bead{0} : bead_named(letter, fields_.place_of(name));
}

std::optional<chart::Bead> OperationReader::letter_if(std::string_view name) {
  if (!has(name)) return std::nullopt;
  return letter(name);
}

chart::Cell OperationReader::cell(std::string_view name) {
  const json::Node* node = fields_.require(name);
  return node ? read_cell(*node, fields_.place_of(name), report_) : chart::Cell{};
}

std::vector<chart::Cell> OperationReader::cells(std::string_view name) {
  std::vector<chart::Cell> cells;
  fields_.each(name, chart::most_cells, true, [&](const json::Node& node, const json::Place& place) {
    cells.push_back(read_cell(node, place, report_));
  });
  return cells;
}

std::vector<chart::Symmetry> OperationReader::mirror() {
  std::vector<chart::Symmetry> symmetries;
  fields_.each("mirror", 3, false, [&](const json::Node& node, const json::Place& place) {
    const std::string name = json::read_text(node, place, report_);
    if (report_.failed()) return;
    if (const auto symmetry = symmetry_of(name))
      symmetries.push_back(*symmetry);
    else
      report_.add(ProblemCode::unknown_name, place, quote(name), "mirror_across, mirror_along or half_turn");
  });
  return symmetries;
}

bool OperationReader::finish() {
  if (report_.failed()) return false;
  const UnknownFields unknown = fields_.unknown();
  for (const auto& [name, value] : unknown)
    report_.add(ProblemCode::unknown_name, fields_.place_of(name), "a field that this operation has not",
                "the fields of src/project/operation.hpp");
  return !report_.failed();
}

std::string letter_name(const Project& project, chart::Bead bead) {
  return bead == chart::no_bead ? "nothing" : project.legend[bead].letter;
}

std::string on_band(const Project& project, int band) {
  const Band& there = project.bands[static_cast<std::size_t>(band)];
  return project.bands.size() < 2 || there.name.empty() ? "" : " on " + there.name;
}

Draft::Draft(const Project& project) : outline(outline_of(project)) {
  for (const Band& band : project.bands) charts.push_back(band.chart);
}

json::Array& Draft::list(std::string_view name) {
  auto& members = *std::get_if<json::Object>(&outline.value);
  auto found = std::find_if(members.begin(), members.end(),
                            [&](const json::Member& member) { return member.first == name; });
  if (found == members.end())
    found = members.emplace(members.end(), std::string(name), json::Node(json::Array{}));
  return *std::get_if<json::Array>(&found->second.value);
}

void Draft::set(std::string_view name, json::Node value) {
  set_member(outline, name, std::move(value));
}

Result<Applied> Draft::finish(std::string sentence) && {
  auto project = with_outline(outline, std::move(charts));
  if (!project) return project.problem();
  return Applied{std::move(*project), std::move(sentence)};
}

Result<Done> add_known_bead(Project& project, const std::string& id, std::string_view where) {
  if (find_bead(project, id)) return Done{};
  auto size = bead::find_size(id);
  if (!size) {
    Problem problem = size.problem();
    problem.where = where;
    return problem;
  }
  project.beads.push_back(std::move(*size));
  return Done{};
}

void set_member(json::Node& object, std::string_view name, json::Node value) {
  auto& members = *std::get_if<json::Object>(&object.value);
  const auto found = std::find_if(members.begin(), members.end(),
                                  [&](const json::Member& member) { return member.first == name; });
  if (value.as<json::Null>()) {
    if (found != members.end()) members.erase(found);
  } else if (found != members.end()) {
    found->second = std::move(value);
  } else {
    members.emplace_back(name, std::move(value));
  }
}

const json::Node* find_member(const json::Node& object, std::string_view name) {
  const auto* members = object.as<json::Object>();
  if (!members) return nullptr;
  const auto found = std::find_if(members->begin(), members->end(),
                                  [&](const json::Member& member) { return member.first == name; });
  return found == members->end() ? nullptr : &found->second;
}

}  // namespace evencount::project
