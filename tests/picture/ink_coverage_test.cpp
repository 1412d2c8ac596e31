#include "picture/ink_coverage.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

namespace evencount::picture {
namespace {

using Random = std::mt19937;

int pick(Random& random, int low, int high) {
  return low + static_cast<int>(random() % static_cast<unsigned>(high - low + 1));
}
double share(Random& random) {
  return static_cast<double>(random() % 1001) / 1000;
}

Coverage random_coverage(Random& random) {
  Coverage coverage{
      pick(random, 1, 12), pick(random, 1, 12), 0.1 + 5 * share(random), 0.1 + 5 * share(random), {}};
  for (int i = 0; i < coverage.width * coverage.height; ++i)
    coverage.shares.push_back(pick(random, 0, 1) == 0 ? 0.0f : static_cast<float>(share(random)));
  return coverage;
}

/// Pixel by pixel: what of each lies in the box.
double slow_area(const Coverage& coverage, const BoxMm& box) {
  const double width = coverage.width_mm / coverage.width, height = coverage.height_mm / coverage.height;
  const auto overlap = [](double from, double to, double a, double b) {
    return std::max(0.0, std::min(to, b) - std::max(from, a));
  };
  double area = 0;
  for (int y = 0; y < coverage.height; ++y)
    for (int x = 0; x < coverage.width; ++x)
      area += static_cast<double>(coverage.at(x, y)) *
              overlap(x * width, (x + 1) * width, box.left, box.left + box.width) *
              overlap(y * height, (y + 1) * height, box.top, box.top + box.height);
  return area;
}

TEST(Coverage, SumsAreThoseOfThePixels) {
  Random random(1);
  for (int round = 0; round < 300; ++round) {
    const Coverage coverage = random_coverage(random);
    const InkSums sums(coverage);
    for (int k = 0; k < 10; ++k) {
      const BoxMm box{8 * share(random) - 2, 8 * share(random) - 2, 4 * share(random), 4 * share(random)};
      EXPECT_NEAR(sums.area_mm2(box), slow_area(coverage, box), 1e-9);
    }
  }
}

TEST(Coverage, BoxesThatFillARectangleAddUp) {
  Random random(2);
  for (int round = 0; round < 100; ++round) {
    const Coverage coverage = random_coverage(random);
    const InkSums sums(coverage);
    const BoxMm whole{-0.3, -0.7, 6, 7};
    const int across = pick(random, 1, 9), down = pick(random, 1, 9);
    double area = 0;
    for (int i = 0; i < across; ++i)
      for (int k = 0; k < down; ++k)
        area += sums.area_mm2({whole.left + i * whole.width / across, whole.top + k * whole.height / down,
                               whole.width / across, whole.height / down});
    EXPECT_NEAR(area, sums.area_mm2(whole), 1e-9);
  }
}

TEST(Coverage, InkIsTheBoxOfAllInk) {
  Coverage coverage{4, 3, 8, 9, std::vector<float>(12, 0.0f)};
  EXPECT_EQ(InkSums(coverage).ink(), BoxMm{});
  coverage.shares[4 + 1] = 0.25f;
  coverage.shares[8 + 2] = 1.0f;
  EXPECT_EQ(InkSums(coverage).ink(), (BoxMm{2, 3, 4, 6}));
}

TEST(Coverage, FourQuartersAreAWholeTurn) {
  Random random(3);
  for (int round = 0; round < 50; ++round) {
    const Coverage coverage = random_coverage(random);
    const Coverage down = rotated(coverage, Running::down);
    EXPECT_EQ(rotated(rotated(rotated(down, Running::down), Running::down), Running::down), coverage);
    EXPECT_EQ(rotated(down, Running::up), coverage);
    EXPECT_EQ(rotated(coverage, Running::across), coverage);
    // Clockwise: what was the left top corner is the right top corner.
    EXPECT_EQ(down.at(down.width - 1, 0), coverage.at(0, 0));
  }
}

TEST(Coverage, BadPicturesAreRefused) {
  const Coverage good{2, 2, 1, 1, {0, 1, 0.5f, 0}};
  EXPECT_TRUE(check(good).ok());
  const auto refused = [](Coverage coverage) {
    return !check(coverage).ok() && check(coverage).problem().code == ProblemCode::out_of_range;
  };
  const float nothing = std::numeric_limits<float>::quiet_NaN();
  EXPECT_TRUE(refused({}));
  EXPECT_TRUE(refused({2, 2, 1, 1, {0, 1, 0.5f}}));
  EXPECT_TRUE(refused({2, 2, 0, 1, {0, 1, 0.5f, 0}}));
  EXPECT_TRUE(refused({2, 2, 1, std::numeric_limits<double>::quiet_NaN(), {0, 1, 0.5f, 0}}));
  EXPECT_TRUE(refused({2, 2, 1, 1, {0, 1.5f, 0.5f, 0}}));
  EXPECT_TRUE(refused({2, 2, 1, 1, {0, -0.1f, 0.5f, 0}}));
  EXPECT_TRUE(refused({2, 2, 1, 1, {0, nothing, 0.5f, 0}}));
  EXPECT_TRUE(refused({2'000'000'000, 2'000'000'000, 1, 1, {}}));
}

}  // namespace
}  // namespace evencount::picture
