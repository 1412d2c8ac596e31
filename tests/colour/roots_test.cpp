#include "colour/roots.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "random_colour.hpp"

namespace evencount::colour {
namespace {

// The root again, in extended precision where there is one.
double true_root(double x, int n) {
  return static_cast<double>(std::pow(static_cast<long double>(x), 1.0L / static_cast<long double>(n)));
}

TEST(Roots, AreTheTrueRoots) {
  std::mt19937 random(3'001);
  for (int i = 0; i < 200'000; ++i) {
    const double x = std::exp2(random_between(random, -200, 200));
    ASSERT_NEAR(cube_root(x) / true_root(x, 3), 1, 1e-15) << x;
    ASSERT_NEAR(fifth_root(x) / true_root(x, 5), 1, 1e-15) << x;
    ASSERT_EQ(cube_root(-x), -cube_root(x));
  }
}

TEST(Roots, OfSmallWholePowersAreExact) {
  EXPECT_EQ(cube_root(0), 0);
  EXPECT_EQ(fifth_root(0), 0);
  for (int root = 1; root < 100; ++root) {
    EXPECT_EQ(cube_root(root * root * root), root);
    EXPECT_EQ(fifth_root(std::pow(root, 5)), root);
  }
}

static_assert(cube_root(27) == 3 && fifth_root(32) == 2, "worked out when compiling too");

}  // namespace
}  // namespace evencount::colour
