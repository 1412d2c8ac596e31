#include "chart/edit.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "chart/edit_changes.hpp"

namespace evencount::chart {
namespace {

/// The middle of a cell in pitches.
struct Middle {
  double across = 0, along = 0;
};

Middle middle_of(const Grid& grid, Cell cell) {
  return {1.0 * cell.column, grid.along_halves(cell) / 2.0};
}

/// Puts the bead into every cell of the rectangle for which `inside` holds, empty cells apart.
template <typename Inside>
Result<Edit> draw_within(const Chart& chart, Stretch stretch, Bead bead, Inside inside) {
  for (const Cell corner : {stretch.from, stretch.to})
    if (!chart.contains(corner)) return outside(chart, corner);
  Chart drawn = chart;
  const auto [first_column, last_column] = std::minmax(stretch.from.column, stretch.to.column);
  const auto [first_step, last_step] = std::minmax(stretch.from.step, stretch.to.step);
  for (int step = first_step; step <= last_step; ++step)
    for (int column = first_column; column <= last_column; ++column)
      if (const Cell cell{column, step}; chart.at(cell) != no_bead && inside(cell)) drawn.set(cell, bead);
  return edited(chart, std::move(drawn));
}

/// Those of the cells inside a figure that touch one outside it, or the chart's edge.
template <typename Inside>
auto outline_of(const Chart& chart, const Grid& grid, Inside inside) {
  return [&chart, &grid, inside](Cell cell) {
    if (!inside(cell)) return false;
    const auto beside = neighbours(chart, grid, cell);
    return static_cast<int>(beside.size()) < neighbours_within(grid, cell) || std::any_of(beside.begin(), beside.end(), [&](Cell c) { return !inside(c); });
  };
}

}  // namespace

Problem outside(const Chart& chart, Cell cell) {
  return {ProblemCode::out_of_range, fmt::format("column {}, step {}", cell.column, cell.step), "a place outside the chart",
          fmt::format("columns 0 to {}, steps 0 to {}", chart.columns() - 1, chart.edge() - 1)};
}

Chart undone(const Edit& edit) {
  if (edit.before) return *edit.before;
  Chart chart = edit.chart;
  for (const CellChange& change : edit.changes) chart.set(change.cell, change.before);
  return chart;
}

Result<Edit> set(const Chart& chart, Cell cell, Bead bead) {
  if (!chart.contains(cell)) return outside(chart, cell);
  Chart drawn = chart;
  drawn.set(cell, bead);
  return edited(chart, std::move(drawn));
}

Result<Edit> draw_line(const Chart& chart, const Grid& grid, Stretch stretch, Bead bead) {
  for (const Cell end : {stretch.from, stretch.to})
    if (!chart.contains(end)) return outside(chart, end);
  const Middle from = middle_of(grid, stretch.from), to = middle_of(grid, stretch.to);
  const double across = to.across - from.across, along = to.along - from.along;
  Chart drawn = chart;
  const auto put = [&](Cell cell) {
    if (drawn.contains(cell) && drawn.at(cell) != no_bead) drawn.set(cell, bead);
  };
  const double longer = std::max(std::abs(across), std::abs(along));
  // On a plain grid one cell to each column or step; on a shifted one every cell that the line passes through, so that they touch.
  const double samples_a_cell = grid.drop == 0 ? 1 : 64;
  const int samples = std::max(1, static_cast<int>(std::lround(longer * samples_a_cell)));
  for (int i = 0; i <= samples; ++i) {
    const double share = static_cast<double>(i) / samples;
    const auto column = static_cast<int>(std::lround(from.across + across * share));
    // Between two cells the line may run along the chart's edge: then only one of them is there.
    const double step = std::floor(from.along + along * share - grid.shift_of(column) / 2.0 + 0.5);
    put({column, std::clamp(static_cast<int>(step), 0, chart.edge() - 1)});
  }
  put(stretch.to);
  return edited(chart, std::move(drawn));
}

Result<Edit> draw_rectangle(const Chart& chart, const Grid& grid, Stretch stretch, Bead bead, bool filled) {
  const Cell first{std::min(stretch.from.column, stretch.to.column), std::min(stretch.from.step, stretch.to.step)};
  const Cell last{std::max(stretch.from.column, stretch.to.column), std::max(stretch.from.step, stretch.to.step)};
  const auto inside = [=](Cell cell) {
    return cell.column >= first.column && cell.column <= last.column && cell.step >= first.step && cell.step <= last.step;
  };
  if (filled) return draw_within(chart, stretch, bead, inside);
  return draw_within(chart, stretch, bead, outline_of(chart, grid, inside));
}

Result<Edit> draw_ellipse(const Chart& chart, const Grid& grid, Stretch stretch, Bead bead, bool filled) {
  const Middle from = middle_of(grid, stretch.from), to = middle_of(grid, stretch.to);
  const Middle centre{(from.across + to.across) / 2, (from.along + to.along) / 2};
  // Half a cell more than to the middles: the ellipse touches the outer sides of the cells.
  const double a = std::abs(to.across - from.across) / 2 + 0.5, b = std::abs(to.along - from.along) / 2 + 0.5;
  const auto inside = [&grid, centre, a, b](Cell cell) {
    const Middle at = middle_of(grid, cell);
    return std::hypot((at.across - centre.across) / a, (at.along - centre.along) / b) <= 1;
  };
  if (filled) return draw_within(chart, stretch, bead, inside);
  return draw_within(chart, stretch, bead, outline_of(chart, grid, inside));
}

Result<Edit> flood_fill(const Chart& chart, const Grid& grid, Cell from, Bead bead) {
  if (!chart.contains(from)) return outside(chart, from);
  const Bead old = chart.at(from);
  Chart drawn = chart;
  if (old == bead || old == no_bead) return edited(chart, std::move(drawn));
  std::vector<Cell> open{from};
  drawn.set(from, bead);
  while (!open.empty()) {
    const Cell cell = open.back();
    open.pop_back();
    for (const Cell beside : neighbours(chart, grid, cell))
      if (drawn.at(beside) == old) {
        drawn.set(beside, bead);
        open.push_back(beside);
      }
  }
  return edited(chart, std::move(drawn));
}

Edit replace_bead(const Chart& chart, Bead from, Bead to) {
  Chart drawn = chart;
  for (int step = 0; step < chart.edge(); ++step)
    for (int column = 0; column < chart.columns(); ++column)
      if (const Cell cell{column, step}; from != no_bead && chart.at(cell) == from) drawn.set(cell, to);
  return edited(chart, std::move(drawn));
}

}  // namespace evencount::chart
