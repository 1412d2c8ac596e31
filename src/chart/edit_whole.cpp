// Operations that move the whole drawing: symmetries, shifts, sizes, stamps.

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string>

#include "chart/edit_changes.hpp"

namespace evencount::chart {
namespace {

constexpr std::array all_symmetries{Symmetry::mirror_across, Symmetry::mirror_along, Symmetry::half_turn};

int floor_mod(int value, int by) {
  return ((value % by) + by) % by;
}

/// Columns that a pair of shifted groups takes: what may be added or moved without a change of shift.
int column_period(const Grid& grid) {
  return grid.drop == 0 ? 1 : 2 * grid.drop;
}

int place_in_period(const Grid& grid, int column) {
  return column % column_period(grid);
}

/// The lattice's rows with beads, in half steps.
struct Rows {
  int first = 0, last = -1;
};

Rows rows_with_beads(const Chart& chart, const Grid& grid) {
  Rows rows{2 * chart.edge(), -1};
  for (int step = 0; step < chart.edge(); ++step)
    for (int column = 0; column < chart.columns(); ++column)
      if (const Cell cell{column, step}; chart.at(cell) != no_bead) {
        rows.first = std::min(rows.first, grid.along_halves(cell));
        rows.last = std::max(rows.last, grid.along_halves(cell));
      }
  return rows;
}

/// Where a symmetry takes a cell; nothing where no cell lies. Rows are turned so that `ends` is the sum of two that change places.
std::optional<Cell> image(const Chart& chart, const Grid& grid, Symmetry symmetry, int ends, Cell cell) {
  const int column = symmetry == Symmetry::mirror_along ? cell.column : chart.columns() - 1 - cell.column;
  int along = grid.along_halves(cell);
  if (symmetry != Symmetry::mirror_across) along = ends - along;
  if (grid.edge_round) along = floor_mod(along, 2 * chart.edge());
  const int past = along - grid.shift_of(column);
  if (past < 0 || past % 2 != 0) return std::nullopt;
  const Cell to{column, past / 2};
  if (!chart.contains(to)) return std::nullopt;
  return to;
}

std::optional<Chart> mapped_about(const Chart& chart, const Grid& grid, Symmetry symmetry, int ends) {
  Chart drawn = chart;
  for (int step = 0; step < chart.edge(); ++step)
    for (int column = 0; column < chart.columns(); ++column) {
      const Cell cell{column, step};
      if (chart.at(cell) == no_bead) continue;
      const auto to = image(chart, grid, symmetry, ends, cell);
      if (!to || chart.at(*to) == no_bead) return std::nullopt;
      drawn.set(*to, chart.at(cell));
    }
  return drawn;
}

/// A ring has no end to turn about: it is turned about step 0 or about the half step after it, whichever its shift allows.
std::optional<Chart> mapped(const Chart& chart, const Grid& grid, Symmetry symmetry) {
  if (!grid.edge_round) {
    const Rows rows = rows_with_beads(chart, grid);
    return mapped_about(chart, grid, symmetry, rows.first + rows.last);
  }
  if (auto drawn = mapped_about(chart, grid, symmetry, 0)) return drawn;
  return mapped_about(chart, grid, symmetry, 1);
}

Problem breaks_shift(std::string where, int columns, const Grid& grid) {
  return {ProblemCode::wrong_size, std::move(where), fmt::format("{} columns", columns),
          fmt::format("a multiple of {}, so that every column keeps its shift", column_period(grid))};
}

Result<Done> check_filled(const Chart& chart) {
  for (const Bead bead : chart.cells())
    if (bead == no_bead)
      return Problem{ProblemCode::wrong_size, "chart", "empty cells", "a chart without empty cells"};
  return Done{};
}

/// `from` of the new chart's cells comes from a cell of the old one, or is new.
template <typename From>
Result<Edit> resized(const Chart& chart, int columns, int edge, Bead fresh, From from) {
  auto drawn = Chart::make(columns, edge, fresh);
  if (!drawn) return drawn.problem();
  for (int step = 0; step < edge; ++step)
    for (int column = 0; column < columns; ++column)
      if (const std::optional<Cell> old = from(Cell{column, step})) drawn->set({column, step}, chart.at(*old));
  return edited(chart, std::move(*drawn));
}

Result<Done> check_taken_out(int at, int count, int size, std::string_view what) {
  if (at >= 0 && count >= 1 && at + count <= size && count < size) return Done{};
  return Problem{ProblemCode::out_of_range, std::string(what), fmt::format("{} from {} on", count, at),
                 fmt::format("a part of 0 to {}, not all of it", size - 1)};
}

Result<Done> check_put_in(int at, int count, int size, std::string_view what) {
  if (at >= 0 && at <= size && count >= 1) return Done{};
  return Problem{ProblemCode::out_of_range, std::string(what), fmt::format("{} at {}", count, at),
                 fmt::format("1 or more at a place from 0 to {}", size)};
}

}  // namespace

std::string_view symmetry_name(Symmetry symmetry) {
  switch (symmetry) {
    case Symmetry::mirror_across: return "mirror across";
    case Symmetry::mirror_along: return "mirror along";
    case Symmetry::half_turn: return "half turn";
  }
  return "";
}

std::vector<Symmetry> symmetries(const Chart& chart, const Grid& grid) {
  std::vector<Symmetry> found;
  for (const Symmetry symmetry : all_symmetries)
    if (mapped(chart, grid, symmetry)) found.push_back(symmetry);
  return found;
}

Result<Edit> apply(const Chart& chart, const Grid& grid, Symmetry symmetry) {
  if (auto drawn = mapped(chart, grid, symmetry)) return edited(chart, std::move(*drawn));
  std::string names;
  for (const Symmetry other : symmetries(chart, grid))
    names += (names.empty() ? "" : " or ") + std::string(symmetry_name(other));
  return Problem{ProblemCode::wrong_size, "symmetry", std::string(symmetry_name(symmetry)),
                 names.empty() ? "none: no turn or mirror maps the beads of this chart onto beads"
                               : names + ", which map every bead of this chart onto a bead"};
}

Result<Edit> shift_steps(const Chart& chart, const Grid& grid, int steps) {
  if (!grid.edge_round)
    return Problem{ProblemCode::wrong_size, "shift", "a piece whose ends are open", "a ring to shift round"};
  if (auto filled = check_filled(chart); !filled) return filled.problem();
  return resized(chart, chart.columns(), chart.edge(), no_bead, [&](Cell cell) {
    return std::optional<Cell>{{cell.column, floor_mod(cell.step - steps, chart.edge())}};
  });
}

Result<Edit> shift_columns(const Chart& chart, const Grid& grid, int columns) {
  if (!grid.columns_round)
    return Problem{ProblemCode::wrong_size, "shift", "a piece that isn't a tube", "a tube to shift round"};
  if (auto filled = check_filled(chart); !filled) return filled.problem();
  if (columns % column_period(grid) != 0 || chart.columns() % column_period(grid) != 0)
    return breaks_shift("shift", columns, grid);
  return resized(chart, chart.columns(), chart.edge(), no_bead, [&](Cell cell) {
    return std::optional<Cell>{{floor_mod(cell.column - columns, chart.columns()), cell.step}};
  });
}

Result<Edit> insert_steps(const Chart& chart, int at, int count, Bead bead) {
  if (auto good = check_put_in(at, count, chart.edge(), "steps"); !good) return good.problem();
  return resized(chart, chart.columns(), chart.edge() + count, bead, [&](Cell cell) -> std::optional<Cell> {
    if (cell.step >= at && cell.step < at + count) return std::nullopt;
    return Cell{cell.column, cell.step < at ? cell.step : cell.step - count};
  });
}

Result<Edit> delete_steps(const Chart& chart, int at, int count) {
  if (auto good = check_taken_out(at, count, chart.edge(), "steps"); !good) return good.problem();
  return resized(chart, chart.columns(), chart.edge() - count, no_bead, [&](Cell cell) {
    return std::optional<Cell>{{cell.column, cell.step < at ? cell.step : cell.step + count}};
  });
}

Result<Edit> insert_columns(const Chart& chart, const Grid& grid, int at, int count, Bead bead) {
  if (auto good = check_put_in(at, count, chart.columns(), "columns"); !good) return good.problem();
  if (count % column_period(grid) != 0 && at < chart.columns()) return breaks_shift("columns", count, grid);
  return resized(chart, chart.columns() + count, chart.edge(), bead, [&](Cell cell) -> std::optional<Cell> {
    if (cell.column >= at && cell.column < at + count) return std::nullopt;
    return Cell{cell.column < at ? cell.column : cell.column - count, cell.step};
  });
}

Result<Edit> delete_columns(const Chart& chart, const Grid& grid, int at, int count) {
  if (auto good = check_taken_out(at, count, chart.columns(), "columns"); !good) return good.problem();
  if (count % column_period(grid) != 0 && at + count < chart.columns()) return breaks_shift("columns", count, grid);
  return resized(chart, chart.columns() - count, chart.edge(), no_bead, [&](Cell cell) {
    return std::optional<Cell>{{cell.column < at ? cell.column : cell.column + count, cell.step}};
  });
}

Result<Stamp> copy(const Chart& chart, const Grid& grid, Stretch stretch, std::optional<Bead> leave) {
  for (const Cell corner : {stretch.from, stretch.to})
    if (!chart.contains(corner)) return outside(chart, corner);
  const auto [first_column, last_column] = std::minmax(stretch.from.column, stretch.to.column);
  const auto [first_step, last_step] = std::minmax(stretch.from.step, stretch.to.step);
  Stamp stamp{Chart::make(last_column - first_column + 1, last_step - first_step + 1, no_bead).value(),
              place_in_period(grid, first_column)};
  for (int step = first_step; step <= last_step; ++step)
    for (int column = first_column; column <= last_column; ++column)
      if (const Bead bead = chart.at({column, step}); bead != leave)
        stamp.cells.set({column - first_column, step - first_step}, bead);
  return stamp;
}

Result<Edit> press(const Chart& chart, const Grid& grid, const Stamp& stamp, Cell at) {
  if (!chart.contains(at)) return outside(chart, at);
  if (place_in_period(grid, at.column) != stamp.shift)
    return Problem{ProblemCode::wrong_size, "stamp", fmt::format("column {}", at.column),
                   fmt::format("column {} or one a multiple of {} further on, as where the stamp was copied", stamp.shift,
                               column_period(grid))};
  Chart drawn = chart;
  for (int step = 0; step < stamp.cells.edge(); ++step)
    for (int column = 0; column < stamp.cells.columns(); ++column) {
      Cell to{at.column + column, at.step + step};
      if (grid.edge_round) to.step = floor_mod(to.step, chart.edge());
      if (grid.columns_round) to.column = floor_mod(to.column, chart.columns());
      const Bead bead = stamp.cells.at({column, step});
      if (bead != no_bead && chart.contains(to) && chart.at(to) != no_bead) drawn.set(to, bead);
    }
  return edited(chart, std::move(drawn));
}

Result<Edit> repeat(const Chart& chart, const Grid& grid, Stretch stretch) {
  const auto stamp = copy(chart, grid, stretch);
  if (!stamp) return stamp.problem();
  const int width = stamp->cells.columns(), height = stamp->cells.edge();
  const int first_column = std::min(stretch.from.column, stretch.to.column);
  const int first_step = std::min(stretch.from.step, stretch.to.step);
  const bool once_across = width >= chart.columns();
  if (!once_across && width % column_period(grid) != 0) return breaks_shift("repeat", width, grid);
  Chart drawn = chart;
  for (int step = 0; step < chart.edge(); ++step)
    for (int column = 0; column < chart.columns(); ++column) {
      const Cell cell{column, step};
      const Bead bead =
          stamp->cells.at({floor_mod(column - first_column, width), floor_mod(step - first_step, height)});
      if (bead != no_bead && chart.at(cell) != no_bead) drawn.set(cell, bead);
    }
  return edited(chart, std::move(drawn));
}

}  // namespace evencount::chart
