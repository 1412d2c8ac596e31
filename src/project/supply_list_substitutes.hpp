#pragma once
/// What could take the place of a bead that is short, and what it would do to the charts.

#include <string>
#include <vector>

#include "project/supply_list_collection.hpp"

namespace evencount::project {

/// The colour that is hardest to tell from a bead among those it lies beside in the charts.
struct NearestNeighbour {
  double difference = 0;  ///< CIEDE2000
  std::string letter;     ///< of the neighbour
  bool operator==(const NearestNeighbour&) const = default;
};

struct Substitute {
  std::string code, name;
  colour::Rgb colour;
  bead::Finish finish = bead::Finish::opaque;
  double difference = 0;  ///< CIEDE2000 from the bead it would replace
  std::int64_t free = 0;  ///< on hand beyond what the list itself takes of it, in milligrams
  bool covers = false;    ///< all that is needed
  std::optional<NearestNeighbour> before, after;  ///< none where the bead lies beside no other
  bool operator==(const Substitute&) const = default;
};

/// CIEDE2000 beyond which another bead is no substitute: plainly another colour, from memory.
inline constexpr double farthest_substitute = 20;

/// The items of the same size with a measured colour no farther than that, the nearest first; of equally near ones in the stock's order.
/// The item that the line already is, and those of which the list leaves nothing on hand, are left out. `bead` must be a line of `list`.
/// Properties (tests/project/supply_list_substitutes_test.cpp): no item left out is nearer than one given; `before` is the same for all;
/// `after` is `before` of the collection with the bead swapped.
[[nodiscard]] std::vector<Substitute> substitutes(Collection projects, const CollectionSupplies& list,
                                                  const BeadLine& bead, Stock stock, std::size_t most = 3);

}  // namespace evencount::project
