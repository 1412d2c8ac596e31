#pragma once
/// Expansion moves: one bead takes the best set of cells there is. This room's own.

#include "picture/beading.hpp"
#include "picture/max_flow.hpp"

namespace evencount::picture {

/// What smoothing lowers, in whole numbers of 2^-16.
class SmoothCost {
 public:
  SmoothCost(const Neighbours& neighbours, std::span<const colour::Rgb> cells, double strength,
             double outline);

  [[nodiscard]] const Neighbours& neighbours() const { return neighbours_; }
  /// Of a cell's own colour.
  [[nodiscard]] static Flow own(const Beading& beading, int cell, int place);
  /// Of a border between a cell and its n-th neighbour.
  [[nodiscard]] Flow border(int cell, std::size_t n) const {
    return border_[neighbours_.start[static_cast<std::size_t>(cell)] + n];
  }
  [[nodiscard]] Flow of(const Beading& beading) const;

 private:
  const Neighbours& neighbours_;
  std::vector<Flow> border_;  // in the order of neighbours_.touching
};

/// Lets one bead take the cells that lower the cost most; where it runs short, cells that lower it, but fewer.
/// Whether any did.
bool expand(const SmoothCost& cost, Beading& beading, int place);

/// Expands each bead in turn until none lowers the cost.
void expand_all(const SmoothCost& cost, Beading& beading);

}  // namespace evencount::picture
