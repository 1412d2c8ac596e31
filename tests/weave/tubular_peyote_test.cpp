#include "weave/tubular_peyote.hpp"

#include <gtest/gtest.h>

#include "random_band.hpp"
#include "weave/replay.hpp"

namespace evencount::weave {
namespace {

using namespace testing_support;

chart::Chart blank(int columns, int edge) {
  return chart::Chart::make(columns, edge).value();
}

void leave_out_last_round(chart::Chart& chart) {
  for (int column = 1; column < chart.columns(); column += 2) chart.set({column, chart.edge() - 1}, chart::no_bead);
}

/// A tube, sometimes without its last round.
chart::Chart random_tube(Random& random, bool odd) {
  chart::Chart chart = blank(2 * pick(random, 2, 8) + (odd ? 1 : 0), pick(random, 1, 8));
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
RandomBezel random_bezel(Random& random) {
  const int columns = 2 * pick(random, 4, 12), back = pick(random, 0, 4), front = pick(random, 0, 5);
  const int rows = back + 2 + front, edge = (rows + 1) / 2;
  RandomBezel bezel{blank(columns, edge)};
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

TEST(TubularPeyote, ReplayRebuildsEveryTube) {
  Random random(11);
  for (int i = 0; i < 600; ++i) {
    const bool odd = i % 2 == 1;
    const chart::Chart chart = random_tube(random, odd);
    const auto plan = make_plan(odd ? "tubular-odd-count" : "tubular-even-count", chart, {Closure::round});
    ASSERT_TRUE(plan) << message(plan.problem());
    const auto made = replay(*plan);
    ASSERT_TRUE(made) << message(made.problem()) << " " << chart.columns() << " x " << chart.edge();
    EXPECT_EQ(*made, chart);
  }
}

TEST(TubularPeyote, ReplayRebuildsEveryBezel) {
  Random random(12);
  int decreases = 0;
  for (int i = 0; i < 600; ++i) {
    const RandomBezel bezel = random_bezel(random);
    const auto plan = make_plan("peyote-bezel", bezel.chart, bezel.making);
    if (!plan && plan.problem().found.find("to the next") != std::string::npos) continue;
    ASSERT_TRUE(plan) << message(plan.problem());
    const auto made = replay(*plan);
    ASSERT_TRUE(made) << message(made.problem()) << " " << bezel.chart.columns() << " x " << bezel.chart.edge()
                      << " from " << bezel.making.begin_at;
    EXPECT_EQ(*made, bezel.chart);
    decreases += static_cast<int>(plan->empty_cells.size());
  }
  EXPECT_GT(decreases, 6000);
}

TEST(TubularPeyote, EachEvenRoundBeginsOneColumnOn) {
  const Plan plan = make_plan("tubular-even-count", blank(6, 3), {Closure::round}).value();
  ASSERT_EQ(plan.rows.size(), 5u);
  const auto first_column = [&](const Row& row) {
    for (std::size_t i = row.first_stitch;; ++i)
      if (plan.stitches[i].act == Act::pick_up) return plan.stitches[i].cell.column;
  };
  EXPECT_EQ(first_column(plan.rows[0]), 1);
  EXPECT_EQ(first_column(plan.rows[1]), 2);
  EXPECT_EQ(first_column(plan.rows[2]), 3);
  EXPECT_EQ(first_column(plan.rows[4]), 5);
  for (const Row& row : plan.rows) {
    EXPECT_EQ(row.kind, RowKind::round);
    EXPECT_EQ(row.travel, Travel::right);
    EXPECT_FALSE(row.on_back);
  }
}

TEST(TubularPeyote, TheBackIsWorkedLast) {
  RandomBezel bezel{blank(12, 3)};
  bezel.making.begin_at = 2;
  const Plan plan = make_plan("peyote-bezel", bezel.chart, bezel.making).value();
  ASSERT_EQ(plan.rows.size(), 5u);  // the ring's two, two on the front, two on the back
  EXPECT_FALSE(plan.rows[2].on_back);
  EXPECT_TRUE(plan.rows[3].on_back);
  EXPECT_TRUE(plan.rows[4].on_back);
  EXPECT_EQ(plan.rows[4].last_number, 6);
}

TEST(TubularPeyote, RefusesWhatCannotBeWorked) {
  const auto code = [](std::string_view id, const chart::Chart& chart, Making making) {
    const auto plan = make_plan(id, chart, making);
    return plan ? std::string("made") : message(plan.problem());
  };
  const Making round{Closure::round};
  EXPECT_NE(code("tubular-even-count", blank(7, 3), round).find("spirals"), std::string::npos);
  EXPECT_NE(code("tubular-odd-count", blank(8, 3), round).find("step up"), std::string::npos);
  EXPECT_NE(code("tubular-even-count", blank(8, 3), {Closure::zip}).find("expected round"), std::string::npos);
  EXPECT_NE(code("peyote-bezel", blank(8, 2), {Closure::round, 3}).find("begin_at"), std::string::npos);
  chart::Chart holed = blank(8, 3);
  holed.set({2, 1}, chart::no_bead);
  EXPECT_NE(code("tubular-even-count", holed, round).find("column 2, step 1"), std::string::npos);
  EXPECT_NE(code("peyote-bezel", holed, round).find("nothing to hang on"), std::string::npos);
  holed.set({3, 1}, chart::no_bead);
  holed.set({4, 2}, chart::no_bead);
  holed.set({5, 2}, chart::no_bead);
  EXPECT_EQ(code("peyote-bezel", holed, round), "made");
}

}  // namespace
}  // namespace evencount::weave
