#include "render/sampling.hpp"

#include <gtest/gtest.h>

#include <numbers>
#include <set>

namespace evencount::render {
namespace {

// (1)
TEST(Sampling, EveryBoxHoldsOnePoint) {
  for (std::uint32_t pixel = 0; pixel < 20; ++pixel)
    for (int bits : {2, 4, 6, 8})
      for (int a = 0; a <= bits; ++a)
        for (std::size_t first : {0u, 2u}) {
          std::set<std::pair<int, int>> boxes;
          const int points = 1 << bits;
          for (int i = 0; i < points; ++i) {
            const Four at = spread_point(pixel, static_cast<std::uint32_t>(i), 3, 9);
            boxes.insert({static_cast<int>(at[first] * (1 << a)),
                          static_cast<int>(at[first + 1] * (1 << (bits - a)))});
          }
          EXPECT_EQ(boxes.size(), static_cast<std::size_t>(points)) << pixel << " " << bits << " " << a;
        }
}

// (2), (3)
TEST(Sampling, PointsAreWithinTheSquareAndTheSameAgain) {
  int different = 0;
  for (std::uint32_t i = 0; i < 5000; ++i) {
    const Four at = spread_point(i * 77, i, i % 13, 5);
    for (const double x : at) {
      EXPECT_GE(x, 0);
      EXPECT_LT(x, 1);
    }
    EXPECT_EQ(at, spread_point(i * 77, i, i % 13, 5));
    different += at != spread_point(i * 77 + 1, i, i % 13, 5);
    different += at != spread_point(i * 77, i, i % 13, 6);
  }
  EXPECT_EQ(different, 10'000);
}

// (4)
TEST(Sampling, DirectionsHaveTheirDensity) {
  constexpr std::uint32_t points = 4096;
  double cosine = 0, square = 0, disc = 0, normal = 0, normal_square = 0;
  for (std::uint32_t i = 0; i < points; ++i) {
    const Four at = spread_point(1, i, 0, 1);
    const Vec3 v = cosine_direction(at[0], at[1]);
    EXPECT_NEAR(norm(v), 1, 1e-12);
    cosine += v.z / points, square += v.x * v.x / points;
    const DiscPoint p = on_disc(at[2], at[3]);
    disc += (p.x * p.x + p.y * p.y) / points;
    const double n = normal_of(hashed(i, 1), hashed(i, 2));
    normal += n / points, normal_square += n * n / points;
  }
  EXPECT_NEAR(cosine, 2.0 / 3, 2e-3);  // the mean of cos over cos / pi
  EXPECT_NEAR(square, 0.25, 2e-3);
  EXPECT_NEAR(disc, 0.5, 2e-3);
  EXPECT_NEAR(normal, 0, 0.05);
  EXPECT_NEAR(normal_square, 1, 0.07);
}

TEST(Sampling, PowerSharesAddUpToOne) {
  EXPECT_DOUBLE_EQ(power_share(2, 0), 1);
  EXPECT_DOUBLE_EQ(power_share(0, 2), 0);
  EXPECT_NEAR(power_share(0.3, 1.7) + power_share(1.7, 0.3), 1, 1e-15);
}

}  // namespace
}  // namespace evencount::render
