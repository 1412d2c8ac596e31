#pragma once
/// How the cells of a chart lie against each other, as far as drawing on it must know.

#include "chart/chart.hpp"

namespace evencount::chart {

/// Columns are shifted in groups of `drop` (0: none), every second group half a step further on. In half steps a cell lies
/// 2 step + (0 or 1) along.
struct Grid {
  int drop = 1;
  bool edge_round = false;     ///< past the last step comes step 0: a closed band
  bool columns_round = false;  ///< past the last column comes column 0: a tube
  bool operator==(const Grid&) const = default;

  /// 0 or 1 half steps.
  [[nodiscard]] int shift_of(int column) const { return drop == 0 ? 0 : (column / drop) % 2; }
  [[nodiscard]] int along_halves(Cell cell) const { return 2 * cell.step + shift_of(cell.column); }
};

/// The cells that touch a cell along a side, inside the chart: six where both columns beside it are shifted against it, four on a plain
/// grid, five at the border of a pair; fewer at the edges.
[[nodiscard]] std::vector<Cell> neighbours(const Chart& chart, const Grid& grid, Cell cell);

/// How many cells touch a cell that lies nowhere at the chart's edge: neighbours(...).size() there, more than it at the edge.
[[nodiscard]] int neighbours_within(const Grid& grid, Cell cell);

}  // namespace evencount::chart
