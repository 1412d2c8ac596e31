#include "chart/edit.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace evencount::chart {
namespace {

using Random = std::mt19937;

int pick(Random& random, int low, int high) {
  return low + static_cast<int>(random() % static_cast<unsigned>(high - low + 1));
}

struct Drawn {
  Chart chart;
  Grid grid;
};

Drawn random_drawn(Random& random) {
  Drawn drawn{Chart::make(pick(random, 1, 12), pick(random, 1, 12)).value(),
              {pick(random, 0, 2), pick(random, 0, 1) == 0, pick(random, 0, 1) == 0}};
  const bool last_row_out = drawn.grid.drop > 0 && drawn.chart.edge() > 1 && pick(random, 0, 2) == 0;
  for (int step = 0; step < drawn.chart.edge(); ++step)
    for (int column = 0; column < drawn.chart.columns(); ++column) {
      const bool empty = last_row_out && step + 1 == drawn.chart.edge() && drawn.grid.shift_of(column) == 1;
      drawn.chart.set({column, step}, empty ? no_bead : static_cast<Bead>(pick(random, 0, 3)));
    }
  return drawn;
}

Cell random_cell(Random& random, const Chart& chart) {
  return {pick(random, 0, chart.columns() - 1), pick(random, 0, chart.edge() - 1)};
}

std::vector<Bead> sorted_beads(const Chart& chart) {
  std::vector<Bead> beads(chart.cells().begin(), chart.cells().end());
  std::sort(beads.begin(), beads.end());
  return beads;
}

/// One operation at random; nothing when it is refused.
std::optional<Edit> random_edit(Random& random, const Drawn& d) {
  const Stretch stretch{random_cell(random, d.chart), random_cell(random, d.chart)};
  const auto bead = static_cast<Bead>(pick(random, 0, 5));
  const bool filled = pick(random, 0, 1) == 0;
  const int at = pick(random, 0, std::max(d.chart.columns(), d.chart.edge())), count = pick(random, 1, 4);
  const auto done = [](Result<Edit> edit) { return edit ? std::optional<Edit>(std::move(*edit)) : std::nullopt; };
  switch (pick(random, 0, 13)) {
    case 0: return done(set(d.chart, stretch.from, bead));
    case 1: return done(draw_line(d.chart, d.grid, stretch, bead));
    case 2: return done(draw_rectangle(d.chart, d.grid, stretch, bead, filled));
    case 3: return done(draw_ellipse(d.chart, d.grid, stretch, bead, filled));
    case 4: return done(flood_fill(d.chart, d.grid, stretch.from, bead));
    case 5: return replace_bead(d.chart, static_cast<Bead>(pick(random, 0, 3)), bead);
    case 6: return done(apply(d.chart, d.grid, static_cast<Symmetry>(pick(random, 0, 2))));
    case 7: return done(shift_steps(d.chart, d.grid, pick(random, -20, 20)));
    case 8: return done(shift_columns(d.chart, d.grid, pick(random, -20, 20)));
    case 9: return done(insert_steps(d.chart, at, count, bead));
    case 10: return done(delete_steps(d.chart, at, count));
    case 11: return done(insert_columns(d.chart, d.grid, at, count, bead));
    case 12: return done(delete_columns(d.chart, d.grid, at, count));
    default: return done(repeat(d.chart, d.grid, stretch));
  }
}

TEST(Edit, EveryEditCanBeUndone) {
  Random random(1);
  int made = 0, resized = 0;
  for (int i = 0; i < 6000; ++i) {
    const Drawn drawn = random_drawn(random);
    const auto edit = random_edit(random, drawn);
    if (!edit) continue;
    ++made;
    EXPECT_EQ(undone(*edit), drawn.chart);
    if (edit->before) {
      ++resized;
      EXPECT_TRUE(edit->changes.empty());
      continue;
    }
    std::size_t differ = 0;
    for (std::size_t cell = 0; cell < drawn.chart.cells().size(); ++cell)
      differ += drawn.chart.cells()[cell] != edit->chart.cells()[cell] ? 1u : 0u;
    EXPECT_EQ(edit->changes.size(), differ);
    for (const CellChange& change : edit->changes) {
      EXPECT_EQ(change.before, drawn.chart.at(change.cell));
      EXPECT_EQ(change.after, edit->chart.at(change.cell));
    }
  }
  EXPECT_GT(made, 3500);
  EXPECT_GT(resized, 500);
}

TEST(Edit, EmptyCellsStayEmpty) {
  Random random(2);
  for (int i = 0; i < 3000; ++i) {
    const Drawn drawn = random_drawn(random);
    const auto edit = random_edit(random, drawn);
    if (!edit || edit->before || (edit->changes.size() == 1 && edit->changes[0].before == no_bead)) continue;
    for (std::size_t cell = 0; cell < drawn.chart.cells().size(); ++cell)
      EXPECT_EQ(drawn.chart.cells()[cell] == no_bead, edit->chart.cells()[cell] == no_bead);
  }
}

TEST(Edit, SymmetriesAreOfOrderTwoAndKeepTheBeads) {
  Random random(3);
  int applied = 0;
  for (int i = 0; i < 2000; ++i) {
    const Drawn drawn = random_drawn(random);
    for (const Symmetry symmetry : symmetries(drawn.chart, drawn.grid)) {
      const Edit once = apply(drawn.chart, drawn.grid, symmetry).value();
      EXPECT_EQ(sorted_beads(once.chart), sorted_beads(drawn.chart));
      EXPECT_EQ(apply(once.chart, drawn.grid, symmetry).value().chart, drawn.chart);
      ++applied;
    }
  }
  EXPECT_GT(applied, 1500);
}

TEST(Edit, SaysWhichSymmetriesThereAre) {
  using enum Symmetry;
  const auto of = [](int columns, int edge, Grid grid, bool last_row_out = false) {
    Chart chart = Chart::make(columns, edge).value();
    for (int column = 1; column < columns && last_row_out; column += 2) chart.set({column, edge - 1}, no_bead);
    return symmetries(chart, grid);
  };
  using Symmetries = std::vector<Symmetry>;
  EXPECT_EQ(of(6, 8, {}), Symmetries{half_turn});
  EXPECT_EQ(of(7, 8, {}), Symmetries{mirror_across});
  EXPECT_EQ(of(7, 8, {}, true), (Symmetries{mirror_across, mirror_along, half_turn}));
  EXPECT_EQ(of(6, 8, {.edge_round = true}), (Symmetries{mirror_along, half_turn}));
  EXPECT_EQ(of(7, 8, {.edge_round = true}), (Symmetries{mirror_across, mirror_along, half_turn}));
  EXPECT_EQ(of(6, 8, {.drop = 0}), (Symmetries{mirror_across, mirror_along, half_turn}));
  EXPECT_EQ(of(8, 8, {.drop = 2}), Symmetries{half_turn});
  EXPECT_EQ(of(10, 8, {.drop = 2}), Symmetries{mirror_across});
  const auto refused = apply(Chart::make(6, 8).value(), {}, mirror_across);
  ASSERT_FALSE(refused);
  EXPECT_EQ(message(refused.problem()),
            "symmetry: found mirror across, expected half turn, which map every bead of this chart onto a bead");
}

TEST(Edit, ShiftsRoundARingAddUp) {
  Random random(4);
  for (int i = 0; i < 300; ++i) {
    const Drawn drawn = random_drawn(random);
    const Grid ring{drawn.grid.drop, true, true};
    const int a = pick(random, -9, 9), b = pick(random, -9, 9);
    const auto first = shift_steps(drawn.chart, ring, a);
    if (!first) continue;
    EXPECT_EQ(shift_steps(first->chart, ring, b)->chart, shift_steps(drawn.chart, ring, a + b)->chart);
    EXPECT_TRUE(shift_steps(drawn.chart, ring, drawn.chart.edge())->changes.empty());
  }
  EXPECT_FALSE(shift_steps(Chart::make(4, 4).value(), {}, 1));
}

TEST(Edit, WhatGoesInComesOut) {
  Random random(5);
  for (int i = 0; i < 300; ++i) {
    const Drawn drawn = random_drawn(random);
    const int at = pick(random, 0, drawn.chart.edge()), count = pick(random, 1, 5);
    const Edit taller = insert_steps(drawn.chart, at, count, 7).value();
    EXPECT_EQ(delete_steps(taller.chart, at, count)->chart, drawn.chart);
    const int column = pick(random, 0, drawn.chart.columns()), columns = 4 * pick(random, 1, 2);
    const Edit wider = insert_columns(drawn.chart, drawn.grid, column, columns, 7).value();
    EXPECT_EQ(delete_columns(wider.chart, drawn.grid, column, columns)->chart, drawn.chart);
  }
  EXPECT_FALSE(insert_columns(Chart::make(6, 4).value(), {}, 2, 1, 0));
  EXPECT_FALSE(delete_steps(Chart::make(6, 4).value(), 0, 4));
}

TEST(Edit, LinesJoinTheirEndsWithoutGaps) {
  Random random(6);
  for (int i = 0; i < 2000; ++i) {
    Drawn drawn = random_drawn(random);
    drawn.chart = Chart::make(drawn.chart.columns(), drawn.chart.edge(), 0).value();
    drawn.grid.edge_round = drawn.grid.columns_round = false;
    const Stretch stretch{random_cell(random, drawn.chart), random_cell(random, drawn.chart)};
    const Edit line = draw_line(drawn.chart, drawn.grid, stretch, 1).value();
    EXPECT_EQ(line.chart.at(stretch.from), 1);
    EXPECT_EQ(line.chart.at(stretch.to), 1);
    // All of it hangs together: filling it from one end leaves none of it.
    Chart filled = flood_fill(line.chart, drawn.grid, stretch.from, 2)->chart;
    if (drawn.grid.drop != 1) continue;  // within a pair, as on a plain grid, cells may touch at a corner
    EXPECT_EQ(std::count(filled.cells().begin(), filled.cells().end(), Bead{1}), 0)
        << drawn.grid.drop << ": " << stretch.from.column << "," << stretch.from.step << " to " << stretch.to.column
        << "," << stretch.to.step << " in " << drawn.chart.columns() << " x " << drawn.chart.edge();
  }
}

TEST(Edit, FillingFromAnEmptyCellChangesNothing) {
  Chart chart = Chart::make(4, 4).value();
  chart.set({1, 1}, no_bead);
  const Edit edit = flood_fill(chart, {}, {1, 1}, 3).value();
  EXPECT_TRUE(edit.changes.empty());
  EXPECT_EQ(edit.chart, chart);
  EXPECT_EQ(flood_fill(chart, {}, {0, 0}, 3)->changes.size(), 15u);
}

TEST(Edit, AnEllipseIsAsSymmetricAsItsChart) {
  const Chart chart = Chart::make(9, 9).value();
  const Edit ellipse = draw_ellipse(chart, {}, {{0, 0}, {8, 8}}, 1, true).value();
  EXPECT_EQ(apply(ellipse.chart, {}, Symmetry::mirror_across)->changes.size(), 0u);
  EXPECT_NEAR(static_cast<double>(ellipse.changes.size()), 3.1416 / 4 * 81, 6);
  const Edit ring = draw_ellipse(chart, {}, {{0, 0}, {8, 8}}, 1, false).value();
  EXPECT_LT(ring.changes.size(), ellipse.changes.size());
  EXPECT_EQ(ring.chart.at({4, 4}), 0);
}

TEST(Edit, OutlinesLeaveTheInsideAsItIs) {
  for (const int drop : {0, 1, 2})
    for (const bool round : {false, true}) {
      const Grid grid{drop, round, false};
      const Chart chart = Chart::make(12, 12).value();
      const Stretch stretch{{2, 2}, {9, 9}};
      const Chart outline = draw_rectangle(chart, grid, stretch, 1, false)->chart;
      const Chart filled = draw_rectangle(chart, grid, stretch, 1, true)->chart;
      for (int step = 2; step <= 9; ++step)
        for (int column = 2; column <= 9; ++column) {
          const bool rim = step == 2 || step == 9 || column == 2 || column == 9;
          EXPECT_EQ(outline.at({column, step}), rim ? 1 : 0) << drop << ": " << column << "," << step;
          EXPECT_EQ(filled.at({column, step}), 1);
        }
      EXPECT_EQ(draw_ellipse(chart, grid, stretch, 1, false)->chart.at({6, 6}), 0) << drop;
    }
}

TEST(Edit, AwayFromTheEdgesEveryNeighbourIsThere) {
  const Chart chart = Chart::make(12, 12).value();
  for (const int drop : {0, 1, 2})
    for (int column = 1; column < 11; ++column) {
      const Grid grid{drop};
      EXPECT_EQ(static_cast<int>(neighbours(chart, grid, {column, 5}).size()), neighbours_within(grid, {column, 5}));
      EXPECT_LT(static_cast<int>(neighbours(chart, grid, {column, 0}).size()), neighbours_within(grid, {column, 0}));
    }
  EXPECT_LT(static_cast<int>(neighbours(chart, {}, {0, 5}).size()), neighbours_within({}, {0, 5}));
}

TEST(Edit, StampsKeepThePairsOfTwoDrop) {
  const Chart chart = Chart::make(12, 6).value();
  const Grid pairs{.drop = 2};
  const Stamp stamp = copy(chart, pairs, {{1, 1}, {4, 1}}).value();  // from the middle of a pair
  EXPECT_TRUE(press(chart, pairs, stamp, {5, 2}));
  for (const int column : {0, 2, 3, 4}) EXPECT_FALSE(press(chart, pairs, stamp, {column, 2})) << column;
}

TEST(Edit, StampsKeepTheirShift) {
  Chart chart = Chart::make(8, 6).value();
  chart.set({2, 1}, 1);
  chart.set({3, 1}, 2);
  const Stamp stamp = copy(chart, {}, {{2, 1}, {3, 1}}).value();
  const Edit pressed = press(chart, {}, stamp, {4, 3}).value();
  EXPECT_EQ(pressed.chart.at({4, 3}), 1);
  EXPECT_EQ(pressed.chart.at({5, 3}), 2);
  EXPECT_FALSE(press(chart, {}, stamp, {5, 3}));
  const Edit again = repeat(chart, {}, {{2, 1}, {3, 1}}).value();
  for (int step = 0; step < 6; ++step)
    for (int column = 0; column < 8; ++column) EXPECT_EQ(again.chart.at({column, step}), column % 2 == 0 ? 1 : 2);
  EXPECT_EQ(copy(chart, {}, {{2, 1}, {3, 1}}, Bead{2})->cells.at({1, 0}), no_bead);
}

}  // namespace
}  // namespace evencount::chart
