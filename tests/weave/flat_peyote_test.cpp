// Plans written out by hand, stitch by stitch, from how the thread can go.

#include "weave/flat_peyote.hpp"

#include <gtest/gtest.h>

#include "show_plan.hpp"

namespace evencount::weave {
namespace {

using testing_support::show;

TEST(FlatPeyote, EvenCountFourByThree) {
  const auto chart = chart::Chart::make(4, 3).value();
  EXPECT_EQ(show(make_plan("peyote-even-count", chart, {Closure::open}).value()), R"(
rows 1-2 < start +3,0 +2,0 +1,0 +0,0 E
row 3 > +0,1 1,0 +2,1 3,0 E
row 4 < +3,1 2,1 +1,1 0,1 E
row 5 > +0,2 1,1 +2,2 3,1 E
row 6 < +3,2 2,2 +1,2 0,2 finish
)");
}

TEST(FlatPeyote, EvenCountZipped) {
  const auto chart = chart::Chart::make(4, 3).value();
  const std::string zipped = show(make_plan("peyote-even-count", chart, {Closure::zip}).value());
  EXPECT_NE(
      zipped.find("row 6 < +3,2 2,2 +1,2 0,2 E\nzip > *0,0 *1,2 *2,0 *3,2 E *3,0 *2,0 *1,2 *0,0 finish"),
      std::string::npos)
      << zipped;
}

TEST(FlatPeyote, EvenCountWithoutTheLastRow) {
  auto chart = chart::Chart::make(4, 2).value();
  chart.set({1, 1}, chart::no_bead);
  chart.set({3, 1}, chart::no_bead);
  EXPECT_EQ(show(make_plan("peyote-even-count", chart, {Closure::open}).value()), R"(
rows 1-2 < start +3,0 +2,0 +1,0 +0,0 E
row 3 > +0,1 1,0 +2,1 3,0 finish
)");
}

// Row 3 ends with a figure-8 through the beads below its last one, row 5 with a loop.
TEST(FlatPeyote, OddCountThreeByThree) {
  const auto chart = chart::Chart::make(3, 3).value();
  EXPECT_EQ(show(make_plan("peyote-odd-count", chart, {Closure::open}).value()), R"(
rows 1-2 < start +2,0 +1,0 +0,0 E
row 3 > +0,1 1,0 +2,1 E 2,0 1,0 0,0 E 0,1 1,0 2,0 E 2,1
row 4 < +1,1 0,1 E
row 5 > +0,2 1,1 +2,2 L 2,2
row 6 < +1,2 0,2 finish
)");
}

TEST(FlatPeyote, OddCountFiveTurnsInside) {
  const auto chart = chart::Chart::make(5, 2).value();
  const std::string plan = show(make_plan("peyote-odd-count", chart, {Closure::open}).value());
  EXPECT_NE(plan.find("row 3 > +0,1 1,0 +2,1 3,0 +4,1 E 4,0 3,0 2,0 I 2,1 3,0 4,0 E 4,1\n"),
            std::string::npos)
      << plan;
}

}  // namespace
}  // namespace evencount::weave
