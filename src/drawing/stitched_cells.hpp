#pragma once
/// What a plan stitches, by cell: private to this room.

#include <string>
#include <vector>

#include "project/project.hpp"
#include "weave/plan.hpp"

namespace evencount::drawing {

struct StitchedCell {
  weave::Cell cell;
  weave::Bead bead = chart::no_bead;
};

/// The beads picked up within `stitches` first to end, in the order of stringing.
[[nodiscard]] std::vector<StitchedCell> cells_between(const weave::Plan& plan, std::size_t first,
                                                      std::size_t end);
[[nodiscard]] std::vector<StitchedCell> all_cells(const weave::Plan& plan);

/// The legend's colour and letter of a bead; a bead outside the legend is mid grey and has no letter.
[[nodiscard]] colour::Rgb colour_of(const project::Project& project, weave::Bead bead);
[[nodiscard]] std::string letter_of(const project::Project& project, weave::Bead bead);

}  // namespace evencount::drawing
