#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <tuple>

#include "project/carry_resample.hpp"

namespace evencount::project {
namespace {

using chart::Bead;
using chart::Cell;
using chart::Chart;

/// One direction of a piece: its columns or its steps.
struct Direction {
  int from = 0, to = 0;
  int unit = 1;  ///< lines stand against each other alike so many further on
  bool round = false;
};

Direction across(const Frame& from, const Frame& to) {
  Direction direction{from.lattice.columns, to.lattice.columns, 1, from.lattice.round};
  if (from.in_squares() || from.lattice.holes == weave::Holes::along)
    direction.unit = 2;
  else if (from.lattice.drop > 0)
    direction.unit = 2 * from.lattice.drop;
  return direction;
}

Direction along(const Frame& from, const Frame& to) {
  return {from.lattice.edge, to.lattice.edge, from.in_squares() ? 2 : 1, from.edge_round};
}

bool same_column(const Chart& chart, int one, int other) {
  for (int step = 0; step < chart.edge(); ++step)
    if (chart.at({one, step}) != chart.at({other, step})) return false;
  return true;
}

bool same_step(const Chart& chart, int one, int other) {
  return std::ranges::equal(chart.step(one), chart.step(other));
}

/// The shortest period with at least two repeats; 0 for none.
template <typename Same>
int period_of(const Chart& chart, const Direction& direction, Same same) {
  for (int period = direction.unit; 2 * period <= direction.from; period += direction.unit) {
    if (direction.round && direction.from % period != 0) continue;
    bool holds = true;
    for (int line = 0; line + period < direction.from && holds; ++line)
      holds = same(chart, line, line + period);
    if (holds) return period;
  }
  return 0;
}

bool ends_alike(const Direction& direction, int period) {
  return period > 0 && direction.from % period == direction.to % period;
}

/// The old line nearest to the place of a new one, of those that stand alike; of two the one nearer to the middle.
int nearest_line(const Direction& direction, int line) {
  const std::int64_t from = direction.from, to = direction.to;
  const auto off = [&](int old) {
    if (!direction.round)
      return std::tuple(std::abs((2 * old + 1) * to - (2 * line + 1) * from), std::abs(2 * old + 1 - from));
    // Round a ring from the middle of its first line.
    const std::int64_t apart = std::abs(old * to - line * from), turn = from * to;
    return std::tuple(std::min(apart, turn - apart), std::abs(2 * old - from));
  };
  int best = line % direction.unit;
  for (int old = best; old < direction.from; old += direction.unit)
    if (off(old) < off(best)) best = old;
  return best;
}

struct Lines {
  std::vector<int> old;  ///< by new line
  int period = 0;        ///< 0: repeated or left out evenly
};

template <typename Same>
Lines lines_for(const Chart& chart, const Direction& direction, Same same) {
  Lines lines;
  const int period = period_of(chart, direction, same);
  const bool fits = period > 0 && (!direction.round || direction.to % period == 0);
  lines.period = direction.from == direction.to || !fits ? 0 : period;
  for (int line = 0; line < direction.to; ++line)
    lines.old.push_back(direction.from == direction.to ? line
                        : fits                         ? line % period
                                                       : nearest_line(direction, line));
  return lines;
}

/// The chart of `to` whose cells come from old ones or, where there is none, are of the border's colour.
template <typename From>
Result<Drawn> drawn_from(const Chart& chart, const Frame& to, Bead border, From from) {
  auto made = Chart::make(to.lattice.columns, to.lattice.edge, chart::no_bead);
  if (!made) return made.problem();
  Drawn drawn;
  drawn.chart = std::move(*made);
  drawn.source.resize(drawn.chart.cells().size());
  std::size_t at = 0;
  for (int step = 0; step < to.lattice.edge; ++step)
    for (int column = 0; column < to.lattice.columns; ++column, ++at) {
      const Cell cell{column, step};
      if (!to.holds(cell)) continue;
      const Cell old = from(cell);
      if (chart.contains(old)) drawn.source[at] = old;
      drawn.chart.set(cell, drawn.source[at] ? chart.at(old) : border);
    }
  return drawn;
}

Problem not_alike() {
  return {ProblemCode::wrong_size, "carry", "columns that are not shifted alike",
          "resample, which goes by where the beads lie"};
}

/// So far the old drawing is moved to lie in the middle: a multiple of `unit`.
int margin(const Direction& direction) {
  const int room = direction.to - direction.from, units = std::abs(room) / (2 * direction.unit);
  return (room < 0 ? -units : units) * direction.unit;
}

}  // namespace

bool goes_on_in_period(const Chart& chart, const Frame& from, const Frame& to) {
  if (!alike(from, to)) return false;
  const Direction columns = across(from, to), steps = along(from, to);
  return (columns.from == columns.to || ends_alike(columns, period_of(chart, columns, same_column))) &&
         (steps.from == steps.to || ends_alike(steps, period_of(chart, steps, same_step)));
}

Result<Drawn> repeat(const Chart& chart, const Frame& from, const Frame& to) {
  if (!alike(from, to)) return not_alike();
  // The last step of an odd number of rows is no whole one: it is like the one before, with its shifted beads left out.
  Chart whole = chart;
  if (from.half_last_step)
    for (int column = 0; column < chart.columns(); ++column)
      if (const Cell last{column, chart.edge() - 1}; chart.at(last) == chart::no_bead)
        whole.set(last, chart.at({column, chart.edge() - 2}));
  const Lines columns = lines_for(whole, across(from, to), same_column),
              steps = lines_for(whole, along(from, to), same_step);
  auto drawn = drawn_from(whole, to, chart::no_bead, [&](Cell cell) {
    const Cell old{columns.old[static_cast<std::size_t>(cell.column)],
                   steps.old[static_cast<std::size_t>(cell.step)]};
    return from.holds(old) || !from.half_last_step ? old : Cell{old.column, old.step - 1};
  });
  if (!drawn) return drawn;
  drawn->period_across = columns.period;
  drawn->period_along = steps.period;
  return drawn;
}

Result<Drawn> centre(const Chart& chart, const Frame& from, const Frame& to, Bead border) {
  if (!alike(from, to)) return not_alike();
  const int columns = margin(across(from, to)), steps = margin(along(from, to));
  return drawn_from(chart, to, border, [&](Cell cell) {
    const Cell old{cell.column - columns, cell.step - steps};
    return from.half_last_step && chart.contains(old) && !from.holds(old) ? Cell{-1, -1} : old;
  });
}

}  // namespace evencount::project
