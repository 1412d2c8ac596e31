#pragma once
/// Whether letters mean the same beads in several projects.

#include <string>
#include <vector>

#include "project/project.hpp"

namespace evencount::project {

/// What two entries of one letter differ in: "colour", "finish", "bead" (its id, or its size) or several of them; empty for the same
/// bead. Names may differ, as languages do.
[[nodiscard]] std::string difference(const Project& one, const LegendEntry& entry, const Project& other,
                                     const LegendEntry& other_entry);

struct PaletteConflict {
  std::string letter;
  std::size_t project = 0;  ///< the one that differs from the first that has the letter
  std::size_t first = 0;
  std::string difference;
  bool operator==(const PaletteConflict&) const = default;
};

/// Every letter that means another bead than in the first project that has it, by letter and project.
[[nodiscard]] std::vector<PaletteConflict> palette_conflicts(const std::vector<Project>& projects);

}  // namespace evencount::project
