#include "chart/chart.hpp"

#include <fmt/format.h>

namespace evencount::chart {

Result<Chart> Chart::make(int columns, int edge, Bead fill) {
  if (columns < 1 || columns > most_columns)
    return Problem{ProblemCode::out_of_range, "columns", fmt::format("{}", columns),
                   fmt::format("1 to {}", most_columns)};
  if (edge < 1 || edge > most_edge)
    return Problem{ProblemCode::out_of_range, "edge", fmt::format("{}", edge),
                   fmt::format("1 to {}", most_edge)};
  if (columns * edge > most_cells)
    return Problem{ProblemCode::out_of_range, "", fmt::format("{} x {} cells", columns, edge),
                   fmt::format("at most {} cells in one band", most_cells)};
  Chart chart;
  chart.columns_ = columns;
  chart.edge_ = edge;
  chart.cells_.assign(static_cast<std::size_t>(columns) * edge, fill);
  return chart;
}

Chart mirrored(const Chart& chart) {
  Chart other = chart;
  for (int step = 0; step < chart.edge(); ++step)
    for (int column = 0; column < chart.columns(); ++column)
      other.set({chart.columns() - 1 - column, step}, chart.at({column, step}));
  return other;
}

}  // namespace evencount::chart
