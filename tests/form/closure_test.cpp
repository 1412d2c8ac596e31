#include "form/closure.hpp"

#include <gtest/gtest.h>

#include <array>
#include <numbers>

#include "form/sections.hpp"
#include "form/track.hpp"
#include "oracle/form_closing_oracle.hpp"

namespace evencount::form {
namespace {

using std::numbers::pi;

struct Named {
  std::string name;
  ConvexCurve curve;
};

// Sections moved outwards by half a bead, as bands meet them.
std::vector<Named> rounds() {
  const std::vector<Point> quad{{-4, -2}, {5, -1}, {3, 4}, {-3, 2}};
  std::vector<Named> all;
  for (const double out : {0.8, 1.1}) {
    const auto add = [&](std::string name, const ConvexCurve& c) {
      all.push_back({name, offset(c, millimetres(out))});
    };
    add("lens 17x5", *lens(millimetres(17), millimetres(5)));
    add("lens 9x6 rounded", *lens(millimetres(9), millimetres(6), millimetres(0.5)));
    add("circle 12", *circle(millimetres(12)));
    add("ellipse 18x13", *ellipse(millimetres(18), millimetres(13)));
    add("ellipse 8x15", *ellipse(millimetres(8), millimetres(15)));
    add("bar 20x4", *rounded_bar(millimetres(20), millimetres(4), millimetres(2)));
    add("square 7", *rounded_bar(millimetres(7), millimetres(7), millimetres(0)));
    add("quadrangle", *polygon(quad));
  }
  return all;
}

double chord_mm(const ConvexCurve& curve, int n, Position start = {}) {
  return closing_chord(curve, n, start)->mm();
}

int likely_beads(const ConvexCurve& curve) {
  return static_cast<int>(curve.perimeter().mm() / 1.66);
}

TEST(Closure, CircleChord) {
  for (const double diameter : {0.5, 12.0, 2000.0})
    for (const int n : {3, 4, 7, 24, 501})
      EXPECT_NEAR(chord_mm(*circle(millimetres(diameter)), n, {0, 0.3}) / (diameter * std::sin(pi / n)), 1,
                  1e-9);
}

// However a circle is cut into arcs: one that turns by more than half is cut again within.
TEST(Closure, ArcsOfAnyTurnMakeTheSameCircle) {
  for (const double first : {0.3, 1.0, 1.1, 1.5, 1.9}) {
    const auto round = ConvexCurve::from_pieces({Arc{{}, 6, 0, first * pi}, Arc{{}, 6, first * pi, (2 - first) * pi}});
    ASSERT_TRUE(round.ok());
    EXPECT_NEAR(Track(*round).perimeter_mm(), 12 * pi, 1e-9) << first;
    for (const int n : {3, 7, 24})
      for (const int piece : {0, 1})
        for (const double share : {0.0, 0.4, 0.9}) {
          EXPECT_NEAR(chord_mm(*round, n, {piece, share}), 12 * std::sin(pi / n), 1e-9);
          const auto range = closing_range(*round, n);
          EXPECT_NEAR(range->smallest.mm(), 12 * std::sin(pi / n), 1e-6);
          EXPECT_NEAR(range->largest.mm(), 12 * std::sin(pi / n), 1e-6);
        }
  }
}

TEST(Closure, UnchangedByMotionsAndSubdivision) {
  for (const auto& [name, curve] : rounds()) {
    const int n = likely_beads(curve), pieces = static_cast<int>(curve.pieces().size());
    for (int piece = 0; piece < pieces; ++piece) {
      const double expected = chord_mm(curve, n, {piece, 0.25});
      EXPECT_NEAR(chord_mm(rotated(curve, 1.1), n, {piece, 0.25}) / expected, 1, 1e-8) << name;
      EXPECT_NEAR(chord_mm(mirrored(curve), n, {pieces - 1 - piece, 0.75}) / expected, 1, 1e-8) << name;
      EXPECT_NEAR(chord_mm(subdivided(curve, 5), n, {5 * piece + 1, 0.25}) / expected, 1, 1e-8) << name;
      EXPECT_NEAR(chord_mm(scaled(curve, 40), n, {piece, 0.25}) / expected, 40, 40 * 1e-8) << name;
    }
  }
}

TEST(Closure, StrictlyDecreasingInBeads) {
  for (const auto& [name, curve] : rounds()) {
    double before = 1e300;
    bool ring_before = false;
    for (int n = 5; n < 60; ++n) {
      const double chord = chord_mm(curve, n, {1, 0.4});
      const bool ring = close_ring(curve, n, {1, 0.4}).ok();
      EXPECT_LE(chord, before * (1 + 1e-9)) << name << " " << n;
      if (ring && ring_before) {
        EXPECT_LT(chord, before) << name << " " << n;
      }
      EXPECT_TRUE(ring || n < likely_beads(curve)) << name << " " << n;
      before = chord, ring_before = ring;
    }
  }
}

TEST(Closure, RingIsEqualChordsRoundTheCurve) {
  for (const auto& [name, curve] : rounds()) {
    const int n = likely_beads(curve);
    const auto ring = close_ring(curve, n, {1, 0.6});
    ASSERT_TRUE(ring.ok()) << name;
    ASSERT_EQ(ring->beads.size(), static_cast<std::size_t>(n));
    double turned = 0;
    for (int i = 0; i < n; ++i) {
      const Placed &here = ring->beads[i], &next = ring->beads[(i + 1) % n];
      EXPECT_NEAR(distance(here.at, next.at), ring->chord.mm(), 1e-7) << name << " bead " << i;
      turned += std::atan2(cross(here.normal, next.normal), dot(here.normal, next.normal));
    }
    EXPECT_NEAR(turned, 2 * pi, 1e-6) << name;
    EXPECT_LT(n * ring->chord.mm(), curve.perimeter().mm()) << name;
  }
}

// The place on a curve nearest to a point, by brute force.
Position nearest_position(const ConvexCurve& curve, Point p) {
  Position best;
  double least = 1e300;
  for (int piece = 0; piece < static_cast<int>(curve.pieces().size()); ++piece) {
    for (int i = 0; i <= 200; ++i) {
      double low = std::max(0, i - 1) / 200.0, high = std::min(200, i + 1) / 200.0;
      if (distance(curve.at({piece, i / 200.0}).at, p) > least + 0.5) continue;
      for (int k = 0; k < 100; ++k) {
        const double a = low + (high - low) / 3, b = high - (high - low) / 3;
        (distance(curve.at({piece, a}).at, p) < distance(curve.at({piece, b}).at, p) ? high : low) =
            distance(curve.at({piece, a}).at, p) < distance(curve.at({piece, b}).at, p) ? b : a;
      }
      if (distance(curve.at({piece, low}).at, p) < least)
        least = distance(curve.at({piece, low}).at, p), best = {piece, low};
    }
  }
  return best;
}

TEST(Closure, SameFromAnyBeadOfTheRing) {
  for (const auto& [name, curve] : rounds()) {
    const int n = likely_beads(curve);
    const auto ring = close_ring(curve, n, {1, 0.6});
    for (const int bead : {1, n / 3, n - 1})
      EXPECT_NEAR(chord_mm(curve, n, nearest_position(curve, ring->beads[bead].at)) / ring->chord.mm(), 1,
                  1e-7)
          << name;
  }
}

TEST(Closure, RangeBoundsEveryStartAndIsAttained) {
  for (const auto& [name, curve] : rounds()) {
    for (int n = likely_beads(curve) - 2; n <= likely_beads(curve) + 2; ++n) {
      const auto range = closing_range(curve, n);
      ASSERT_TRUE(range.ok()) << name;
      EXPECT_NEAR(chord_mm(curve, n, range->smallest_at) / range->smallest.mm(), 1, 1e-6) << name << " " << n;
      EXPECT_NEAR(chord_mm(curve, n, range->largest_at) / range->largest.mm(), 1, 1e-6) << name << " " << n;
      for (int piece = 0; piece < static_cast<int>(curve.pieces().size()); ++piece) {
        for (int i = 0; i < 40; ++i) {
          const double chord = chord_mm(curve, n, {piece, i / 40.0});
          EXPECT_GE(chord, range->smallest.mm() * (1 - 5e-5)) << name << " " << n << " " << piece << " " << i;
          EXPECT_LE(chord, range->largest.mm() * (1 + 5e-5)) << name << " " << n << " " << piece << " " << i;
        }
      }
    }
  }
}

TEST(Closure, RangeBoundsEveryStartOfADome) {
  for (const auto& [width, height, out] :
       {std::array{14.5, 3.5, 1.16}, {28.1, 6.6, 0.67}, {20.0, 6.0, 0.8}, {9.0, 4.5, 0.8}}) {
    const ConvexCurve curve = offset(*dome(millimetres(width), millimetres(height)), millimetres(out));
    const int likely = static_cast<int>(curve.perimeter().mm() / (2.1 * out));
    for (int n = likely - 1; n <= likely + 1; ++n) {
      const auto range = closing_range(curve, n);
      ASSERT_TRUE(range.ok()) << width;
      for (int i = 0; i < 400; ++i) {
        const int pieces = static_cast<int>(curve.pieces().size());
        const double chord = chord_mm(curve, n, {i % pieces, i / 400.0});
        EXPECT_GE(chord, range->smallest.mm() * (1 - 5e-4)) << width << " " << n << " " << i;
        EXPECT_LE(chord, range->largest.mm() * (1 + 5e-4)) << width << " " << n << " " << i;
      }
    }
  }
}

TEST(Closure, RangeIsTheSameFromAnotherBeginning) {
  // Subdividing and rotating the list of pieces hides the mirror symmetry that the search makes use of.
  for (const auto& [name, curve] : rounds()) {
    const ConvexCurve fine = subdivided(curve, 3);
    std::vector<Piece> pieces(fine.pieces().begin(), fine.pieces().end());
    std::rotate(pieces.begin(), pieces.begin() + 1, pieces.end());
    const auto other = ConvexCurve::from_pieces(pieces);
    ASSERT_TRUE(other.ok());
    const int n = likely_beads(curve);
    const auto expected = closing_range(curve, n), found = closing_range(*other, n);
    EXPECT_NEAR(found->smallest / expected->smallest, 1, 5e-5) << name;
    EXPECT_NEAR(found->largest / expected->largest, 1, 5e-5) << name;
  }
}

TEST(Closure, AgainstTheSlowWalk) {
  const double out = 0.8;
  struct Pair {
    ConvexCurve curve;
    oracle::Loop loop;
    Position start;  // where u = 0 lies
  };
  const std::vector<Pair> pairs{
      {*lens(millimetres(17), millimetres(5)),
       oracle::by_distance([](oracle::Dot p) { return oracle::distance_to_lens(p, 17, 5); }, out, 30),
       {}},
      {*rounded_bar(millimetres(20), millimetres(4), millimetres(2)),
       oracle::by_distance([](oracle::Dot p) { return oracle::distance_to_stroke(p, 8); }, out + 2, 30),
       {}},
      {*ellipse(millimetres(18), millimetres(13)), oracle::ellipse_moved_out(18, 13, out), {}},
      {*ellipse(millimetres(4), millimetres(11)), oracle::ellipse_moved_out(4, 11, out), {}},
  };
  for (const Pair& pair : pairs) {
    const ConvexCurve curve = offset(pair.curve, millimetres(out));
    for (const int n : {likely_beads(curve), likely_beads(curve) + 1, 2 * likely_beads(curve)})
      EXPECT_NEAR(chord_mm(curve, n, pair.start) / oracle::closing_chord(pair.loop, n, 0), 1, 1e-8) << n;
  }
  // From another start: the ellipse's parameter is the loop's.
  const ConvexCurve oval = offset(*ellipse(millimetres(18), millimetres(5)), millimetres(out));
  EXPECT_NEAR(chord_mm(oval, 20, {1, 0.3}) /
                  oracle::closing_chord(oracle::ellipse_moved_out(18, 5, out), 20, 1.3 * pi / 2),
              1, 1e-8);
}

TEST(Closure, ThinFormsKeepAnAnswer) {
  const ConvexCurve thin = offset(*lens(millimetres(30), millimetres(2)), millimetres(0.8));
  for (const int n : {37, 38, 39}) {
    const auto range = closing_range(thin, n);
    ASSERT_TRUE(range.ok());
    for (int i = 0; i < 200; ++i) {
      const double chord = chord_mm(thin, n, {1, i / 200.0});
      EXPECT_GE(chord, range->smallest.mm() * (1 - 2e-3));
      EXPECT_LE(chord, range->largest.mm() * (1 + 2e-3));
    }
  }
}

TEST(Closure, TooFewBeads) {
  const auto curve = circle(millimetres(12));
  for (const int n : {2, 0, -7}) {
    EXPECT_EQ(closing_chord(*curve, n).problem().code, ProblemCode::too_few_beads);
    EXPECT_EQ(closing_range(*curve, n).problem().code, ProblemCode::too_few_beads);
    EXPECT_EQ(close_ring(*curve, n).problem().code, ProblemCode::too_few_beads);
  }
  EXPECT_NEAR(chord_mm(*curve, 3), 12 * std::sin(pi / 3), 1e-9);
}

}  // namespace
}  // namespace evencount::form
