#include "drawing/stitched_cells.hpp"

namespace evencount::drawing {

std::vector<StitchedCell> cells_between(const weave::Plan& plan, std::size_t first, std::size_t end) {
  std::vector<StitchedCell> cells;
  for (std::size_t i = first; i < end && i < plan.stitches.size(); ++i) {
    const weave::Stitch& stitch = plan.stitches[i];
    if (stitch.act == weave::Act::pick_up) cells.push_back({stitch.cell, stitch.bead});
  }
  return cells;
}

std::vector<StitchedCell> all_cells(const weave::Plan& plan) {
  return cells_between(plan, 0, plan.stitches.size());
}

colour::Rgb colour_of(const project::Project& project, weave::Bead bead) {
  return bead < project.legend.size() ? project.legend[bead].colour : colour::Rgb{128, 128, 128};
}

std::string letter_of(const project::Project& project, weave::Bead bead) {
  return bead < project.legend.size() ? project.legend[bead].letter : std::string();
}

}  // namespace evencount::drawing
