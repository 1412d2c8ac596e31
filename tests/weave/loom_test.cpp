#include "weave/loom.hpp"

#include <gtest/gtest.h>

#include "show_plan.hpp"
#include "weave/thread_path.hpp"
#include "whole_pieces.hpp"

namespace evencount::weave {
namespace {

using namespace testing_support;

const Technique& loom = loom_techniques().front();
const bead::Size cylinder = bead::find_size("cylinder-11").value();
const bead::Thread thread = bead::threads().front();
const bead::Gauge gauge = bead::loom_gauge(cylinder, thread);

chart::Chart random_piece(Random& random, int most) {
  const int columns = pick(random, 1, most), edge = pick(random, 1, most);
  return filled_chart(random, loom.lattice(columns, edge));
}

TEST(Loom, EveryRowIsStrungToTheRightAndPassedBack) {
  Random random(101);
  for (int i = 0; i < 500; ++i) {
    const chart::Chart chart = random_piece(random, 16);
    std::vector<RowInWords> rows;
    for (int step = 0; step < chart.edge(); ++step) {
      RowInWords row;
      for (int column = 0; column < chart.columns(); ++column) row.cells.push_back({column, step});
      rows.push_back(row);
    }
    expect_faithful(loom, chart, rows);
    const Plan plan = open_plan(loom, chart);
    EXPECT_TRUE(plan.on_warps);
    EXPECT_EQ(plan.strung_together, chart.columns());
    const ThreadUse use = thread_use(plan, cylinder, gauge, thread).value();
    for (const int passes : use.passes) EXPECT_EQ(passes, 2);
    check_thread(plan, gauge);
  }
}

TEST(Loom, ThreeByTwoByHand) {
  EXPECT_EQ(show(blank_plan(loom, 3, 2)), R"(
row 1 > start +0,0 +1,0 +2,0 W 2,0 1,0 0,0 E
row 2 > +0,1 +1,1 +2,1 W 2,1 1,1 0,1 finish
)");
}

TEST(Loom, RefusesWhatCannotBeWoven) {
  EXPECT_EQ(refusal(loom, 1, 1), "");
  EXPECT_EQ(refusal(loom, 0, 4), "columns: found 0, expected 1 or more for loom work");
  EXPECT_EQ(refusal(loom, 4, 0), "edge: found 0, expected 1 or more for loom work");
  EXPECT_EQ(refusal_of_cell(loom, 4, 3, {2, 1}, chart::no_bead),
            "column 2, step 1: found an empty cell, expected a bead in every cell for loom work");
  const auto chart = chart::Chart::make(4, 3).value();
  for (const Closure closure : {Closure::zip, Closure::sew, Closure::round})
    EXPECT_EQ(make_plan("loom", chart, {closure}).problem().found, closure_name(closure));
}

TEST(Loom, FaultsAreNoticed) {
  expect_faults_noticed(loom, 102, [](Random& random) { return random_piece(random, 7); });
}

// One warp more than beads to a row, 18 gaps to the inch for 11/0 cylinders: kingsmerecrafts.info/page82.html. The outer two are
// doubled: common practice, no source.
TEST(Loom, WarpsAreOneMoreThanColumns) {
  for (int columns = 1; columns <= 20; ++columns) {
    const ThreadUse use = thread_use(blank_plan(loom, columns, 10), cylinder, gauge, thread).value();
    const int doubled = 2;
    EXPECT_EQ(use.warps - doubled, columns + 1);
    EXPECT_NEAR(use.warp_length.mm(), 10 * gauge.edge.mm() + 400, 1e-9);
    EXPECT_NEAR(use.cut.mm(), use.path.mm() + 2 * 150 + use.warps * use.warp_length.mm(), 1e-9);
  }
  EXPECT_NEAR(18 * gauge.column.mm(), inches(1).mm(), 0.1);
}

// A row: its two beads and the gap between them twice, and a gap's worth round the last warp. Between the rows the thread goes out
// round the first warp, half a gap each way, and one bead on, less what it leans in both holes.
TEST(Loom, TwoByTwoThreadByHand) {
  const double gap_mm = gauge.column.mm() - cylinder.length.mm();
  const double lean_mm = (cylinder.hole - thread.diameter).mm() / 2;
  const double row_mm = 4 * cylinder.length.mm() + 3 * gap_mm;
  const double between_mm = 2 * std::hypot(gap_mm / 2, gauge.edge.mm() / 2 - lean_mm);
  const ThreadUse use = thread_use(blank_plan(loom, 2, 2), cylinder, gauge, thread).value();
  EXPECT_NEAR(use.path.mm(), 2 * row_mm + between_mm, 1e-9);
}

}  // namespace
}  // namespace evencount::weave
