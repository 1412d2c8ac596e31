#pragma once
/// Which beads are near enough to touch. Internal to the room.

#include <span>
#include <vector>

#include "fabric/cylinder.hpp"

namespace evencount::fabric {

struct Pair {
  std::size_t first = 0;
  std::size_t second = 0;  ///< above `first`
  bool operator==(const Pair&) const = default;
};

/// All pairs whose surrounding balls come nearer than `margin_mm`, in order of their places. Found over a uniform grid: the cost grows with the
/// beads and their neighbours.
[[nodiscard]] std::vector<Pair> close_pairs(std::span<const Cylinder> beads, double margin_mm);

}  // namespace evencount::fabric
