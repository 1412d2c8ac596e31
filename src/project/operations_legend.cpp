#include <algorithm>
#include <numeric>

#include "base/text.hpp"
#include "chart/letters.hpp"
#include "project/operation_reader.hpp"

namespace evencount::project {
namespace {

using json::Node;

/// Every bead of every chart becomes `places[bead]`.
void move_beads(std::vector<chart::Chart>& charts, const std::vector<chart::Bead>& places) {
  for (chart::Chart& chart : charts)
    for (int step = 0; step < chart.edge(); ++step)
      for (int column = 0; column < chart.columns(); ++column)
        if (const chart::Bead bead = chart.at({column, step}); bead != chart::no_bead)
          chart.set({column, step}, places[bead]);
}

bool draws_with(const Project& project, chart::Bead bead) {
  return std::any_of(project.bands.begin(), project.bands.end(), [&](const Band& band) {
    const auto cells = band.chart.cells();
    return std::find(cells.begin(), cells.end(), bead) != cells.end();
  });
}

std::string free_letter(const Project& project) {
  const auto letters = letters_of(project);
  for (int i = 0;; ++i)
    if (std::string letter = chart::letter_name(i);
        std::find(letters.begin(), letters.end(), letter) == letters.end())
      return letter;
}

/// An object; the problem is in the report otherwise.
const Node* read_object(OperationReader& reader, std::string_view name) {
  const Node* node = reader.require(name);
  if (node && !node->as<json::Object>())
    reader.refuse(ProblemCode::wrong_type, name, json::describe(*node), "an object");
  return node;
}

/// The project, with the bead that an entry names.
Result<Project> with_bead_of(const Project& project, const Node& entry) {
  Project wider = project;
  const Node* bead = find_member(entry, "bead");
  const auto* id = bead ? bead->as<std::string>() : nullptr;
  if (!id) return wider;
  if (auto added = add_known_bead(wider, *id, "/entry/bead"); !added) return added.problem();
  return wider;
}

Result<Applied> add_legend_entry(const Project& project, OperationReader& reader) {
  const Node* given = read_object(reader, "entry");
  const int at = reader.whole_if("at", 0, static_cast<int>(project.legend.size()))
                     .value_or(static_cast<int>(project.legend.size()));
  if (!reader.finish()) return reader.problem();
  Node entry = *given;
  if (!find_member(entry, "letter")) set_member(entry, "letter", Node(free_letter(project)));
  const auto* letter = find_member(entry, "letter")->as<std::string>();
  const std::string sentence = fmt::format("added {} to the legend", letter ? *letter : "a bead");
  const auto wider = with_bead_of(project, entry);
  if (!wider) return wider.problem();
  Draft draft(*wider);
  std::vector<chart::Bead> places(project.legend.size());
  std::iota(places.begin(), places.end(), chart::Bead{0});
  for (std::size_t i = static_cast<std::size_t>(at); i < places.size(); ++i) ++places[i];
  move_beads(draft.charts, places);
  json::Array& legend = draft.list("legend");
  legend.insert(legend.begin() + at, std::move(entry));
  return std::move(draft).finish(sentence);
}

Result<Applied> change_legend_entry(const Project& project, OperationReader& reader) {
  const chart::Bead bead = reader.letter("letter");
  const Node* given = read_object(reader, "entry");
  if (!reader.finish()) return reader.problem();
  const auto wider = with_bead_of(project, *given);
  if (!wider) return wider.problem();
  Draft draft(*wider);
  for (const auto& [name, value] : *given->as<json::Object>())
    set_member(draft.list("legend")[bead], name, value);
  return std::move(draft).finish("changed " + project.legend[bead].letter + " of the legend");
}

Result<Applied> remove_legend_entry(const Project& project, OperationReader& reader) {
  const chart::Bead bead = reader.letter("letter");
  const std::optional<chart::Bead> instead = reader.letter_if("instead");
  if (instead && *instead == bead)
    reader.refuse(ProblemCode::unknown_name, "instead", "the entry itself", "another letter");
  if (!reader.report().failed() && !instead && draws_with(project, bead))
    reader.refuse(ProblemCode::missing_field, "instead", "nothing",
                  "the letter of the bead that takes its place: it is drawn with");
  if (!reader.finish()) return reader.problem();
  Draft draft(project);
  std::vector<chart::Bead> places;
  for (std::size_t i = 0; i < project.legend.size(); ++i) {
    const std::size_t kept = i == bead ? instead.value_or(chart::Bead{0}) : i;
    places.push_back(static_cast<chart::Bead>(kept > bead ? kept - 1 : kept));
  }
  move_beads(draft.charts, places);
  json::Array& legend = draft.list("legend");
  legend.erase(legend.begin() + bead);
  return std::move(draft).finish(
      fmt::format("took {} out of the legend{}", project.legend[bead].letter,
                  instead ? ", " + project.legend[*instead].letter + " takes its place" : ""));
}

Result<Applied> reorder_legend(const Project& project, OperationReader& reader) {
  const auto letters = reader.fields().texts("letters", most_legend_entries);
  const auto old = letters_of(project);
  if (!reader.report().failed() &&
      !std::is_permutation(letters.begin(), letters.end(), old.begin(), old.end()))
    reader.refuse(ProblemCode::unknown_name, "letters", "other letters than the legend has",
                  json::one_of(old) + ", all of them once");
  if (!reader.finish()) return reader.problem();
  Draft draft(project);
  std::vector<chart::Bead> places(old.size());
  json::Array entries;
  for (std::size_t i = 0; i < letters.size(); ++i) {
    const auto from = static_cast<std::size_t>(std::find(old.begin(), old.end(), letters[i]) - old.begin());
    places[from] = static_cast<chart::Bead>(i);
    entries.push_back(draft.list("legend")[from]);
  }
  move_beads(draft.charts, places);
  draft.list("legend") = std::move(entries);
  return std::move(draft).finish("changed the order of the legend");
}

constexpr OperationRow rows[] = {
    {"add_legend_entry", add_legend_entry},
    {"change_legend_entry", change_legend_entry},
    {"remove_legend_entry", remove_legend_entry},
    {"reorder_legend", reorder_legend},
};

}  // namespace

std::span<const OperationRow> legend_operations() {
  return rows;
}

}  // namespace evencount::project
