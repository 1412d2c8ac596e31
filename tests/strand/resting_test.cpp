#include "strand/resting.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace evencount::strand {
namespace {

/// Every thing against every other one.
std::vector<double> heights_by_looking_at_all(const std::vector<Resting>& things, double whole_mm,
                                              bool loop) {
  std::vector<double> heights;
  for (const Resting& own : things) {
    double height = own.half_thickness_mm;
    for (const Resting& other : things) {
      double gap = std::max({0.0, other.begin_mm - own.end_mm, own.begin_mm - other.end_mm});
      if (loop)
        gap = std::min({gap, std::max(0.0, other.begin_mm + whole_mm - own.end_mm),
                        std::max(0.0, own.begin_mm + whole_mm - other.end_mm)});
      height = std::max(height, other.half_thickness_mm - cord_falls * gap);
    }
    heights.push_back(height);
  }
  return heights;
}

struct Row {
  std::vector<Resting> things;
  double whole_mm = 0;
};

/// Thick and thin, some of no length, some apart from the one before.
Row random_row(std::mt19937& random) {
  std::uniform_real_distribution<double> length(0, 8), half(0.3, 8);
  std::uniform_int_distribution<int> count(0, 60), one_in(0, 5);
  Row row;
  for (int i = count(random); i > 0; --i) {
    const double begin = row.whole_mm + (one_in(random) == 0 ? length(random) : 0);
    row.whole_mm = begin + (one_in(random) == 0 ? 0 : length(random));
    row.things.push_back(
        {begin, row.whole_mm, one_in(random) == 0 ? half(random) : 0.1 * half(random), false});
  }
  if (one_in(random) < 3) row.whole_mm += length(random);
  return row;
}

void expect_alike(const std::vector<double>& found, const std::vector<double>& expected) {
  ASSERT_EQ(found.size(), expected.size());
  for (std::size_t i = 0; i < found.size(); ++i) EXPECT_NEAR(found[i], expected[i], 1e-9) << i;
}

// (1)
TEST(Resting, AsByLookingAtEveryOther) {
  std::mt19937 random(1);
  int held_up = 0;
  for (int i = 0; i < 500; ++i) {
    const Row row = random_row(random);
    for (const bool loop : {false, true}) {
      const auto found = resting_heights(row.things, row.whole_mm, loop);
      expect_alike(found, heights_by_looking_at_all(row.things, row.whole_mm, loop));
      for (std::size_t k = 0; k < found.size(); ++k) held_up += found[k] > row.things[k].half_thickness_mm;
    }
  }
  EXPECT_GT(held_up, 5000);
}

// (2)
TEST(Resting, WhereALoopBeginsAndWhichWayItGoesIsAllTheSame) {
  std::mt19937 random(2);
  for (int i = 0; i < 200; ++i) {
    Row row = random_row(random);
    if (row.things.empty()) continue;
    auto expected = resting_heights(row.things, row.whole_mm, true);
    const double by = row.things.front().end_mm;  // the first one becomes the last
    std::rotate(row.things.begin(), row.things.begin() + 1, row.things.end());
    std::rotate(expected.begin(), expected.begin() + 1, expected.end());
    row.things.back().begin_mm += row.whole_mm, row.things.back().end_mm += row.whole_mm;
    for (Resting& thing : row.things) thing.begin_mm -= by, thing.end_mm -= by;
    expect_alike(resting_heights(row.things, row.whole_mm, true), expected);
    for (const bool loop : {false, true}) {
      expected = resting_heights(row.things, row.whole_mm, loop);
      std::reverse(expected.begin(), expected.end());
      std::vector<Resting> back;
      for (auto thing = row.things.rbegin(); thing != row.things.rend(); ++thing)
        back.push_back({row.whole_mm - thing->end_mm, row.whole_mm - thing->begin_mm,
                        thing->half_thickness_mm, thing->rigid});
      expect_alike(resting_heights(back, row.whole_mm, loop), expected);
    }
  }
}

// Looking at every other one would take ten thousand million looks.
TEST(Resting, AVeryLongStrand) {
  std::vector<Resting> things;
  for (int i = 0; i < 100'000; ++i) things.push_back({2.0 * i, 2.0 * (i + 1), i == 0 ? 10.0 : 1.0, i == 0});
  const auto heights = resting_heights(things, 200'000, true);
  for (std::size_t i = 1; i < things.size(); ++i) {
    const double from_first = 2.0 * static_cast<double>(std::min(i - 1, things.size() - 1 - i));
    ASSERT_NEAR(heights[i], std::max(1.0, 10 - cord_falls * from_first), 1e-9) << i;
  }
}

}  // namespace
}  // namespace evencount::strand
