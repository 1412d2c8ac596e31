#include "weave/replay.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "random_band.hpp"

namespace evencount::weave {
namespace {

using namespace testing_support;

TEST(Replay, RebuildsEveryChart) {
  Random random(3);
  for (int i = 0; i < 2000; ++i) {
    const Band band = random_band(random, 16, 30);
    const auto made = replay(plan_of(band));
    ASSERT_TRUE(made) << message(made.problem());
    ASSERT_EQ(*made, band.chart);
  }
}

RC_GTEST_PROP(ReplayProperty, RebuildsAnyCells, ()) {
  const int columns = *rc::gen::inRange(2, 30), edge = *rc::gen::inRange(1, 30);
  auto chart = chart::Chart::make(columns, edge).value();
  for (int step = 0; step < edge; ++step)
    for (int column = 0; column < columns; ++column)
      chart.set({column, step}, *rc::gen::inRange<Bead>(0, 100));
  const auto plan = make_plan(flat_peyote_for(columns).id, chart, {Closure::open});
  RC_ASSERT(plan.ok());
  RC_ASSERT(replay(*plan).value() == chart);
}

Plan small_plan() {
  return make_plan("peyote-even-count", chart::Chart::make(4, 3).value(), {Closure::zip}).value();
}

TEST(Replay, NamesTheRowAndTheStitch) {
  Plan plan = small_plan();
  // Row 3's second pick-up, given the cell of its first.
  Stitch& stitch = plan.stitches[plan.rows[1].first_stitch + 2];
  ASSERT_EQ(stitch.cell, (Cell{2, 1}));
  stitch.cell = {0, 1};
  const auto made = replay(plan);
  ASSERT_FALSE(made);
  EXPECT_EQ(message(made.problem()),
            "row 3, stitch 3: found column 0, step 1 a second time, expected each cell stitched once");
}

TEST(Replay, RefusesRowMarksThatDoNotFit) {
  const auto refused = [](auto change) {
    Plan plan = small_plan();
    change(plan);
    const auto made = replay(plan);
    return !made && made.problem().code == ProblemCode::bad_plan;
  };
  EXPECT_TRUE(refused([](Plan& p) { p.rows.clear(); }));
  EXPECT_TRUE(refused([](Plan& p) { p.rows.pop_back(); }));
  EXPECT_TRUE(refused([](Plan& p) { p.rows[1].first_number = 4; }));
  EXPECT_TRUE(refused([](Plan& p) { p.rows[2].end_stitch += 2; }));
  EXPECT_TRUE(refused([](Plan& p) { std::swap(p.rows[1], p.rows[2]); }));
  EXPECT_TRUE(refused([](Plan& p) { p.rows[1].travel = opposite(p.rows[1].travel); }));
  EXPECT_TRUE(refused([](Plan& p) { p.rows[1].last_number = 4; }));
  EXPECT_TRUE(refused([](Plan& p) { p.lattice.columns = 6; }));
  EXPECT_TRUE(refused([](Plan& p) { p.lattice.edge = 4; }));
  EXPECT_TRUE(refused([](Plan& p) { p.lattice.columns = 0; }));
  EXPECT_TRUE(refused([](Plan& p) { p.closure = Closure::open; }));
  EXPECT_TRUE(refused([](Plan& p) { p.empty_cells = {{1, 2}}; }));
  EXPECT_TRUE(refused([](Plan& p) { p.stitches.clear(); }));
  EXPECT_TRUE(refused([](Plan& p) { p = {}; }));
}

}  // namespace
}  // namespace evencount::weave
