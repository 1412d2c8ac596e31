#include "weave/replay.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <array>

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

/// What replay says of a plan whose nth stitch of a kind, from 0, was changed.
template <typename Matches, typename Change>
std::string said_of(Plan plan, std::size_t nth, Matches matches, Change change) {
  for (Stitch& stitch : plan.stitches)
    if (matches(stitch) && nth-- == 0) change(stitch);
  const auto made = replay(plan);
  return made ? "made" : message(made.problem());
}

// Row 2 of brick hangs its second bead on the thread just below it, and no bead on the thread beside that one.
TEST(Replay, GoesUnderTheNearestThreadOnly) {
  const Plan plan = make_plan("brick", chart::Chart::make(3, 5).value(), {Closure::open}).value();
  const auto is_under = [](const Stitch& s) { return s.act == Act::under; };
  EXPECT_EQ(said_of(plan, 0, is_under, [](Stitch&) {}), "made");
  EXPECT_EQ(said_of(plan, 0, is_under, [](Stitch& s) { --s.cell.step; }),
            "row 2, stitch 4: found from column 1, step 3 under the thread after column 0, step 2, expected the nearest "
            "thread of the row before");
  EXPECT_EQ(said_of(plan, 1, is_under, [](Stitch& s) { ++s.cell.step; }),
            "row 2, stitch 12: found from column 1, step 2 under the thread after column 0, step 3, expected the nearest "
            "thread of the row before");
  // And comes back into the bead it left.
  Plan elsewhere = plan;
  const auto under = std::find_if(elsewhere.stitches.begin(), elsewhere.stitches.end(), is_under);
  ASSERT_EQ((under + 1)->act, Act::pass);
  --(under + 1)->cell.column;
  EXPECT_EQ(replay(elsewhere).problem().expected, "the same bead again after going round a thread");
}

// Beyond the end of the row before there is no thread just below: its last one is the nearest.
TEST(Replay, HangsABeadBeyondTheEndOnTheLastThread) {
  auto chart = chart::Chart::make(2, 3).value();
  chart.set({0, 0}, chart::no_bead);
  const Plan plan = make_plan("brick", chart, {Closure::open}).value();
  const Stitch last_under = *std::find_if(plan.stitches.rbegin(), plan.stitches.rend(),
                                          [](const Stitch& s) { return s.act == Act::under; });
  EXPECT_EQ(last_under.cell, (Cell{0, 1}));
  EXPECT_EQ(plan.stitches[plan.stitches.size() - 2].cell, (Cell{1, 0}));
  EXPECT_EQ(replay(plan).value(), chart);
}

// Without the last pass the last bead hangs on one thread: it would fall out over the edge.
TEST(Replay, AStitchHoldsOnBothSides) {
  Plan plan = make_plan("peyote-even-count", chart::Chart::make(4, 3).value(), {Closure::open}).value();
  ASSERT_EQ(plan.stitches[plan.stitches.size() - 2].act, Act::pass);
  plan.stitches.erase(plan.stitches.end() - 2);
  --plan.rows.back().end_stitch;
  const auto made = replay(plan);
  ASSERT_FALSE(made);
  EXPECT_EQ(made.problem().found, "a stitch that holds at 1 place only");
}

TEST(Replay, KnowsTheEdgesOfASeam) {
  for (const char* technique : {"square", "brick"}) {
    for (const auto& [columns, edge] : {std::pair(2, 5), {3, 5}, {4, 5}, {2, 3}, {3, 3}, {4, 3}, {3, 4}}) {
      const Plan plan = make_plan(technique, chart::Chart::make(columns, edge).value(), {Closure::sew}).value();
      const Row& seam = plan.rows.back();
      ASSERT_EQ(seam.kind, RowKind::sew);
      int turns = 0;
      for (std::size_t i = seam.first_stitch; i < seam.end_stitch; ++i) {
        if (plan.stitches[i].act != Act::turn) continue;
        ++turns;
        Plan wrong = plan;
        Turn& turn = wrong.stitches[i].turn;
        turn = turn == Turn::edge ? Turn::inside : Turn::edge;
        const auto made = replay(wrong);
        ASSERT_FALSE(made) << technique << ", stitch " << i - seam.first_stitch + 1;
        EXPECT_TRUE(made.problem().where.starts_with("sewn join")) << message(made.problem());
      }
      EXPECT_EQ(turns, 2 * columns);
    }
  }
}

