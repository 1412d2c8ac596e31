#include "bead/gauge.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <numbers>

namespace evencount::bead {
namespace {

// Published: 1.30-1.41 mm a column and about 1.6-1.72 mm along the edge for 11/0 cylinders; 18 warp gaps to the inch on
// a loom (1.41 mm a column): kingsmerecrafts.info/page82.html.
TEST(Gauge, DefaultsLieInThePublishedRanges) {
  for (const Thread& thread : threads()) {
    const Gauge gauge = default_gauge(find_size("cylinder-11").value(), thread);
    EXPECT_TRUE(gauge.column >= millimetres(1.30) && gauge.column <= millimetres(1.412)) << thread.id;
    EXPECT_TRUE(gauge.edge >= millimetres(1.60) && gauge.edge <= millimetres(1.72)) << thread.id;
    EXPECT_FALSE(gauge.source.empty());
  }
}

// 17 to the inch along the hole for 11/0 round beads, 11 for 8/0: estherbeadwork.blogspot.com/2013/10/.
TEST(Gauge, RoundBeadsToTheInch) {
  const auto to_the_inch = [](std::string_view id) {
    return inches(1) / default_gauge(find_size(id).value(), threads().front()).column;
  };
  EXPECT_NEAR(to_the_inch("round-11"), 17, 0.5);
  EXPECT_NEAR(to_the_inch("round-8"), 11, 0.5);
}

TEST(Gauge, BeadsNeverLieCloserThanTheyAreLarge) {
  for (const Size& size : sizes()) {
    for (const Thread& thread : threads()) {
      const Gauge gauge = default_gauge(size, thread);
      EXPECT_GE(gauge.column, size.length) << size.id;
      EXPECT_GE(gauge.edge, size.diameter) << size.id;
      EXPECT_LE(gauge.edge, size.diameter + thread.diameter) << size.id;
    }
  }
}

TEST(Gauge, NotationComesBack) {
  for (const char* text : {"1.35x1.66", "0.2x50", "1.3x1.605"})
    EXPECT_EQ(to_notation(parse_gauge(text).value()), text);
  EXPECT_EQ(to_notation(default_gauge(find_size("cylinder-11").value(), find_thread("braided-6lb").value())),
            "1.35x1.66");
  EXPECT_DOUBLE_EQ(parse_gauge("1.35mm x 0.166cm").value().edge.mm(), 1.66);
}

TEST(Gauge, WhatIsNoGaugeIsRefused) {
  for (const char* bad :
       {"", "x", "1.35", "1.35x", "x1.66", "1.35x1.66x2", "1.35,1.66", "ax1", "nanx1", "1.35X1.66"})
    EXPECT_EQ(parse_gauge(bad).problem().code, ProblemCode::bad_text) << bad;
  for (const char* bad : {"0x1.66", "1.35x0", "0.19x1", "1x50.1", "-1x1", "1x1e300"})
    EXPECT_EQ(parse_gauge(bad).problem().code, ProblemCode::out_of_range) << bad;
}

TEST(Gauge, SwatchIsDividedByItsCounts) {
  const auto gauge = gauge_from_swatch(20, millimetres(27), 50, millimetres(83)).value();
  EXPECT_DOUBLE_EQ(gauge.column.mm(), 1.35);
  EXPECT_DOUBLE_EQ(gauge.edge.mm(), 1.66);
  EXPECT_EQ(gauge.source, "swatch: 20 columns = 27 mm, 50 along the edge = 83 mm");
  const auto code = [](int columns, double across, int edge, double along) {
    return gauge_from_swatch(columns, millimetres(across), edge, millimetres(along)).problem().code;
  };
  EXPECT_EQ(code(0, 27, 50, 83), ProblemCode::out_of_range);
  EXPECT_EQ(code(20, 27, -1, 83), ProblemCode::out_of_range);
  EXPECT_EQ(code(20, 1, 50, 83), ProblemCode::out_of_range);
  EXPECT_EQ(code(1, 27, 1, 51), ProblemCode::out_of_range);
}

TEST(Gauge, SwatchInWordsComesBack) {
  const auto gauge = parse_swatch("12 columns = 16.1 mm, 20 along the edge = 33.4 mm").value();
  EXPECT_DOUBLE_EQ(gauge.column.mm(), 16.1 / 12);
  EXPECT_DOUBLE_EQ(gauge.edge.mm(), 1.67);
  EXPECT_DOUBLE_EQ(*gauge.uncertainty, 0.25 / 33.4);
  EXPECT_EQ(parse_swatch(gauge.source).value(), gauge);
  EXPECT_EQ(parse_swatch("20 along the edge=3.34cm ,12 columns=16.1").value(), gauge);
  for (const char* bad :
       {"", "12 columns = 16.1 mm", "12 columns = 16.1 mm, 12 columns = 16.1 mm",
        "12 rows = 16 mm, 20 along the edge = 3 mm", "12 columns 16.1 mm, 20 along the edge = 33.4 mm",
        "columns = 16.1 mm, 20 along the edge = 33.4 mm", "12 columns = x, 20 along the edge = 33.4 mm",
        "-2 columns = 16.1 mm, 20 along the edge = 33.4 mm",
        "12 columns = 16.1 mm, 20 along the edge = 33.4 mm, 1 columns = 2 mm",
        "1.5 columns = 16 mm, 20 along the edge = 3 mm"})
    EXPECT_EQ(parse_swatch(bad).problem().code, ProblemCode::bad_text) << bad;
  EXPECT_EQ(parse_swatch("0 columns = 16.1 mm, 20 along the edge = 33.4 mm").problem().code,
            ProblemCode::out_of_range);
}

// A loom, whose warps lie between the columns as the threads of square stitch do: 18 gaps to the inch for 11/0 cylinders
// (kingsmerecrafts.info/page82.html).
TEST(Gauge, SquareStitchLiesAsOnALoom) {
  const auto gauge = square_gauge(find_size("cylinder-11").value(), threads().front());
  EXPECT_NEAR(inches(1) / gauge.column, 18, 0.2);
}

TEST(Gauge, SewnStitchesAreNoFinerThanPeyote) {
  for (const Size& size : sizes()) {
    for (const Thread& thread : threads()) {
      const Gauge peyote = default_gauge(size, thread);
      for (const Gauge& gauge : {square_gauge(size, thread), brick_gauge(size, thread)}) {
        EXPECT_GE(gauge.edge, peyote.edge) << size.id;
        EXPECT_GT(gauge.column, peyote.column) << size.id;
        EXPECT_LE(gauge.column, size.length + thread.diameter) << size.id;
        EXPECT_LE(gauge.edge, size.diameter + thread.diameter) << size.id;
        EXPECT_NE(gauge.source.find("stitch"), std::string::npos);
      }
    }
  }
}

// 18 warp gaps to the inch for 11/0 cylinders, 1.41 mm a column: kingsmerecrafts.info/page82.html.
TEST(Gauge, LoomHasEighteenGapsToTheInch) {
  const Size cylinder = find_size("cylinder-11").value();
  const auto column = [&](std::string_view thread) {
    return loom_gauge(cylinder, find_thread(thread).value()).column;
  };
  EXPECT_NEAR(inches(1) / column("braided-6lb"), 18, 0.05);
  EXPECT_NEAR(column("braided-6lb").mm(), 1.41, 0.005);
  for (const Thread& thread : threads()) EXPECT_NEAR(inches(1) / column(thread.id), 18, 0.75) << thread.id;
}

TEST(Gauge, LoomBeadsHaveAWarpBetweenThem) {
  for (const Size& size : sizes()) {
    for (const Thread& thread : threads()) {
      const Gauge gauge = loom_gauge(size, thread);
      EXPECT_GT(gauge.column, square_gauge(size, thread).column) << size.id;
      EXPECT_LE(gauge.column, size.length + thread.diameter) << size.id;
      EXPECT_EQ(gauge.edge, square_gauge(size, thread).edge) << size.id;
      EXPECT_NE(gauge.source.find("loom work"), std::string::npos);
    }
  }
}

TEST(Gauge, HerringboneStandsItsBeadsOnEnd) {
  for (const Size& size : sizes()) {
    for (const Thread& thread : threads()) {
      const Gauge gauge = herringbone_gauge(size, thread);
      EXPECT_GT(gauge.column, size.diameter) << size.id;
      EXPECT_LE(gauge.column, size.diameter + thread.diameter) << size.id;
      EXPECT_GT(gauge.edge, size.length) << size.id;
      EXPECT_LE(gauge.edge, 1.05 * size.length + thread.diameter) << size.id;
      EXPECT_NE(gauge.source.find("herringbone"), std::string::npos);
    }
  }
}

TEST(Gauge, RightAngleUnitsAreSquare) {
  for (const Size& size : sizes()) {
    for (const Thread& thread : threads()) {
      const Gauge gauge = right_angle_gauge(size, thread);
      EXPECT_EQ(gauge.column, gauge.edge) << size.id;
      // Beads can't lie closer than their larger measure, nor need they more than sharp rims would.
      EXPECT_GT(gauge.column, std::max(size.length, size.diameter)) << size.id;
      EXPECT_LE(gauge.column, size.length + size.diameter) << size.id;
      EXPECT_NE(gauge.source.find("right-angle"), std::string::npos);
    }
  }
}

// Four balls in a square, each touching the next: the middles of neighbouring sides are a diameter apart.
TEST(Gauge, RightAngleUnitOfBalls) {
  Size ball = find_size("round-11").value();
  ball.length = ball.diameter = millimetres(2);
  const Thread thread = threads().front();
  EXPECT_NEAR((right_angle_gauge(ball, thread).column - 0.10 * thread.diameter).mm(), 2 * std::numbers::sqrt2,
              1e-12);
}

TEST(Gauge, NamedGaugeIsAValue) {
  const NamedGauge one{"tight hand", "nylon-d", "round-8", parse_gauge("2.3x2.9").value()};
  NamedGauge other = one;
  EXPECT_EQ(one, other);
  other.gauge.uncertainty = 0.01;
  EXPECT_NE(one, other);
}

}  // namespace
}  // namespace evencount::bead
