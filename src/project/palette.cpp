#include "project/palette.hpp"

#include <map>

namespace evencount::project {
namespace {

/// A size without the words that say where it comes from.
bool same_size(const bead::Size* one, const bead::Size* other) {
  if (one == nullptr || other == nullptr) return one == other;
  bead::Size alike = *one;
  alike.source = other->source;
  return alike == *other;
}

}  // namespace

std::string difference(const Project& one, const LegendEntry& entry, const Project& other,
                       const LegendEntry& other_entry) {
  std::string words;
  const auto add = [&words](bool differs, std::string_view word) {
    if (differs) words += (words.empty() ? "" : ", ") + std::string(word);
  };
  add(entry.colour != other_entry.colour, "colour");
  add(entry.finish != other_entry.finish, "finish");
  add(entry.bead != other_entry.bead ||
          !same_size(find_bead(one, entry.bead), find_bead(other, other_entry.bead)),
      "bead");
  return words;
}

std::vector<PaletteConflict> palette_conflicts(const std::vector<Project>& projects) {
  std::map<std::string, std::vector<std::pair<std::size_t, const LegendEntry*>>> by_letter;
  for (std::size_t i = 0; i < projects.size(); ++i)
    for (const LegendEntry& entry : projects[i].legend) by_letter[entry.letter].emplace_back(i, &entry);
  std::vector<PaletteConflict> conflicts;
  for (const auto& [letter, uses] : by_letter)
    for (const auto& [project, entry] : uses) {
      const auto& [first, meant] = uses.front();
      if (const std::string words = difference(projects[first], *meant, projects[project], *entry);
          !words.empty())
        conflicts.push_back({letter, project, first, words});
    }
  return conflicts;
}

}  // namespace evencount::project