// A zip that ends on its way out is none, wherever it ends.
TEST(Replay, AZipGoesTheWholeWayAcross) {
  for (const auto& [technique, columns] : {std::pair("peyote-even-count", 6), std::pair("two-drop-even-count", 8)}) {
    const Plan plan = make_plan(technique, chart::Chart::make(columns, 5).value(), {Closure::zip}).value();
    ASSERT_TRUE(replay(plan));
    for (int joins = 1; joins < columns; ++joins) {
      Plan cut = plan;
      Row& zip = cut.rows.back();
      ASSERT_EQ(zip.kind, RowKind::zip);
      std::size_t end = zip.first_stitch;
      for (int left = joins; left > 0; ++end) left -= cut.stitches[end].act == Act::join ? 1 : 0;
      cut.stitches.erase(cut.stitches.begin() + static_cast<std::ptrdiff_t>(end), cut.stitches.end() - 1);
      zip.end_stitch = cut.stitches.size();
      const auto made = replay(cut);
      ASSERT_FALSE(made) << technique << ", " << joins << " joins";
      EXPECT_EQ(made.problem().found, "a zip that stops at column " + std::to_string(joins - 1));
      EXPECT_EQ(made.problem().expected, "the whole way across, to column " + std::to_string(columns - 1));
    }
  }
}

// Where no column stands out there is nothing to zip.
TEST(Replay, StraightColumnsCannotBeZipped) {
  for (const char* technique : {"square", "loom", "herringbone"}) {
    Plan plan = make_plan(technique, chart::Chart::make(4, 5).value(), {Closure::open}).value();
    plan.closure = Closure::zip;
    EXPECT_FALSE(replay(plan)) << technique;
  }
}

// On warps a bead that only one thread goes through falls out, and a row that turns round an inner warp is two rows.
TEST(Replay, OnWarpsEveryBeadIsGoneThroughBothWays) {
  const Plan plan = make_plan("loom", chart::Chart::make(3, 2).value(), {Closure::open}).value();
  Plan short_of_one = plan;
  short_of_one.stitches.erase(short_of_one.stitches.end() - 2);
  --short_of_one.rows.back().end_stitch;
  EXPECT_EQ(message(replay(short_of_one).problem()),
            "row 2: found column 0, step 1 on one thread only, expected thread under the warps and above them");
  Plan single = make_plan("loom", chart::Chart::make(3, 1).value(), {Closure::open}).value();
  single.stitches.erase(single.stitches.end() - 2);
  --single.rows.back().end_stitch;
  EXPECT_EQ(message(replay(single).problem()),
            "row 1: found column 0, step 0 on one thread only, expected thread under the warps and above them");
  // Two beads of row 1, back through one, and on again.
  Plan inner = plan;
  const auto stitch = [](Act act, Travel travel, Cell cell) {
    return Stitch{.act = act, .travel = travel, .turn = Turn::warp, .cell = cell};
  };
  const std::array turned{stitch(Act::turn, Travel::left, {}), stitch(Act::pass, Travel::left, {1, 0}),
                          stitch(Act::turn, Travel::right, {}), stitch(Act::pass, Travel::right, {1, 0})};
  inner.stitches.insert(inner.stitches.begin() + 3, turned.begin(), turned.end());
  for (Row& row : inner.rows) {
    if (row.first_stitch > 0) row.first_stitch += turned.size();
    row.end_stitch += turned.size();
  }
  EXPECT_EQ(message(replay(inner).problem()),
            "row 1, stitch 4: found a turn round the warp after column 1, step 0, expected a turn round the row's "
            "outer warp");
}

// Row 1's last unit, not gone round to the bead it began with, hangs open at a corner.
TEST(Replay, UnitsOfRightAngleWeaveAreClosed) {
  auto chart = chart::Chart::make(5, 3).value();
  for (const Cell empty :
       {Cell{0, 0}, Cell{2, 0}, Cell{4, 0}, Cell{1, 1}, Cell{3, 1}, Cell{0, 2}, Cell{2, 2}, Cell{4, 2}})
    chart.set(empty, chart::no_bead);
  Plan plan = make_plan("right-angle", chart, {Closure::open}).value();
  ASSERT_EQ(replay(plan).value(), chart);
  plan.stitches.erase(plan.stitches.end() - 2);
  --plan.rows.back().end_stitch;
  const auto made = replay(plan);
  ASSERT_FALSE(made);
  EXPECT_EQ(made.problem().found, "a unit at column 3, step 1 that is not closed");
  EXPECT_EQ(made.problem().expected, "thread round all four of its corners");
}

}  // namespace
}  // namespace evencount::weave
