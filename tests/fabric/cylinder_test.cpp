#include "fabric/cylinder.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <numbers>
#include <random>

namespace evencount::fabric {
namespace {

using Random = std::mt19937;

double from(Random& random, double low, double high) {
  return low + (high - low) * static_cast<double>(random()) / static_cast<double>(Random::max());
}

Vec3 any_vector(Random& random) {
  const double x = from(random, -1, 1), y = from(random, -1, 1);
  return {x, y, from(random, -1, 1)};
}

Vec3 any_direction(Random& random) {
  for (;;) {
    const Vec3 v = any_vector(random);
    if (const double length = norm(v); length > 0.1 && length < 1) return unit(v);
  }
}

/// Beads of the trade's proportions, rims sharp or rounded up to fully.
Cylinder any_cylinder(Random& random, double within_mm) {
  Cylinder c{within_mm * any_vector(random), any_direction(random), from(random, 0.3, 1),
             from(random, 0.4, 1.2), 0};
  if (random() % 3 != 0) c.rim_mm = from(random, 0, 1) * std::min(c.half_length_mm, c.radius_mm);
  return c;
}

/// Depth of a point below the surface of a cylinder; below zero outside.
double depth(const Cylinder& c, Vec3 p) {
  const Vec3 d = p - c.middle;
  const double along = std::abs(dot(d, c.axis)), out = norm(across(d, c.axis));
  const double over = std::max(0.0, along - (c.half_length_mm - c.rim_mm)),
               beyond = std::max(0.0, out - (c.radius_mm - c.rim_mm));
  if (over > 0 || beyond > 0) return c.rim_mm - std::hypot(over, beyond);
  return std::min(c.half_length_mm - along, c.radius_mm - out);
}

/// A point that lies in both, looked for at many places.
bool have_a_point_in_common(const Cylinder& a, const Cylinder& b, Random& random) {
  for (int i = 0; i < 4000; ++i) {
    const Vec3 p = a.middle + reach_mm(a) * any_vector(random);
    if (depth(a, p) > 1e-6 && depth(b, p) > 1e-6) return true;
  }
  return false;
}

// (1), (2)
TEST(Cylinder, OverlapIsSeenAndTheContactParts) {
  Random random(11);
  int common = 0, apart = 0;
  for (int i = 0; i < 400; ++i) {
    const Cylinder a = any_cylinder(random, 0.9);
    Cylinder b = any_cylinder(random, 0.9);
    const Contact found = contact(a, b);
    EXPECT_NEAR(norm(found.towards), 1, 1e-12);
    if (have_a_point_in_common(a, b, random)) {
      ++common;
      EXPECT_GT(found.overlap_mm, 0) << i;
    }
    if (found.overlap_mm < 0) ++apart;
    b.middle = b.middle + std::max(0.0, found.overlap_mm) * found.towards;
    EXPECT_FALSE(have_a_point_in_common(a, b, random)) << i;
  }
  EXPECT_GT(common, 200);
  EXPECT_GT(apart, 30);
}

// (3)
TEST(Cylinder, ExactSideBySideEndToEndAndAcross) {
  for (const double rim : {0.0, 0.16}) {
    const Cylinder a{{0, 0, 0}, {1, 0, 0}, 0.65, 0.8, rim};
    Cylinder b = a;
    b.middle = {0.4, 1.5, 0};
    EXPECT_NEAR(contact(a, b).overlap_mm, 0.1, 1e-12);
    b.middle = {0.4, 1.2, 1.2};
    EXPECT_LT(contact(a, b).overlap_mm, 0);
    b.middle = {1.2, 0, 0};
    EXPECT_NEAR(contact(a, b).overlap_mm, 0.1, 1e-12);
    EXPECT_NEAR(contact(a, b).towards.x, 1, 1e-12);
    b.middle = {-1.31, 0.8, 0};
    EXPECT_NEAR(contact(a, b).overlap_mm, -0.01, 1e-12);
    b.axis = {0, 1, 0};
    b.middle = {0.1, 0, 1.5};
    EXPECT_NEAR(contact(a, b).overlap_mm, 0.1, 1e-12);
    EXPECT_NEAR(contact(a, a).overlap_mm, 1.3, 1e-12);  // the shortest way out of itself is along the hole
  }
}

// Rims: the ends of beads that meet at a corner come closer by what the rims leave (src/bead/gauge.hpp works it out for units of
// right-angle weave): circles of radius r that touch at 45 degrees.
TEST(Cylinder, RoundedRimsLetCornersCloser) {
  const double h = 0.75, radius = 1.0, rim = 0.75;
  const double unit_mm = 2 * h + 2 * radius - (4 - 2 * std::numbers::sqrt2) * rim;
  const Cylinder near{{0, -unit_mm / 2, 0}, {1, 0, 0}, h, radius, rim},
      right{{unit_mm / 2, 0, 0}, {0, 1, 0}, h, radius, rim};
  EXPECT_NEAR(contact(near, right).overlap_mm, 0, 1e-4);
}

// (4)
TEST(Cylinder, TheSameExchangedTurnedMirroredAndMoved) {
  Random random(12);
  int compared = 0;
  for (int i = 0; i < 2000; ++i) {
    const Cylinder a = any_cylinder(random, 0.9), b = any_cylinder(random, 0.9);
    const double overlap = contact(a, b).overlap_mm;
    if (overlap < 0) continue;
    ++compared;
    EXPECT_NEAR(contact(b, a).overlap_mm, overlap, 1e-4) << i;
    const Vec3 away = 5.0 * any_vector(random), x = any_direction(random);
    const Vec3 y = unit(across(any_direction(random), x)), z = cross(x, y);
    for (const double side : {1.0, -1.0}) {
      const auto move = [&](Cylinder c) {
        const auto turn = [&](Vec3 p) { return side * p.x * x + p.y * y + p.z * z; };
        c.middle = turn(c.middle) + away;
        c.axis = turn(c.axis);
        return c;
      };
      EXPECT_NEAR(contact(move(a), move(b)).overlap_mm, overlap, 1e-9) << i;
    }
  }
  EXPECT_GT(compared, 500);
}

// (5)
TEST(Cylinder, HardlyMoreThanTheLeastOfManyDirections) {
  Random random(13);
  double worst = 0;
  for (int i = 0; i < 60; ++i) {
    const Cylinder a = any_cylinder(random, 0.8), b = any_cylinder(random, 0.8);
    const double found = contact(a, b).overlap_mm;
    if (found < 0) continue;
    double least = found;
    for (int k = 0; k < 200000; ++k) {
      const Vec3 n = any_direction(random);
      const auto shadow = [&](const Cylinder& c) {
        const double along = std::abs(dot(c.axis, n));
        return (c.half_length_mm - c.rim_mm) * along +
               (c.radius_mm - c.rim_mm) * std::sqrt(std::max(0.0, 1 - along * along)) + c.rim_mm;
      };
      least = std::min(least, shadow(a) + shadow(b) - dot(b.middle - a.middle, n));
    }
    worst = std::max(worst, (found - least) / std::min(a.radius_mm, b.radius_mm));
  }
  EXPECT_LT(worst, 0.01);
  printf("largest excess of an overlap: %.2f %% of a radius\n", 100 * worst);
}

TEST(Cylinder, ArmsReachTheTouch) {
  // Side by side, half a length on: they touch in the middle of the stretch that they share.
  const Cylinder a{{0, 0, 0}, {1, 0, 0}, 0.65, 0.8}, b{{0.65, 1.6, 0}, {1, 0, 0}, 0.65, 0.8};
  const Arms side = contact_arms(a, b, {0, 1, 0});
  EXPECT_NEAR(side.first.x, 0.325, 1e-12);
  EXPECT_NEAR(side.first.y, 0.8, 1e-12);
  EXPECT_NEAR(side.second.x, -0.325, 1e-12);
  EXPECT_NEAR(side.second.y, -0.8, 1e-12);
}

}  // namespace
}  // namespace evencount::fabric
