#include "fabric/obstacle.hpp"

#include <gtest/gtest.h>

#include <array>
#include <random>

namespace evencount::fabric {
namespace {

using form::Point;
using Random = std::mt19937;

constexpr std::array notations{
    "lens:17x5x9", "lens:17x5x9,tip=0.5", "round:12x20",           "oval:18x13x5", "oval:8x15x5",
    "bar:20x4x10", "dome:20x6x10",        "dome:20x6x10,edge=0.5", "ring:54",      "wrist:165"};

double from(Random& random, double low, double high) {
  return low + (high - low) * static_cast<double>(random()) / static_cast<double>(Random::max());
}

// (1), (2)
TEST(Obstacle, ClearanceIsTheLeastDistanceToTheCurve) {
  Random random(21);
  for (const char* notation : notations) {
    const form::ConvexCurve curve = form::section(form::parse_form(notation).value()).value();
    constexpr double error_mm = 1e-5;
    const std::vector<Point> points = form::sample(curve, millimetres(error_mm));
    const form::Box box = curve.box();
    for (int i = 0; i < 200; ++i) {
      const Point p{from(random, 1.4 * box.low.x_mm, 1.4 * box.high.x_mm),
                    from(random, 1.4 * box.low.y_mm, 1.4 * box.high.y_mm)};
      double least = 1e300;
      bool inside = true;
      for (std::size_t k = 0; k < points.size(); ++k) {
        const Point a = points[k], b = points[(k + 1) % points.size()];
        if (form::distance(a, b) < 1e-9) continue;  // at a corner
        const double share = std::clamp(form::dot(p - a, b - a) / form::dot(b - a, b - a), 0.0, 1.0);
        least = std::min(least, form::distance(p, (1 - share) * a + share * b));
        inside = inside && form::cross(b - a, p - a) > 0;
      }
      const PlaneClearance found = clearance(curve, p);
      EXPECT_NEAR(found.distance_mm, inside ? -least : least, 2 * error_mm) << notation;
      EXPECT_NEAR(form::norm(found.away), 1, 1e-9);
      const Point foot = p - found.distance_mm * found.away;
      EXPECT_NEAR(clearance(curve, foot).distance_mm, 0, 1e-9) << notation;
    }
  }
}

// A step off by what is missing of a distance leaves that distance, whatever the solid.
void expect_steps_off(const Obstacle& obstacle, double size_mm, const char* what) {
  Random random(22);
  int inside = 0;
  for (int i = 0; i < 2000; ++i) {
    const double x = from(random, -size_mm, size_mm), y = from(random, -size_mm, size_mm);
    const Vec3 p{x, y, from(random, -size_mm, size_mm)};
    const Clearance found = obstacle(p);
    EXPECT_NEAR(norm(found.away), 1, 1e-9);
    EXPECT_NEAR(obstacle(p - found.distance_mm * found.away).distance_mm, 0, 1e-8) << what;
    const Vec3 off = p + (0.8 + std::max(0.0, -found.distance_mm)) * found.away;
    EXPECT_NEAR(obstacle(off).distance_mm, 0.8 + std::max(0.0, found.distance_mm), 1e-8) << what;
    inside += found.distance_mm < 0 ? 1 : 0;
  }
  EXPECT_GT(inside, 20) << what;
}

TEST(Obstacle, FormsAndStonesAreSteppedOff) {
  for (const char* notation : notations)
    expect_steps_off(obstacle_of(form::parse_form(notation).value()).value(), 12, notation);
  for (const char* notation : {"stone:14,girdle=0.5,dome=2.2,back=2.3", "stone:14,dome=2.5,back=2.7",
                               "stone:10,girdle=1,dome=5,back=flat", "stone:12,dome=3,back=flat"})
    expect_steps_off(obstacle_of(form::parse_stone(notation).value()).value(), 9, notation);
}

TEST(Obstacle, StoneHasItsSizes) {
  const Obstacle stone =
      obstacle_of(form::parse_stone("stone:14,girdle=0.5,dome=2.2,back=2.3").value()).value();
  EXPECT_NEAR(stone({0, 0, 3}).distance_mm, 3 - 0.25 - 2.2, 1e-12);
  EXPECT_NEAR(stone({8, 0, 0}).distance_mm, 1, 1e-12);
  EXPECT_NEAR(stone({0, 0, -4}).distance_mm, 4 - 0.25 - 2.3, 1e-12);
  EXPECT_NEAR(stone({0, -7, 0.2}).distance_mm, 0, 1e-12);
  EXPECT_FALSE(obstacle_of(form::parse_stone("stone:18x13,dome=5,back=flat").value()).ok());
}

TEST(Obstacle, FormEndsWhereItsLengthDoes) {
  const Obstacle rod = obstacle_of(form::parse_form("round:12x20").value()).value();
  EXPECT_NEAR(rod({0, 0, 11}).distance_mm, 1, 1e-12);
  EXPECT_NEAR(rod({9, 0, 14}).distance_mm, 5, 1e-12);  // 3 aside, 4 beyond the end
  EXPECT_NEAR(rod({7, 0, 3}).distance_mm, 1, 1e-12);
  const Obstacle finger = obstacle_of(form::parse_form("ring:54").value()).value();
  EXPECT_LT(finger({0, 0, 500}).distance_mm, 0);
}

}  // namespace
}  // namespace evencount::fabric
