#include "project/supply_list_substitutes.hpp"

#include <algorithm>

#include "colour/difference.hpp"
#include "project/neighbours.hpp"

namespace evencount::project {
namespace {

double difference_of(colour::Rgb a, colour::Rgb b) {
  return colour::ciede2000(colour::to_lab_d65(a), colour::to_lab_d65(b));
}

struct Beside {
  std::string letter;
  colour::Rgb colour;
};

/// What a bead lies beside in all charts.
std::vector<Beside> beside(Collection projects, const BeadLine& bead) {
  std::vector<Beside> found;
  for (std::size_t p = 0; p < projects.size(); ++p) {
    const auto& legend = projects[p].legend;
    const auto is_bead = [&](std::size_t i) {
      return std::any_of(bead.uses.begin(), bead.uses.end(), [&](const LetterUse& use) {
        return use.project == p && use.letter == legend[i].letter;
      });
    };
    const Neighbours neighbours(projects[p]);
    for (std::size_t i = 0; i < legend.size(); ++i) {
      if (is_bead(i)) continue;
      for (std::size_t j = 0; j < legend.size(); ++j)
        if (is_bead(j) && neighbours.meet(i, j)) {
          found.push_back({legend[i].letter, legend[i].colour});
          break;
        }
    }
  }
  return found;
}

std::optional<NearestNeighbour> nearest(const std::vector<Beside>& besides, colour::Rgb colour) {
  std::optional<NearestNeighbour> found;
  for (const Beside& other : besides) {
    const double difference = difference_of(colour, other.colour);
    if (!found || difference < found->difference) found = NearestNeighbour{difference, other.letter};
  }
  return found;
}

/// What is on hand beyond what the list takes.
std::int64_t free_of(const materials::StockedItem& stocked, const CollectionSupplies& list) {
  std::int64_t free = stocked.level.free();
  for (const BeadLine& line : list.beads)
    if (line.code == stocked.item.code) free -= std::min(line.purchase.needed, line.purchase.on_hand);
  return free;
}

}  // namespace

std::vector<Substitute> substitutes(Collection projects, const CollectionSupplies& list, const BeadLine& bead,
                                    Stock stock, std::size_t most) {
  std::vector<Substitute> found;
  for (const materials::StockedItem& stocked : stock) {
    const auto* like = std::get_if<materials::BeadStock>(&stocked.item.what);
    if (!like || like->size != bead.size_id || !like->colour || stocked.item.code == bead.code) continue;
    const double difference = difference_of(bead.colour, *like->colour);
    const std::int64_t free = free_of(stocked, list);
    if (free <= 0 || difference > farthest_substitute) continue;
    found.push_back({stocked.item.code,
                     stocked.item.name,
                     *like->colour,
                     like->finish,
                     difference,
                     free,
                     free >= bead.purchase.needed,
                     {},
                     {}});
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const Substitute& a, const Substitute& b) { return a.difference < b.difference; });
  if (found.size() > most) found.resize(most);
  if (found.empty()) return found;
  const std::vector<Beside> besides = beside(projects, bead);
  for (Substitute& one : found) {
    one.before = nearest(besides, bead.colour);
    one.after = nearest(besides, one.colour);
  }
  return found;
}

}  // namespace evencount::project
