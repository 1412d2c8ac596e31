#pragma once
/// Where the cells of a picture lie when they have become a chart's.

#include <span>
#include <vector>

#include "base/result.hpp"
#include "chart/grid.hpp"

namespace evencount::picture {

/// Cells are numbered step after step, as in a chart: cell (column, step) is step * columns + column.
struct CellLattice {
  int columns = 1, edge = 1;
  chart::Grid grid;
  double step_length = 1;  ///< how long a step is, in widths of a column: the gauge's; 0.25 to 4
  bool operator==(const CellLattice&) const = default;

  [[nodiscard]] int cells() const { return columns * edge; }
  /// The cell that lies at a column and so many half steps along, round where the lattice goes round; -1 for none.
  [[nodiscard]] int cell_at(int column, int along_halves) const;
};

/// Errors: out_of_range (sizes no chart can have, a drop below 0, a step too short or too long).
[[nodiscard]] Result<Done> check_lattice(const CellLattice& lattice);

/// The cells that touch each cell (chart::neighbours), of all cells in one row. The lattice must be sound.
struct Neighbours {
  explicit Neighbours(const CellLattice& lattice);

  [[nodiscard]] std::span<const int> of(int cell) const {
    return {touching.data() + start[static_cast<std::size_t>(cell)],
            touching.data() + start[static_cast<std::size_t>(cell) + 1]};
  }

  std::vector<std::size_t> start;  ///< of each cell, and the end
  std::vector<int> touching;
};

}  // namespace evencount::picture
