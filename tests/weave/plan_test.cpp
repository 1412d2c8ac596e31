#include "weave/plan.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "random_band.hpp"

namespace evencount::weave {
namespace {

using namespace testing_support;

TEST(Plan, RowsAreNamedAsTheyArePrinted) {
  EXPECT_EQ(row_name({.first_number = 1, .last_number = 2}), "rows 1-2");
  EXPECT_EQ(row_name({.first_number = 14, .last_number = 14}), "row 14");
  EXPECT_EQ(row_name({.kind = RowKind::zip, .first_number = 49, .last_number = 49}), "zip");
}

TEST(Plan, ClosuresComeBackFromTheirNames) {
  for (const Closure closure : {Closure::open, Closure::zip})
    EXPECT_EQ(parse_closure(closure_name(closure)).value(), closure);
  EXPECT_EQ(parse_closure("Zip").problem().code, ProblemCode::unknown_name);
}

TEST(Plan, OddColumnsLieHalfAStepFurther) {
  const Lattice peyote{4, 3, 1}, square{4, 3, 0};
  EXPECT_EQ(peyote.along_halves({2, 1}), 2);
  EXPECT_EQ(peyote.along_halves({3, 1}), 3);
  EXPECT_EQ(square.along_halves({3, 1}), 2);
}

TEST(Plan, PickedUpBeadsAreTheChartsBeads) {
  Random random(11);
  for (int i = 0; i < 300; ++i) {
    const Band band = random_band(random, 12, 20);
    const Plan plan = plan_of(band);
    std::vector<int> cells(5, 0);
    int beads = 0;
    for (const Bead bead : band.chart.cells()) {
      if (bead == chart::no_bead) continue;
      ++cells.at(bead);
      ++beads;
    }
    while (!cells.empty() && cells.back() == 0) cells.pop_back();
    EXPECT_EQ(count_beads(plan), cells);
    std::size_t strung = 0;
    for (const Row& row : plan.rows) strung += beads_of(plan, row).size();
    EXPECT_EQ(strung, static_cast<std::size_t>(beads));
    const bool odd_rows = !plan.empty_cells.empty();
    EXPECT_EQ(row_count(plan), 2 * band.chart.edge() - (odd_rows ? 1 : 0));
  }
}

}  // namespace
}  // namespace evencount::weave
