#include "weave/tubular_peyote.hpp"

#include <gtest/gtest.h>

#include "random_shapes.hpp"
#include "weave/replay.hpp"

namespace evencount::weave {
namespace {

using namespace testing_support;

chart::Chart blank(int columns, int edge) {
  return chart::Chart::make(columns, edge).value();
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
