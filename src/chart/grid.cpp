#include "chart/grid.hpp"

#include <algorithm>

namespace evencount::chart {
namespace {

/// The cell a column and some half steps away, if a cell lies exactly there.
void add_at(const Chart& chart, const Grid& grid, int column, int along, std::vector<Cell>& cells) {
  const int columns = chart.columns(), halves = 2 * chart.edge();
  if (grid.columns_round) column = (column + columns) % columns;
  if (grid.edge_round) along = (along + halves) % halves;
  if (column < 0 || column >= columns || along < 0) return;
  const int past = along - grid.shift_of(column);
  if (past < 0 || past % 2 != 0 || past / 2 >= chart.edge()) return;
  const Cell cell{column, past / 2};
  if (std::find(cells.begin(), cells.end(), cell) == cells.end()) cells.push_back(cell);
}

}  // namespace

std::vector<Cell> neighbours(const Chart& chart, const Grid& grid, Cell cell) {
  std::vector<Cell> cells;
  const int along = grid.along_halves(cell);
  for (const int by : {-2, 2}) add_at(chart, grid, cell.column, along + by, cells);
  for (const int side : {-1, 1})
    for (const int by : {-1, 0, 1}) add_at(chart, grid, cell.column + side, along + by, cells);
  std::erase(cells, cell);
  return cells;
}

int neighbours_within(const Grid& grid, Cell cell) {
  // The column before column 0 is shifted as if the groups went on.
  const int period = std::max(1, 2 * grid.drop), column = cell.column + period;
  int count = 2;
  for (const int side : {-1, 1}) count += grid.shift_of(column + side) == grid.shift_of(column) ? 1 : 2;
  return count;
}

}  // namespace evencount::chart
