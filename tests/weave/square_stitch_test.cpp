#include "weave/square_stitch.hpp"

#include <gtest/gtest.h>

#include "faults.hpp"
#include "plan_checks.hpp"
#include "show_plan.hpp"

namespace evencount::weave {
namespace {

using namespace testing_support;

chart::Chart blank(int columns, int edge) {
  return chart::Chart::make(columns, edge).value();
}

Band random_square(Random& random) {
  Band band{filled_chart(random, {.columns = pick(random, 1, 12), .edge = pick(random, 1, 12)})};
  if (band.chart.edge() >= 3 && pick(random, 0, 1) == 0) band.closure = Closure::sew;
  return band;
}

TEST(SquareStitch, EveryPlanMakesItsChart) {
  Random random(31);
  for (int i = 0; i < 500; ++i) {
    const Band band = random_square(random);
    const Plan plan = checked_plan("square", band);
    ASSERT_FALSE(HasFailure()) << band.chart.columns() << " x " << band.chart.edge();
    EXPECT_EQ(row_count(plan), band.chart.edge());
  }
}

// Row 1 goes from the last column to column 0, row 2 back, and so on.
TEST(SquareStitch, RowsAreStrungToAndFro) {
  Random random(32);
  for (int i = 0; i < 300; ++i) {
    const Band band = random_square(random);
    const Plan plan = checked_plan("square", band);
    const int columns = band.chart.columns(), edge = band.chart.edge();
    ASSERT_EQ(plan.rows.size(), static_cast<std::size_t>(edge) + (band.closure == Closure::sew ? 1 : 0));
    for (int step = 0; step < edge; ++step) {
      const Row& row = plan.rows[static_cast<std::size_t>(step)];
      const bool leftwards = step % 2 == 0;
      EXPECT_EQ(row.travel, leftwards ? Travel::left : Travel::right);
      EXPECT_EQ(row.first_number, step + 1);
      EXPECT_EQ(row.begins, RowEnd::plain);
      EXPECT_EQ(row.ends, RowEnd::plain);
      std::vector<Cell> cells;
      for (int k = 0; k < columns; ++k) cells.push_back({leftwards ? columns - 1 - k : k, step});
      EXPECT_EQ(cells_of(plan, row), cells);
    }
  }
}

TEST(SquareStitch, ThreeByThreeByHand) {
  EXPECT_EQ(show(make_plan("square", blank(3, 3), {Closure::open}).value()), R"(
row 1 < start +2,0 +1,0 +0,0 E
row 2 > +0,1 I 0,0 E 0,1 +1,1 I 1,0 I 1,1 +2,1 E 2,0 I 2,1 E
row 3 < +2,2 I 2,1 E 2,2 +1,2 I 1,1 I 1,2 +0,2 E 0,1 I 0,2 finish
)");
}

TEST(SquareStitch, SewnTwoByThreeByHand) {
  const std::string plan = show(make_plan("square", blank(2, 3), {Closure::sew}).value());
  EXPECT_NE(plan.find("+0,2 E 0,1 I 0,2 E\nsewn join > *0,0 I *0,2 E *0,0 *1,0 E *1,2 I *1,0 finish\n"),
            std::string::npos)
      << plan;
}

TEST(SquareStitch, OneColumnByHand) {
  EXPECT_EQ(show(make_plan("square", blank(1, 3), {Closure::sew}).value()), R"(
row 1 < start +0,0 E
row 2 > +0,1 E 0,0 E 0,1 E
row 3 < +0,2 E 0,1 E 0,2 E
sewn join > *0,0 E *0,2 E *0,0 finish
)");
}

TEST(SquareStitch, RefusesWhatItCannotMake) {
  chart::Chart gap = blank(4, 3);
  gap.set({2, 1}, chart::no_bead);
  const auto refused = make_plan("square", gap, {Closure::open});
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.problem().code, ProblemCode::wrong_size);
  EXPECT_EQ(message(refused.problem()),
            "column 2, step 1: found an empty cell, expected a bead in every cell");
  for (int step = 0; step < 3; ++step)
    for (int column = 0; column < 4; ++column) {
      chart::Chart one = blank(4, 3);
      one.set({column, step}, chart::no_bead);
      const auto made = make_plan("square", one, {Closure::open});
      ASSERT_FALSE(made) << column << " " << step;
      EXPECT_EQ(made.problem().where, "column " + std::to_string(column) + ", step " + std::to_string(step));
    }
  for (const int edge : {1, 2}) {
    const auto seam = make_plan("square", blank(4, edge), {Closure::sew});
    ASSERT_FALSE(seam);
    EXPECT_EQ(seam.problem().code, ProblemCode::too_few_beads);
  }
  EXPECT_FALSE(make_plan("square", blank(4, 4), {Closure::zip}));
  EXPECT_FALSE(make_plan("square", blank(4, 4), {Closure::round}));
  const Technique square = find_technique("square").value();
  EXPECT_EQ(square.check_size(0, 3).problem().where, "columns");
  EXPECT_EQ(square.check_size(3, 0).problem().where, "edge");
  EXPECT_TRUE(square.check_size(1, 1).ok());
}

TEST(SquareStitch, ReplayNoticesFaults) {
  Random random(33);
  const FaultCount count = count_faults(random, 20000, [](Random& r) {
    const Band band = random_square(r);
    return Piece{make_plan("square", band.chart, {band.closure}).value(), band.chart};
  });
  for (const int made : count.made) EXPECT_GT(made, 300);
  print_faults("square stitch", count);
  EXPECT_GE(count.rate(), 0.99);
}

TEST(SquareStitch, ThreadGrowsWithEveryStitch) {
  const bead::Gauge gauge =
      bead::square_gauge(bead::find_size("cylinder-11").value(), bead::threads().front());
  Random random(34);
  for (int i = 0; i < 100; ++i) {
    const Band band = random_square(random);
    check_thread(make_plan("square", band.chart, {band.closure}).value(), gauge);
  }
}

// Two strung, then a circle round each pair: eight beads gone through, two steps from column to column, five turns.
TEST(SquareStitch, ThreadOfTwoByTwoByHand) {
  const bead::Size bead = bead::find_size("cylinder-11").value();
  const bead::Thread thread = bead::threads().front();
  const bead::Gauge gauge = bead::square_gauge(bead, thread);
  const Plan plan = make_plan("square", blank(2, 2), {Closure::open}).value();
  const double turn_mm = gauge.edge.mm() - (bead.hole - thread.diameter).mm();
  const double aside_mm = gauge.column.mm() - bead.length.mm();
  EXPECT_NEAR(thread_use(plan, bead, gauge, thread).value().path.mm(),
              8 * bead.length.mm() + 2 * aside_mm + 5 * turn_mm, 1e-9);
}

}  // namespace
}  // namespace evencount::weave
