// Two-drop, figure-8 turns and shaped ends: what the other flat peyotes add to even and odd count.

#include <gtest/gtest.h>

#include "shapes.hpp"
#include "weave/flat_peyote.hpp"
#include "weave/replay.hpp"

namespace evencount::weave {
namespace {

using namespace testing_support;

chart::Chart random_chart(Random& random, int columns, int edge) {
  return filled_chart(random, {.columns = columns, .edge = edge});
}

void expect_replayed(std::string_view technique, const chart::Chart& chart, Closure closure) {
  const auto plan = make_plan(technique, chart, {closure});
  ASSERT_TRUE(plan) << technique << ": " << message(plan.problem());
  const auto made = replay(*plan);
  ASSERT_TRUE(made) << technique << " " << chart.columns() << " x " << chart.edge() << ": "
                    << message(made.problem());
  EXPECT_EQ(*made, chart);
}

int count(const Plan& plan, Act act, Turn turn) {
  return static_cast<int>(std::count_if(plan.stitches.begin(), plan.stitches.end(), [&](const Stitch& stitch) {
    return stitch.act == act && (act != Act::turn || stitch.turn == turn);
  }));
}

TEST(TwoDrop, ReplayRebuildsEveryChart) {
  Random random(21);
  for (int i = 0; i < 400; ++i) {
    const int pairs = pick(random, 2, 8), edge = pick(random, 1, 12);
    chart::Chart chart = random_chart(random, 2 * pairs, edge);
    const bool odd_rows = edge > 1 && pick(random, 0, 3) == 0;
    for (int column = 0; column < 2 * pairs && odd_rows; ++column)
      if ((column / 2) % 2 == 1) chart.set({column, edge - 1}, chart::no_bead);
    const Closure closure = !odd_rows && edge >= 3 && pick(random, 0, 1) == 0 ? Closure::zip : Closure::open;
    if (pairs == 2 || pairs % 2 == 0)
      expect_replayed("two-drop-even-count", chart, closure);
    else
      expect_replayed("two-drop-odd-count", chart, closure);
  }
}

TEST(TwoDrop, SaysWhichCountAWidthIs) {
  const auto refused = [](std::string_view technique, int columns) {
    return message(make_plan(technique, chart::Chart::make(columns, 4).value(), {Closure::open}).problem());
  };
  EXPECT_EQ(refused("two-drop-even-count", 10),
            "columns: found 10, expected a multiple of 4 for two-drop even count; 10 is odd-count two-drop");
  EXPECT_NE(refused("two-drop-odd-count", 12).find("12 is even-count two-drop"), std::string::npos);
  EXPECT_NE(refused("two-drop-even-count", 7).find("multiple of 4"), std::string::npos);
}

// Every width is either made or refused with what it would have to be; a two-drop width that is the other's says so.
TEST(TwoDrop, EveryWidthIsMadeOrRefusedInWords) {
  const auto said = [](std::string_view technique, int columns) {
    const auto fine = find_technique(technique)->check_size(columns, 4);
    return fine ? std::string("made") : message(fine.problem());
  };
  for (int columns = -1; columns <= 20; ++columns) {
    const std::string found = "columns: found " + std::to_string(columns) + ", expected ";
    const bool even_pairs = columns >= 4 && columns % 4 == 0, odd_pairs = columns >= 6 && columns % 4 == 2;
    EXPECT_EQ(said("two-drop-even-count", columns),
              even_pairs ? "made"
                         : found + "a multiple of 4 for two-drop even count" +
                               (odd_pairs ? "; " + std::to_string(columns) + " is odd-count two-drop" : ""));
    EXPECT_EQ(said("two-drop-odd-count", columns),
              odd_pairs ? "made"
                        : found + "6, 10, 14 and so on, an odd number of pairs, for two-drop odd count" +
                              (even_pairs ? "; " + std::to_string(columns) + " is even-count two-drop" : ""));
    EXPECT_EQ(said("peyote-even-count", columns),
              columns >= 2 && columns % 2 == 0 ? "made" : found + "an even number from 2 for even-count peyote");
    for (const char* odd : {"peyote-odd-count", "peyote-odd-count-figure-8"})
      EXPECT_EQ(said(odd, columns),
                columns >= 3 && columns % 2 == 1 ? "made" : found + "an odd number from 3 for odd-count peyote");
    EXPECT_EQ(said("peyote-shaped", columns), columns >= 2 ? "made" : found + "2 or more for shaped peyote");
  }
}

TEST(FigureEight, EveryOddRowMayHaveOne) {
  Random random(22);
  for (int i = 0; i < 100; ++i)
    expect_replayed("peyote-odd-count-figure-8",
                    random_chart(random, 2 * pick(random, 1, 6) + 1, pick(random, 1, 10)), Closure::open);
  const Plan eights = make_plan("peyote-odd-count-figure-8", random_chart(random, 7, 9), {Closure::open}).value();
  const Plan loops = make_plan("peyote-odd-count", random_chart(random, 7, 9), {Closure::open}).value();
  EXPECT_EQ(count(eights, Act::turn, Turn::loop), 0);
  EXPECT_EQ(count(eights, Act::turn, Turn::inside), 8);
  EXPECT_EQ(count(loops, Act::turn, Turn::loop), 7);
  EXPECT_EQ(count(loops, Act::turn, Turn::inside), 1);
}

TEST(ShapedPeyote, ReplayRebuildsEveryOutline) {
  Random random(23);
  int outside = 0, loops = 0;
  for (int i = 0; i < 2000; ++i) {
    const chart::Chart chart = random_shape(random, 24);
    const auto plan = make_plan("peyote-shaped", chart, {Closure::open});
    ASSERT_TRUE(plan) << i << ": " << message(plan.problem());
    const auto made = replay(*plan);
    ASSERT_TRUE(made) << i << ": " << message(made.problem());
    EXPECT_EQ(*made, chart);
    outside += count(*plan, Act::turn, Turn::outside);
    loops += count(*plan, Act::turn, Turn::loop);
  }
  EXPECT_GT(outside, 1000);
  EXPECT_GT(loops, 1000);
}

TEST(ShapedPeyote, MakesPointsTrianglesAndDiamonds) {
  for (int rows = 2; rows <= 9; ++rows) {
    expect_replayed("peyote-shaped", triangle(rows, true, false), Closure::open);
    expect_replayed("peyote-shaped", triangle(rows, false, false), Closure::open);
    expect_replayed("peyote-shaped", triangle(rows, true, true), Closure::open);
  }
}

TEST(ShapedPeyote, OfARectangleIsTheSameWork) {
  Random random(24);
  for (const int columns : {4, 5}) {
    const chart::Chart chart = random_chart(random, columns, 6);
    Plan shaped = make_plan("peyote-shaped", chart, {Closure::open}).value();
    const Plan plain = make_plan(flat_peyote_for(columns).id, chart, {Closure::open}).value();
    EXPECT_EQ(shaped.stitches, plain.stitches);
  }
}

TEST(ShapedPeyote, SaysWhereAnOutlineIsWrong) {
  chart::Chart chart = triangle(5, true, true);
  const auto refused = [](const chart::Chart& c) {
    return message(make_plan("peyote-shaped", c, {Closure::open}).problem());
  };
  chart::Chart gap = chart;
  gap.set({4, 2}, chart::no_bead);
  EXPECT_EQ(refused(gap), "column 4, step 2: found an empty cell, expected a bead in every cell between the ends of a row");
  chart::Chart wide = chart::Chart::make(12, 9, chart::no_bead).value();
  for (int step = 0; step < 9; ++step)
    for (int column = 0; column < 9; ++column)
      if (step < chart.edge()) wide.set({column, step}, chart.at({column, step}));
  EXPECT_NE(refused(wide).find("empty column at the edge"), std::string::npos);
}

// A chart as large as its piece: nothing empty along any of its four sides.
TEST(ShapedPeyote, SaysWhichSideOfAChartIsEmpty) {
  const auto refused = [](int columns, int edge, int left, int steps_before) {
    chart::Chart chart = chart::Chart::make(columns, edge, chart::no_bead).value();
    for (int step = 0; step < 4; ++step)
      for (int column = 0; column < 4; ++column) chart.set({left + column, steps_before + step}, 0);
    const auto plan = make_plan("peyote-shaped", chart, {Closure::open});
    return plan ? std::string("made") : message(plan.problem());
  };
  EXPECT_EQ(refused(4, 4, 0, 0), "made");
  EXPECT_EQ(refused(6, 4, 2, 0), "column 0, step 0: found an empty column at the edge, expected a bead in the first column");
  EXPECT_EQ(refused(5, 4, 0, 0), "column 4, step 0: found an empty column at the edge, expected a bead in the last column");
  EXPECT_EQ(refused(4, 5, 0, 1), "column 0, step 0: found an empty step at the beginning, expected a bead in step 0");
  EXPECT_EQ(refused(4, 5, 0, 0), "column 0, step 4: found an empty step at the end, expected a bead in the last step");
}

}  // namespace
}  // namespace evencount::weave
