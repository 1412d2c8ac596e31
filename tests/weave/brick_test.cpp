#include "weave/brick.hpp"

#include <gtest/gtest.h>

#include <optional>
#include <string_view>

#include "faults.hpp"
#include "plan_checks.hpp"
#include "random_shapes.hpp"
#include "show_plan.hpp"

namespace evencount::weave {
namespace {

using namespace testing_support;

chart::Chart blank(int columns, int edge) {
  return chart::Chart::make(columns, edge).value();
}

Band random_brick(Random& random) {
  if (pick(random, 0, 1) == 0) return {random_brick_outline(random)};
  Band band{filled_chart(random, {.columns = pick(random, 1, 12), .edge = pick(random, 2, 12)})};
  if (band.chart.edge() >= 3 && pick(random, 0, 2) > 0) band.closure = Closure::sew;
  return band;
}

TEST(Brick, EveryPlanMakesItsChart) {
  Random random(41);
  for (int i = 0; i < 1000; ++i) {
    const Band band = random_brick(random);
    const Plan plan = checked_plan("brick", band);
    ASSERT_FALSE(HasFailure()) << show(plan);
    EXPECT_EQ(row_count(plan), band.chart.columns());
  }
}

TEST(Brick, TrianglesDiamondsAndLeavesAreMade) {
  Random random(42);
  for (const std::vector<int>& beads : {std::vector{5, 4, 3, 2, 1},
                                        {1, 2, 3, 4, 5},
                                        {2, 3, 4, 5, 4, 3, 2, 1},
                                        {1, 2, 3, 2, 1},
                                        {1, 2, 1, 2, 1},
                                        {3, 2, 1, 2, 3},
                                        {1, 2, 3, 4, 5, 6, 5, 6, 5, 4, 3, 2, 1},
                                        {2, 1},
                                        {1, 2},
                                        {2, 3},
                                        {3, 2},
                                        {4, 5, 4, 5, 4}}) {
    const chart::Chart chart = leaf(random, beads);
    const Plan plan = checked_plan("brick", {chart});
    ASSERT_FALSE(HasFailure()) << show(plan);
    for (std::size_t row = 0; row < beads.size(); ++row)
      EXPECT_EQ(static_cast<int>(beads_of(plan, plan.rows[row]).size()), beads[row]);
  }
}

/// Where the beads of every row lie, told only by how many there are in each row, which way they run, and the marks at the
/// rows' ends, as the words tell it.
std::vector<std::vector<Cell>> cells_from_marks(const Plan& plan) {
  std::vector<std::vector<int>> rows;
  int lowest = 0;
  for (const Row& row : plan.rows) {
    if (!has_beads(row.kind)) continue;
    const int beads = static_cast<int>(beads_of(plan, row).size());
    const int onward = row.travel == Travel::forth ? 1 : -1;
    int begin = 0;
    if (!rows.empty()) {
      begin = rows.back().back() + (row.begins == RowEnd::decrease ? onward : -onward);
      const int end = rows.back().front() + (row.ends == RowEnd::increase ? onward : -onward);
      EXPECT_EQ(begin + 2 * onward * (beads - 1), end) << row_name(row);
    }
    rows.emplace_back();
    for (int k = 0; k < beads; ++k) rows.back().push_back(begin + 2 * onward * k);
    for (const int along : rows.back()) lowest = std::min(lowest, along - (rows.size() % 2 == 0 ? 1 : 0));
  }
  std::vector<std::vector<Cell>> cells(rows.size());
  for (std::size_t row = 0; row < rows.size(); ++row)
    for (const int along : rows[row]) cells[row].push_back({static_cast<int>(row), (along - lowest) / 2});
  return cells;
}

TEST(Brick, RowsAreStrungAsTheirMarksSay) {
  Random random(43);
  for (int i = 0; i < 1000; ++i) {
    const Band band = random_brick(random);
    const Plan plan = checked_plan("brick", band);
    const auto cells = cells_from_marks(plan);
    ASSERT_EQ(cells.size(), static_cast<std::size_t>(band.chart.columns()));
    for (std::size_t row = 0; row < cells.size(); ++row) {
      EXPECT_EQ(plan.rows[row].travel, row % 2 == 0 ? Travel::forth : Travel::back);
      EXPECT_EQ(plan.rows[row].first_number, static_cast<int>(row) + 1);
      EXPECT_EQ(plan.rows[row].last_number, static_cast<int>(row) + 1);
      ASSERT_EQ(cells_of(plan, plan.rows[row]), cells[row]) << show(plan);
    }
  }
}

TEST(Brick, PlainRectanglesHaveNoMarks) {
  Random random(44);
  for (int i = 0; i < 100; ++i) {
    const Plan plan = checked_plan("brick", {filled_chart(random, {.columns = pick(random, 1, 12), .edge = pick(random, 2, 12)})});
    for (const Row& row : plan.rows) {
      EXPECT_EQ(row.begins, RowEnd::plain);
      EXPECT_EQ(row.ends, RowEnd::plain);
    }
  }
}

// Written out by hand, from how the thread can go

TEST(Brick, ThreeByThreeByHand) {
  EXPECT_EQ(show(make_plan("brick", blank(3, 3), {Closure::open}).value()), R"(
row 1 v start +0,0 E +0,1 E 0,0 E 0,1 E +0,2 E 0,1 E 0,2
row 2 ^ +1,2 E +1,1 _0,1 1,1 E 1,2 I 1,1 E +1,0 _0,0 1,0
row 3 v +2,0 E +2,1 _1,0 2,1 E 2,0 I 2,1 E +2,2 _1,1 2,2 finish
)");
}

TEST(Brick, SewnTwoByFourByHand) {
  EXPECT_EQ(show(make_plan("brick", blank(2, 4), {Closure::sew}).value()), R"(
row 1 v start +0,0 E +0,1 E 0,0 E 0,1 E +0,2 E 0,1 E 0,2 E +0,3 E 0,2 E 0,3
row 2 ^ +1,3 E +1,2 _0,2 1,2 E 1,3 I 1,2 E +1,1 _0,1 1,1 E +1,0 _0,0 1,0 E
sewn join < *1,3 I *1,0 E *1,3 *0,3 E *0,0 I *0,3 finish
)");
}

// Down to a point: every row begins over the first thread; the last bead hangs alone.
TEST(Brick, TriangleToAPointByHand) {
  Random random(45);
  EXPECT_EQ(show(make_plan("brick", leaf(random, {3, 2, 1}), {Closure::open}).value()), R"(
row 1 v start +0,0 E +0,1 E 0,0 E 0,1 E +0,2 E 0,1 E 0,2
row 2 ^ +1,1 E +1,0 _0,0 1,0 E 1,1 I 1,0 O
row 3 v +2,1 _1,0 2,1 finish
)");
}

// Up from a point: two beads on one, then an increase hung on the last thread again.
TEST(Brick, TriangleFromAPointByHand) {
  Random random(46);
  EXPECT_EQ(show(make_plan("brick", leaf(random, {1, 2, 3}), {Closure::open}).value()), R"(
row 1 v start +0,1
row 2 ^ +1,1 E +1,0 O 0,1 1,0
row 3 v +2,0 E +2,1 _1,0 2,1 E 2,0 I 2,1 E +2,2 _1,0 2,2 finish
)");
}

TEST(Brick, MarksOfATriangle) {
  Random random(47);
  const Plan down = make_plan("brick", leaf(random, {3, 2, 1}), {Closure::open}).value();
  const Plan up = make_plan("brick", leaf(random, {1, 2, 3}), {Closure::open}).value();
  for (const std::size_t row : {1u, 2u}) {
    EXPECT_EQ(down.rows[row].begins, RowEnd::decrease);
    EXPECT_EQ(down.rows[row].ends, RowEnd::plain);
    EXPECT_EQ(up.rows[row].begins, RowEnd::plain);
    EXPECT_EQ(up.rows[row].ends, RowEnd::increase);
  }
}

// What can't be made

std::string refusal(const chart::Chart& chart, Closure closure = Closure::open) {
  const auto plan = make_plan("brick", chart, {closure});
  return plan ? "made" : message(plan.problem());
}

/// A chart drawn a line a step, '.' for an empty cell.
chart::Chart drawn(const std::vector<std::string_view>& steps) {
  auto chart = blank(static_cast<int>(steps[0].size()), static_cast<int>(steps.size()));
  for (int step = 0; step < chart.edge(); ++step)
    for (int column = 0; column < chart.columns(); ++column)
      if (steps[static_cast<std::size_t>(step)][static_cast<std::size_t>(column)] == '.')
        chart.set({column, step}, chart::no_bead);
  return chart;
}

TEST(Brick, RefusesOutlinesItCannotMake) {
  EXPECT_EQ(refusal(drawn({"AA", "A.", "AA"})),
            "column 1, step 1: found an empty cell, expected a bead in every cell between the ends of a row");
  EXPECT_EQ(refusal(drawn({"AA", "AA", "A.", "A."})),
            "column 1, step 1: found a row with its last end there, expected half a bead further out or in "
            "than the row before");
  EXPECT_EQ(refusal(drawn({"AAA", "AA.", "AAA", "AAA"})),
            "column 2, step 1: found an empty cell, expected a bead in every cell between the ends of a row");
  // Column 1 lies half a bead further on already, so a step down is a bead and a half.
  EXPECT_EQ(refusal(drawn({"A.", "AA", "AA"})),
            "column 1, step 1: found a row with its first end there, expected half a bead further out or in "
            "than the row before");
  EXPECT_EQ(refusal(drawn({"A.A", "A.A"})),
            "column 1, step 0: found a column without beads, expected beads in every column: each is a row");
  EXPECT_EQ(refusal(drawn({".AA", ".AA"})),
            "column 0, step 0: found a column without beads, expected beads in every column: each is a row");
  EXPECT_EQ(refusal(drawn({"AA.", "AA."})),
            "column 2, step 0: found a column without beads, expected beads in every column: each is a row");
  EXPECT_EQ(refusal(drawn({"..", "AA", "AA"})),
            "column 0, step 0: found an empty step at the beginning, expected a bead in step 0");
  EXPECT_EQ(refusal(drawn({"AA", "AA", ".."})),
            "column 0, step 2: found an empty step at the end, expected a bead in the last step");
  EXPECT_EQ(refusal(drawn({"AAA", "A.."})),
            "column 2, step 0: found a row of one bead over a row of one bead, expected two beads there: a "
            "single one has no "
            "thread to hang on");
  EXPECT_EQ(refusal(drawn({"AA", ".A"})),
            "column 1, step 1: found a row with its last end there, expected half a bead further out or in "
            "than the "
            "row before");
  EXPECT_EQ(refusal(drawn({"AA", "A."})), "made");
}

TEST(Brick, EveryRefusedOutlineHasAReason) {
  Random random(48);
  int refused = 0;
  for (int i = 0; i < 2000; ++i) {
    chart::Chart chart = random_brick_outline(random);
    const Cell cell{pick(random, 0, chart.columns() - 1), pick(random, 0, chart.edge() - 1)};
    chart.set(cell, chart.at(cell) == chart::no_bead ? Bead{0} : chart::no_bead);
    const auto plan = make_plan("brick", chart, {Closure::open});
    if (plan) {
      // Another outline that can be made.
      EXPECT_EQ(replay(*plan).value(), chart);
      continue;
    }
    ++refused;
    EXPECT_EQ(plan.problem().code, ProblemCode::wrong_size);
    EXPECT_TRUE(plan.problem().where.starts_with("column ")) << message(plan.problem());
  }
  EXPECT_GT(refused, 500);
}

TEST(Brick, RefusesSizesAndSeamsItCannotMake) {
  const Technique brick = find_technique("brick").value();
  EXPECT_EQ(brick.check_size(0, 3).problem().where, "columns");
  EXPECT_EQ(brick.check_size(3, 1).problem().where, "edge");
  EXPECT_TRUE(brick.check_size(1, 2).ok());
  EXPECT_EQ(make_plan("brick", blank(3, 1), {Closure::open}).problem().code, ProblemCode::wrong_size);
  EXPECT_EQ(make_plan("brick", blank(3, 2), {Closure::sew}).problem().code, ProblemCode::too_few_beads);
  EXPECT_FALSE(make_plan("brick", blank(3, 4), {Closure::zip}));
  EXPECT_FALSE(make_plan("brick", blank(3, 4), {Closure::round}));
  EXPECT_EQ(
      refusal(drawn({"A.A", "AAA", "AAA", "AAA"}), Closure::sew),
      "column 1, step 0: found an empty cell, expected a bead in every cell of a piece sewn end to end");
}

TEST(Brick, ReplayNoticesFaults) {
  Random random(49);
  const FaultCount count = count_faults(random, 20000, [](Random& r) {
    const Band band = random_brick(r);
    return Piece{make_plan("brick", band.chart, {band.closure}).value(), band.chart};
  });
  for (const int made : count.made) EXPECT_GT(made, 300);
  print_faults("brick stitch", count);
  EXPECT_GE(count.rate(), 0.99);
}

// Thread

const bead::Size cylinder = bead::find_size("cylinder-11").value();
const bead::Thread thread = bead::threads().front();
const bead::Gauge gauge = bead::brick_gauge(cylinder, thread);

TEST(Brick, ThreadGrowsWithEveryStitch) {
  Random random(50);
  for (int i = 0; i < 200; ++i) {
    const Band band = random_brick(random);
    check_thread(make_plan("brick", band.chart, {band.closure}).value(), gauge);
  }
}

// Two beads on two: nine beads gone through, six turns beside each other, one way up to the next row half a bead aside, and
// under the thread and back.
TEST(Brick, ThreadOfTwoByTwoByHand) {
  const Plan plan = make_plan("brick", blank(2, 2), {Closure::open}).value();
  const double lean_mm = (cylinder.hole - thread.diameter).mm();
  const double turn_mm = gauge.edge.mm() - lean_mm;
  const double between_mm = gauge.column.mm() - cylinder.length.mm();
  const double up_mm = std::hypot(between_mm, gauge.edge.mm() / 2 - lean_mm);
  EXPECT_NEAR(thread_use(plan, cylinder, gauge, thread).value().path.mm(),
              9 * cylinder.length.mm() + 6 * turn_mm + up_mm + 2 * between_mm, 1e-9);
}

}  // namespace
}  // namespace evencount::weave
