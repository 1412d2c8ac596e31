#pragma once
/// How a chart looks from where a piece is usually seen: the light of cells that lie near each other runs together.
///
/// A cell's light at viewing distance is the mean of the light of the cells round it, weighted by a Gaussian of the distance between
/// their middles. Its standard deviation is one cell, which is the side of the square that is as large as a cell. Middles lie
/// where the lattice has them, shifted columns half a step further on. Weights beyond three standard deviations are left out, 1.1 % of the
/// whole; the rest are scaled so that their sum is 1.
///
/// Borders: nothing is made up. Where cells are missing, the weights of those that are there are scaled to a sum of 1. Where the lattice
/// goes round, cells are seen across the seam.
///
/// Properties (tests/picture/viewing_test.cpp):
///  (1) a chart of one colour looks like itself, at the borders too, within 1e-14
///  (2) blurred is the sum over all pairs of cells (tests/oracle/viewing_oracle.hpp), within 1e-13
///  (3) a picture looks the same upside down, and a closed band does wherever its steps are counted from, within 1e-13
///  (4) the difference between a chart and itself is 0
/// The same bits on every compiler: only +, -, *, / and square roots.

#include <span>
#include <vector>

#include "colour/srgb.hpp"
#include "picture/cell_lattice.hpp"

namespace evencount::picture {

class Viewing {
 public:
  /// Errors: those of check_lattice.
  static Result<Viewing> make(const CellLattice& lattice);

  [[nodiscard]] const CellLattice& lattice() const { return lattice_; }

  /// The light of each cell at viewing distance. One value a cell.
  [[nodiscard]] std::vector<colour::Linear> blurred(std::span<const colour::Linear> light) const;

  /// visit(other, weight) for every cell near enough, the cell itself among them, each once. The weight of a pair is the same both
  /// ways; `other` shows weight * scale(other) of the cell's light.
  template <typename Visit>
  void visit_near(int cell, Visit visit) const {
    const int cells = lattice_.cells();
    for (const Tap& tap : taps_[static_cast<std::size_t>(cell % lattice_.columns)]) {
      int other = cell + tap.offset;
      // Taps stay in their columns, so only the steps can leave the chart.
      if (other < 0 || other >= cells) {
        if (!lattice_.grid.edge_round) continue;
        other -= cells;
      }
      visit(other, tap.weight);
    }
  }
  /// 1 / the sum of the weights near a cell.
  [[nodiscard]] double scale(int cell) const { return scale_[static_cast<std::size_t>(cell)]; }

 private:
  struct Tap {
    int offset;  // in cell numbers; steps are counted forwards only where the edge is round
    double weight;
  };

  explicit Viewing(const CellLattice& lattice);
  [[nodiscard]] std::vector<Tap> taps_of(int column) const;

  CellLattice lattice_;
  std::vector<std::vector<Tap>> taps_;  // by column
  std::vector<double> scale_;
};

/// CIEDE2000 between two charts of one lattice at viewing distance.
struct ViewingDifference {
  double mean = 0;
  std::vector<double> of_cell;
};

/// Errors: those of check_lattice; wrong_size (another number of colours than the lattice has cells).
[[nodiscard]] Result<ViewingDifference> viewing_difference(const CellLattice& lattice,
                                                           std::span<const colour::Rgb> original,
                                                           std::span<const colour::Rgb> charted);

}  // namespace evencount::picture
