#include "form/convex_curve.hpp"

#include <gtest/gtest.h>

#include <boost/math/special_functions/ellint_2.hpp>
#include <cmath>
#include <limits>
#include <numbers>

#include "form/sections.hpp"

namespace evencount::form {
namespace {

using std::numbers::pi;

std::vector<ConvexCurve> curves() {
  const std::vector<Point> quad{{0, 0}, {9, 1}, {7, 6}, {1, 4}};
  return {*lens(millimetres(17), millimetres(5)),
          *lens(millimetres(17), millimetres(5), millimetres(0.6)),
          *lens(millimetres(12), millimetres(12)),
          *circle(millimetres(12)),
          *ellipse(millimetres(18), millimetres(13)),
          *ellipse(millimetres(3), millimetres(19)),
          *rounded_bar(millimetres(20), millimetres(4), millimetres(2)),
          *rounded_bar(millimetres(20), millimetres(6), millimetres(1)),
          *rounded_bar(millimetres(7), millimetres(7), millimetres(0)),
          *polygon(quad)};
}

// The distance from a point to a polyline's sides.
double distance_to(const std::vector<Point>& points, Point p) {
  double nearest = 1e300;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const Point a = points[i], side = points[(i + 1) % points.size()] - a;
    const double t = std::clamp(dot(p - a, side) / dot(side, side), 0.0, 1.0);
    nearest = std::min(nearest, distance(p, a + t * side));
  }
  return nearest;
}

TEST(ConvexCurve, SteinerOffsetPerimeter) {
  for (const ConvexCurve& curve : curves()) {
    for (const double out : {0.1, 0.8, 5.0, 300.0}) {
      const double expected = curve.perimeter().mm() + 2 * pi * out;
      EXPECT_NEAR(offset(curve, millimetres(out)).perimeter().mm() / expected, 1, 1e-9);
    }
  }
}

TEST(ConvexCurve, OffsetsAddUpAndLieOutAlongTheNormal) {
  for (const ConvexCurve& curve : curves()) {
    const ConvexCurve twice = offset(offset(curve, millimetres(0.3)), millimetres(0.5));
    const ConvexCurve once = offset(curve, millimetres(0.8));
    for (int piece = 0; piece < static_cast<int>(curve.pieces().size()); ++piece) {
      for (const double share : {0.0, 0.3, 1.0}) {
        const Placed on = curve.at({piece, share}), out = once.at({piece, share});
        EXPECT_LT(distance(twice.at({piece, share}).at, out.at), 1e-9);
        EXPECT_LT(distance(on.at + 0.8 * on.normal, out.at), 1e-9);
      }
    }
  }
}

TEST(ConvexCurve, PerimeterSurvivesMotionsAndSubdivision) {
  for (const ConvexCurve& plain : curves()) {
    for (const ConvexCurve& curve : {plain, offset(plain, millimetres(0.8))}) {
      const double expected = curve.perimeter().mm();
      EXPECT_NEAR(rotated(curve, 0.7).perimeter().mm() / expected, 1, 1e-12);
      EXPECT_NEAR(mirrored(curve).perimeter().mm() / expected, 1, 1e-12);
      EXPECT_NEAR(subdivided(curve, 7).perimeter().mm() / expected, 1, 1e-12);
      EXPECT_NEAR(scaled(curve, 3).perimeter().mm() / expected, 3, 1e-11);
      // Each is a sound curve in its own right.
      for (const ConvexCurve& moved :
           {rotated(curve, 0.7), mirrored(curve), subdivided(curve, 7), scaled(curve, 3)}) {
        const auto again = ConvexCurve::from_pieces({moved.pieces().begin(), moved.pieces().end()});
        ASSERT_TRUE(again.ok()) << message(again.problem());
      }
    }
  }
}

TEST(ConvexCurve, EllipsePerimeterAgainstBoost) {
  for (const double ratio : {1.0001, 1.5, 3.0, 40.0, 4000.0}) {
    const double a = ratio * 0.25, b = 0.25;
    const double expected = 4 * a * boost::math::ellint_2(std::sqrt(1 - (b / a) * (b / a)));
    EXPECT_NEAR(ellipse(millimetres(2 * a), millimetres(2 * b))->perimeter().mm() / expected, 1, 1e-12)
        << ratio;
    EXPECT_NEAR(ellipse(millimetres(2 * b), millimetres(2 * a))->perimeter().mm() / expected, 1, 1e-12)
        << ratio;
  }
}

TEST(ConvexCurve, PartsOfAnEllipseAgainstBoost) {
  const double a = 9, b = 2.5, k = std::sqrt(1 - (b / a) * (b / a));
  const auto from_minor_axis = [&](double angle) { return a * boost::math::ellint_2(k, angle); };
  for (const double from : {0.0, 0.4, 1.5, 3.0, -7.0}) {
    for (const double sweep : {0.01, 0.6, 2.0, 6.0}) {
      const EllipticArc arc{{}, a, b, 0, from, sweep, 0};
      const double expected = from_minor_axis(from + sweep - pi / 2) - from_minor_axis(from - pi / 2);
      EXPECT_NEAR(length_mm(arc), expected, 1e-12 * 40) << from << " " << sweep;
    }
  }
}

TEST(ConvexCurve, EveryFigureOfAPieceMustBeSound) {
  const double nan = std::nan(""), inf = std::numeric_limits<double>::infinity();
  const auto is_sound = [](const Piece& first) {
    // The rest of a circle, where the first piece is a part of one.
    std::vector<Piece> pieces{first};
    if (std::abs(turn(first) - pi) < 0.1) pieces.push_back(Arc{{}, 6, pi, pi});
    const auto made = ConvexCurve::from_pieces(pieces);
    return made.ok() || made.problem().code != ProblemCode::out_of_range;
  };
  const Arc half{{}, 6, 0, pi};
  EXPECT_TRUE(is_sound(half));
  for (auto Arc::*figure : {&Arc::radius_mm, &Arc::from, &Arc::sweep})
    for (const double wrong : {nan, inf, -inf}) {
      Arc arc = half;
      arc.*figure = wrong;
      EXPECT_FALSE(is_sound(arc)) << wrong;
    }
  EXPECT_TRUE(is_sound(Arc{{}, 0, 0, pi}));
  EXPECT_FALSE(is_sound(Arc{{}, -6, 0, pi}));
  EXPECT_FALSE(is_sound(Arc{{}, 6, 0, 0}));
  EXPECT_FALSE(is_sound(Arc{{}, 6, 0, -pi}));
  EXPECT_TRUE(is_sound(Arc{{}, 6, 0, 2 * pi}));
  EXPECT_FALSE(is_sound(Arc{{}, 6, 0, 2 * pi + 1e-6}));
  EXPECT_FALSE(is_sound(Arc{{nan, 0}, 6, 0, pi}));
  EXPECT_FALSE(is_sound(Arc{{0, inf}, 6, 0, pi}));

  const EllipticArc round{{}, 6, 6, 0, 0, pi, 0};
  EXPECT_TRUE(is_sound(round));
  for (auto EllipticArc::*figure : {&EllipticArc::x_axis_mm, &EllipticArc::y_axis_mm, &EllipticArc::tilt, &EllipticArc::from,
                                    &EllipticArc::sweep, &EllipticArc::offset_mm})
    for (const double wrong : {nan, inf, -inf}) {
      EllipticArc arc = round;
      arc.*figure = wrong;
      EXPECT_FALSE(is_sound(arc)) << wrong;
    }
  EXPECT_FALSE(is_sound(EllipticArc{{nan, 0}, 6, 6, 0, 0, pi, 0}));
  EXPECT_FALSE(is_sound(EllipticArc{{}, 0, 6, 0, 0, pi, 0}));
  EXPECT_FALSE(is_sound(EllipticArc{{}, 6, 0, 0, 0, pi, 0}));
  EXPECT_FALSE(is_sound(EllipticArc{{}, 6, 6, 0, 0, 0, 0}));
  EXPECT_TRUE(is_sound(EllipticArc{{}, 6, 6, 0, 0, 2 * pi, 0}));
  EXPECT_FALSE(is_sound(EllipticArc{{}, 6, 6, 0, 0, 2 * pi + 1e-6, 0}));
  EXPECT_TRUE(is_sound(EllipticArc{{}, 5, 5, 0, 0, pi, 1}));
  EXPECT_FALSE(is_sound(EllipticArc{{}, 6, 6, 0, 0, pi, -1}));

  EXPECT_TRUE(is_sound(Segment{{0, 0}, {1, 0}}));  // though no curve
  EXPECT_FALSE(is_sound(Segment{{1, 0}, {1, 0}}));
  EXPECT_FALSE(is_sound(Segment{{nan, 0}, {1, 0}}));
  EXPECT_FALSE(is_sound(Segment{{0, 0}, {inf, 0}}));
}

TEST(ConvexCurve, SampleStaysWithinItsError) {
  for (const ConvexCurve& plain : curves()) {
    for (const ConvexCurve& curve : {plain, offset(plain, millimetres(0.8))}) {
      for (const double error_mm : {0.5, 0.01}) {
        const auto points = sample(curve, millimetres(error_mm));
        ASSERT_GE(points.size(), 3u);
        for (int piece = 0; piece < static_cast<int>(curve.pieces().size()); ++piece)
          for (int i = 0; i <= 50; ++i)
            EXPECT_LE(distance_to(points, curve.at({piece, i / 50.0}).at), error_mm + 1e-12);
      }
    }
  }
}

TEST(ConvexCurve, BoxHoldsTheCurveTightly) {
  const Box box = offset(*lens(millimetres(17), millimetres(5)), millimetres(0.8)).box();
  EXPECT_NEAR(box.high.x_mm, 8.5 + 0.8, 1e-12);
  EXPECT_NEAR(box.low.y_mm, -2.5 - 0.8, 1e-12);
  for (const ConvexCurve& curve : curves()) {
    for (const double angle : {0.0, 0.9, 4.0}) {
      const ConvexCurve turned = rotated(curve, angle);
      const Box around = turned.box();
      double right = -1e300, top = -1e300, left = 1e300, bottom = 1e300;
      for (const Point p : sample(turned, millimetres(1e-5))) {
        right = std::max(right, p.x_mm), top = std::max(top, p.y_mm);
        left = std::min(left, p.x_mm), bottom = std::min(bottom, p.y_mm);
      }
      EXPECT_NEAR(around.high.x_mm, right, 2e-5);
      EXPECT_NEAR(around.high.y_mm, top, 2e-5);
      EXPECT_NEAR(around.low.x_mm, left, 2e-5);
      EXPECT_NEAR(around.low.y_mm, bottom, 2e-5);
    }
  }
}

TEST(ConvexCurve, LensTipsRoundWithinTheWidth) {
  const auto rounded = lens(millimetres(17), millimetres(5), millimetres(0.5));
  const Box box = rounded->box();
  EXPECT_NEAR(box.high.x_mm, 8.5, 1e-12);
  EXPECT_NEAR(box.high.y_mm, 2.5, 1e-12);
  // Rounder tips within the same width leave a fuller section: longer round, up to the bar with round ends.
  EXPECT_GT(rounded->perimeter(), lens(millimetres(17), millimetres(5))->perimeter());
  EXPECT_LT(rounded->perimeter(),
            rounded_bar(millimetres(17), millimetres(5), millimetres(2.5))->perimeter());
}

TEST(ConvexCurve, RefusesWhatIsNotConvex) {
  const std::vector<Point> clockwise{{0, 0}, {1, 4}, {7, 6}, {9, 1}}, dented{{0, 0}, {4, 0}, {1, 1}, {0, 4}},
      line{{0, 0}, {1, 1}};
  for (const auto& corners : {clockwise, dented, line})
    EXPECT_EQ(polygon(corners).problem().code, ProblemCode::not_convex);
  const auto gap = ConvexCurve::from_pieces({Arc{{}, 2, 0, pi}, Arc{{0.1, 0}, 2, pi, pi}});
  EXPECT_EQ(gap.problem().code, ProblemCode::not_convex);
  const auto corner = ConvexCurve::from_pieces({Arc{{}, 2, 0, pi}, Segment{{-2, 0}, {2, 0}}});
  EXPECT_EQ(corner.problem().code, ProblemCode::not_convex);
  EXPECT_EQ(ConvexCurve::from_pieces({}).problem().code, ProblemCode::not_convex);
  EXPECT_EQ(lens(millimetres(5), millimetres(6)).problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(circle(millimetres(std::nan(""))).problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(rounded_bar(millimetres(5), millimetres(3), millimetres(1.6)).problem().code,
            ProblemCode::out_of_range);
}

}  // namespace
}  // namespace evencount::form
