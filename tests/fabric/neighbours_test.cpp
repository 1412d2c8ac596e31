#include "fabric/neighbours.hpp"

#include <gtest/gtest.h>

#include <random>

namespace evencount::fabric {
namespace {

// Against looking at every pair.
TEST(Neighbours, FindsEveryClosePairOnceInOrder) {
  std::mt19937 random(41);
  const auto from = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(random()) / 4294967295.0;
  };
  for (const double room_mm : {3.0, 10.0, 40.0}) {
    std::vector<Cylinder> beads;
    for (int i = 0; i < 200; ++i) {
      const double x = from(-room_mm, room_mm), y = from(-room_mm, room_mm);
      beads.push_back({{x, y, from(-room_mm, room_mm)}, {1, 0, 0}, from(0.3, 2), from(0.3, 2)});
    }
    for (const double margin : {0.0, 0.4}) {
      std::vector<Pair> expected;
      for (std::size_t i = 0; i < beads.size(); ++i)
        for (std::size_t k = i + 1; k < beads.size(); ++k)
          if (norm(beads[k].middle - beads[i].middle) < reach_mm(beads[i]) + reach_mm(beads[k]) + margin)
            expected.push_back({i, k});
      EXPECT_FALSE(expected.empty());
      EXPECT_EQ(close_pairs(beads, margin), expected);
    }
  }
}

}  // namespace
}  // namespace evencount::fabric
