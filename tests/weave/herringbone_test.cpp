#include "weave/herringbone.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "show_plan.hpp"
#include "weave/thread_path.hpp"
#include "whole_pieces.hpp"

namespace evencount::weave {
namespace {

using namespace testing_support;

const Technique& herringbone = herringbone_techniques().front();

chart::Chart random_piece(Random& random, int most) {
  const int columns = 2 * pick(random, 1, most / 2), edge = pick(random, 1, most);
  return filled_chart(random, herringbone.lattice(columns, edge));
}

TEST(Herringbone, RowsGoRightAndLeftInTurn) {
  Random random(111);
  for (int i = 0; i < 500; ++i) {
    const chart::Chart chart = random_piece(random, 16);
    std::vector<RowInWords> rows;
    for (int step = 0; step < chart.edge(); ++step) {
      const bool right = step % 2 == 0;
      RowInWords row{right ? Travel::right : Travel::left, {}};
      for (int column = 0; column < chart.columns(); ++column)
        row.cells.push_back({right ? column : chart.columns() - 1 - column, step});
      rows.push_back(row);
    }
    expect_faithful(herringbone, chart, rows);
  }
}

// Neighbours in a stitch are strung in opposite directions, so that they lean together; a column keeps one direction.
TEST(Herringbone, ColumnsAreStrungUpAndDownInTurn) {
  const Plan plan = blank_plan(herringbone, 6, 5);
  for (const Stitch& stitch : plan.stitches) {
    if (stitch.act != Act::pick_up || stitch.cell.step == 0) continue;
    const bool first_of_stitch = (stitch.cell.column % 2 == 0) == (stitch.cell.step % 2 == 0);
    EXPECT_EQ(stitch.travel, first_of_stitch ? Travel::forth : Travel::back)
        << stitch.cell.column << "," << stitch.cell.step;
  }
}

TEST(Herringbone, FourByThreeByHand) {
  EXPECT_EQ(show(blank_plan(herringbone, 4, 3), true), R"(
row 1 > start +0,0^ E +1,0v E 0,0^ E 1,0v E +2,0^ E 1,0v E 2,0^ E +3,0v E 2,0^ E 3,0v
row 2 < +3,1v E +2,1^ 2,0^ E 1,0v +1,1v E +0,1^ 0,0^ O 0,1v
row 3 > +0,2v E +1,2^ 1,1^ I 2,1v +2,2v E +3,2^ 3,1^ finish
)");
}

TEST(Herringbone, RefusesWhatCannotBeStitched) {
  EXPECT_EQ(refusal(herringbone, 2, 1), "");
  for (const int columns : {0, 1, 3, 7})
    EXPECT_EQ(refusal(herringbone, columns, 4),
              fmt::format("columns: found {}, expected an even number from 2 for flat herringbone, whose "
                          "stitches take two columns each",
                          columns));
  EXPECT_EQ(refusal(herringbone, 4, 0), "edge: found 0, expected 1 or more for flat herringbone");
  EXPECT_EQ(refusal_of_cell(herringbone, 4, 3, {2, 1}, chart::no_bead),
            "column 2, step 1: found an empty cell, expected a bead in every cell for flat herringbone");
  const auto chart = chart::Chart::make(4, 3).value();
  for (const Closure closure : {Closure::zip, Closure::sew, Closure::round})
    EXPECT_EQ(make_plan("herringbone", chart, {closure}).problem().found, closure_name(closure));
}

TEST(Herringbone, FaultsAreNoticed) {
  expect_faults_noticed(herringbone, 112, [](Random& random) { return random_piece(random, 7); });
}

TEST(Herringbone, ThreadGrowsWithEveryStitch) {
  const bead::Gauge gauge =
      bead::herringbone_gauge(bead::find_size("cylinder-11").value(), bead::threads().front());
  Random random(113);
  for (int i = 0; i < 100; ++i) check_thread(open_plan(herringbone, random_piece(random, 12)), gauge);
}

// Two columns, three steps. The ladder: 4 times through a bead, 3 times across. Row 2: up, across, down and down through the bead
// below. Past the outside of that bead, up through the one above it, and the same again.
TEST(Herringbone, TwoByThreeThreadByHand) {
  const bead::Size cylinder = bead::find_size("cylinder-11").value();
  const bead::Thread thread = bead::threads().front();
  const bead::Gauge gauge = bead::herringbone_gauge(cylinder, thread);
  const double bead_mm = cylinder.length.mm(), gap_mm = gauge.edge.mm() - bead_mm;
  const double lean_mm = (cylinder.hole - thread.diameter).mm() / 2;
  const double across_mm = gauge.column.mm() - 2 * lean_mm;
  const double ladder_mm = 4 * bead_mm + 3 * across_mm;
  const double row_mm = gap_mm + bead_mm + across_mm + bead_mm + gap_mm + bead_mm;
  const double out_mm = cylinder.diameter.mm() / 2 - lean_mm;
  const double outside_mm = out_mm + bead_mm + std::hypot(out_mm, gap_mm);
  const ThreadUse use = thread_use(blank_plan(herringbone, 2, 3), cylinder, gauge, thread).value();
  EXPECT_NEAR(use.path.mm(), ladder_mm + row_mm + outside_mm + bead_mm + row_mm, 1e-9);
  EXPECT_EQ(use.passes, (std::vector<int>{3, 2, 2, 2, 1, 1}));
  EXPECT_EQ(use.warps, 0);
}

}  // namespace
}  // namespace evencount::weave
