#pragma once
/// Which beads lie side by side in the charts.

#include <vector>

#include "project/project.hpp"

namespace evencount::project {

/// Pairs of legend entries of which a bead of one touches a bead of the other in some chart: across, along the edge or, in shifted
/// columns, half a bead on; round the squares of right-angle weave also at the corners.
/// A band of an unknown technique and beads beyond the legend are passed over.
///
/// Properties (tests/project/neighbours_test.cpp): meet(a, b) == meet(b, a); unchanged by mirroring every chart along its edge in an
/// unshifted technique.
class Neighbours {
 public:
  explicit Neighbours(const Project& project);

  /// Positions in the legend; an entry meets itself where two of its beads touch.
  [[nodiscard]] bool meet(std::size_t a, std::size_t b) const;

 private:
  void add(const chart::Chart& chart, const weave::Lattice& lattice);
  void add(chart::Bead a, chart::Bead b);

  std::size_t entries_;
  std::vector<bool> pairs_;
};

}  // namespace evencount::project
