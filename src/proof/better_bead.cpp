#include "proof/better_bead.hpp"

#include "colour/difference.hpp"

namespace evencount::proof {
namespace {

double difference_of(colour::Rgb a, colour::Rgb b) {
  return colour::ciede2000(colour::to_lab_d65(a), colour::to_lab_d65(b));
}

bool told_from_neighbours(const project::Project& project, const project::Neighbours& neighbours, std::size_t entry,
                          colour::Rgb colour) {
  for (std::size_t other = 0; other < project.legend.size(); ++other)
    if (other != entry && neighbours.meet(entry, other) && !apart(colour, project.legend[other].colour).enough()) return false;
  return true;
}

}  // namespace

Apart apart(colour::Rgb a, colour::Rgb b) {
  Apart result{.difference = difference_of(a, b)};
  for (const colour::Deficiency deficiency :
       {colour::Deficiency::protan, colour::Deficiency::deutan, colour::Deficiency::tritan}) {
    const auto vision = colour::brettel_vision(deficiency);
    const double left = difference_of(colour::seen(vision, a), colour::seen(vision, b));
    if (left >= least_seen_difference) continue;
    result.lost_to = deficiency, result.left = left;
    break;
  }
  return result;
}

std::optional<BetterBead> better_bead(const project::Project& project, const project::Neighbours& neighbours,
                                      std::size_t first, std::size_t second,
                                      std::span<const materials::StockedItem> stock) {
  std::optional<BetterBead> best;
  for (const std::size_t entry : {second, first})
    for (const materials::StockedItem& one : stock) {
      const auto* beads = std::get_if<materials::BeadStock>(&one.item.what);
      const project::LegendEntry& replaced = project.legend[entry];
      if (beads == nullptr || beads->size != replaced.bead || !beads->colour) continue;
      const double difference = difference_of(replaced.colour, *beads->colour);
      if (best && difference >= best->difference) continue;
      if (told_from_neighbours(project, neighbours, entry, *beads->colour))
        best = BetterBead{entry, one.item.code, one.item.name, *beads->colour, difference};
    }
  return best;
}

}  // namespace evencount::proof
