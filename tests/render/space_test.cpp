#include "render/space.hpp"

#include <gtest/gtest.h>

#include <random>

namespace evencount::render {
namespace {

Vec3 random_direction(std::mt19937& random) {
  std::normal_distribution<double> normal;
  return unit({normal(random), normal(random), normal(random)});
}

// (1), (2)
TEST(Space, FramesAreRightHandedAndTurnBack) {
  std::mt19937 random(1);
  for (int i = 0; i < 2000; ++i) {
    const Vec3 n = i == 0 ? Vec3{0, 0, 1} : i == 1 ? Vec3{0, 0, -1} : random_direction(random);
    const Frame frame = Frame::of(n);
    EXPECT_NEAR(norm(frame.tangent), 1, 1e-12);
    EXPECT_NEAR(norm(frame.bitangent), 1, 1e-12);
    EXPECT_NEAR(dot(frame.tangent, frame.normal), 0, 1e-12);
    EXPECT_NEAR(norm(cross(frame.tangent, frame.bitangent) - frame.normal), 0, 1e-12);
    const Vec3 v = random_direction(random);
    EXPECT_NEAR(norm(frame.to_world(frame.to_local(v)) - v), 0, 1e-12);
  }
}

// (3)
TEST(Space, PlacementsFollowEachOther) {
  std::mt19937 random(2);
  for (int i = 0; i < 100; ++i) {
    const auto placement = [&] {
      return Placement{random_direction(random), random_direction(random), random_direction(random),
                       5 * random_direction(random)};
    };
    const Placement inner = placement(), outer = placement();
    const Vec3 p = 3 * random_direction(random);
    EXPECT_NEAR(norm(inner.then(outer).point(p) - outer.point(inner.point(p))), 0, 1e-12);
  }
}

}  // namespace
}  // namespace evencount::render
