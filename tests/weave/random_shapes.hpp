#pragma once
/// Seeded outlines of brick stitch, tubes and bezels.

#include <algorithm>
#include <vector>

#include "random_band.hpp"

namespace evencount::weave::testing_support {

/// The ends of a row, in half steps along the piece.
struct BrickEnds {
  int low = 0;
  int high = 0;
  [[nodiscard]] int beads() const { return (high - low) / 2 + 1; }
};

/// The chart whose columns hold these rows, the lowest step 0; column 0 must lie at even half steps.
inline chart::Chart outlined(Random& random, const std::vector<BrickEnds>& rows) {
  int first = rows[0].low / 2, last = rows[0].high / 2;
  for (const BrickEnds& row : rows) {
    first = std::min(first, row.low / 2);
    last = std::max(last, row.high / 2);
  }
  auto chart = chart::Chart::make(static_cast<int>(rows.size()), last - first + 1, chart::no_bead).value();
  for (int column = 0; column < chart.columns(); ++column)
    for (int at = rows[static_cast<std::size_t>(column)].low;
         at <= rows[static_cast<std::size_t>(column)].high; at += 2)
      chart.set({column, at / 2 - first}, static_cast<Bead>(pick(random, 0, 4)));
  return chart;
}

inline constexpr int far_up = 200;  // room below for any outline; even

/// Rows of so many beads, each half a bead in or out at both ends: a symmetric leaf, diamond or triangle.
inline chart::Chart leaf(Random& random, const std::vector<int>& beads) {
  std::vector<BrickEnds> rows;
  for (const int count : beads) {
    const int middle = far_up + (beads.front() - 1);
    rows.push_back({middle - (count - 1), middle + (count - 1)});
  }
  return outlined(random, rows);
}

/// Any outline that can be worked, often with points.
inline chart::Chart random_brick_outline(Random& random) {
  const int columns = pick(random, 1, 12);
  const int first = pick(random, columns == 1 ? 2 : 1, 7);
  std::vector<BrickEnds> rows{{far_up, far_up + 2 * (first - 1)}};
  while (static_cast<int>(rows.size()) < columns) {
    const BrickEnds before = rows.back();
    const BrickEnds row{before.low + (pick(random, 0, 1) == 0 ? 1 : -1),
                   before.high + (pick(random, 0, 1) == 0 ? 1 : -1)};
    if (row.low > row.high || (row.beads() == 1 && before.beads() == 1)) continue;
    rows.push_back(row);
  }
  chart::Chart chart = outlined(random, rows);
  return chart.edge() >= 2 ? chart : random_brick_outline(random);
}

inline void leave_out_last_round(chart::Chart& chart) {
  for (int column = 1; column < chart.columns(); column += 2) chart.set({column, chart.edge() - 1}, chart::no_bead);
}

/// A tube, sometimes without its last round.
inline chart::Chart random_tube(Random& random, bool odd) {
  chart::Chart chart = chart::Chart::make(2 * pick(random, 2, 8) + (odd ? 1 : 0), pick(random, 1, 8)).value();
  for (int step = 0; step < chart.edge(); ++step)
    for (int column = 0; column < chart.columns(); ++column)
      chart.set({column, step}, static_cast<Bead>(pick(random, 0, 4)));
  if (chart.edge() > 1 && pick(random, 0, 2) == 0) leave_out_last_round(chart);
  return chart;
}

struct RandomBezel {
  chart::Chart chart;
  Making making{Closure::round};
};

/// A bezel with rounds on both sides of its ring, some beads of them left out.
inline RandomBezel random_bezel(Random& random) {
  const int columns = 2 * pick(random, 4, 12), back = pick(random, 0, 4), front = pick(random, 0, 5);
  const int rows = back + 2 + front, edge = (rows + 1) / 2;
  RandomBezel bezel{chart::Chart::make(columns, edge).value()};
  bezel.making.begin_at = back;
  const auto holds = [&](int column, int row) {
    return bezel.chart.at({(column + columns) % columns, row / 2}) != chart::no_bead;
  };
  const auto fill = [&](int row, int below) {
    int left = columns / 2;
    for (int column = row % 2; column < columns; column += 2) {
      const bool place = below < 0 || holds(column - 1, below);
      const bool leave_out = below >= 0 && left > 4 && pick(random, 0, 5) == 0;
      if (!place || leave_out) --left;
      bezel.chart.set({column, row / 2}, place && !leave_out ? static_cast<Bead>(pick(random, 0, 3)) : chart::no_bead);
    }
  };
  fill(back, -1);
  fill(back + 1, -1);
  for (int row = back + 2; row < rows; ++row) fill(row, row - 1);
  for (int row = back - 1; row >= 0; --row) fill(row, row + 1);
  if (rows % 2 == 1) leave_out_last_round(bezel.chart);
  return bezel;
}

}  // namespace evencount::weave::testing_support
