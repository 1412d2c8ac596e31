#include "colour/difference.hpp"

#include <gtest/gtest.h>

#include <random>

#include "colour/difference_rows.hpp"
#include "oracle/ciede2000_oracle.hpp"
#include "table.hpp"

namespace evencount::colour {
namespace {

double textbook(LabD65 p, LabD65 q) {
  return oracle::ciede2000({p.lightness, p.a, p.b}, {q.lightness, q.a, q.b});
}

// Colours anywhere in a box around sRGB, greys, and neighbours of the hue that has its own term (275 degrees).
LabD65 random_lab(std::mt19937& random) {
  const auto between = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(random()) / 4294967296.0;
  };
  switch (random() % 8) {
    case 0:
      return {between(0, 100), 0, 0};
    case 1: {
      const double chroma = between(0, 130), hue = between(225, 325) / 57.29577951308232;
      return {between(0, 100), chroma * std::cos(hue), chroma * std::sin(hue)};
    }
    case 2:
      return {between(0, 100), between(-1, 1), between(-1, 1)};
    case 3:
      return {between(0, 100), static_cast<double>(random() % 3) * 20 - 20,
              static_cast<double>(random() % 3) * 20 - 20};
    default:
      return {between(0, 100), between(-130, 130), between(-130, 130)};
  }
}

std::vector<LabD65> random_labs(std::size_t count, std::uint32_t seed) {
  std::mt19937 random(seed);
  std::vector<LabD65> colours;
  while (colours.size() < count) colours.push_back(random_lab(random));
  return colours;
}

TEST(Difference, SharmasPairs) {
  for (const TableRow& row : read_table("ciede2000_sharma2005.csv", 34)) {
    const LabD50 p{row.number("L1"), row.number("a1"), row.number("b1")};
    const LabD50 q{row.number("L2"), row.number("a2"), row.number("b2")};
    EXPECT_NEAR(ciede2000(p, q), row.number("dE00"), 1e-4) << row.place;
    EXPECT_NEAR(ciede2000(q, p), row.number("dE00"), 1e-4) << row.place;
    EXPECT_NEAR(oracle::ciede2000({p.lightness, p.a, p.b}, {q.lightness, q.a, q.b}), row.number("dE00"), 1e-4)
        << row.place;
  }
}

TEST(Difference, IsThatOfTheTextbook) {
  const auto colours = random_labs(200'001, 20'010);
  for (std::size_t i = 1; i < colours.size(); ++i)
    ASSERT_NEAR(ciede2000(colours[i - 1], colours[i]), textbook(colours[i - 1], colours[i]), 1e-10) << i;
}

// Near neighbours are what a stock of colours is full of.
TEST(Difference, IsThatOfTheTextbookForNeighbours) {
  std::mt19937 random(20'011);
  for (int i = 0; i < 100'000; ++i) {
    const LabD65 p = random_lab(random);
    const auto step = [&] { return 0.01 * (static_cast<double>(random() % 201) - 100); };
    const LabD65 q{p.lightness + step(), p.a + step(), p.b + step()};
    ASSERT_NEAR(ciede2000(p, q), textbook(p, q), 1e-10) << i;
  }
}

TEST(Difference, IsSymmetricAndZeroOnlyForTheSameColour) {
  const auto colours = random_labs(50'001, 20'012);
  for (std::size_t i = 1; i < colours.size(); ++i) {
    ASSERT_EQ(ciede2000(colours[i - 1], colours[i]), ciede2000(colours[i], colours[i - 1])) << i;
    ASSERT_EQ(ciede2000(colours[i], colours[i]), 0) << i;
    if (colours[i - 1] != colours[i]) {
      ASSERT_GT(ciede2000(colours[i - 1], colours[i]), 0) << i;
    }
  }
}

// Hues that are opposite on paper are opposite here: the mean hue does not hang on the last bit of an arctangent.
TEST(Difference, OppositeHuesHaveOneMean) {
  for (const auto& p : random_labs(20'000, 20'013)) {
    if (p.a == 0 && p.b == 0) continue;
    const LabD65 opposite{p.lightness, -p.a, -p.b};
    ASSERT_EQ(ciede2000(p, opposite), ciede2000(opposite, p));
    ASSERT_NEAR(ciede2000(p, opposite), textbook(p, opposite), 1e-10);
  }
}

TEST(Difference, BatchIsEachPair) {
  const auto colours = random_labs(1'003, 20'014);
  for (const std::size_t size : {0, 1, 2, 3, 4, 5, 7, 8, 9, 1'003}) {
    const LabColumns<White::d65> columns(std::span<const LabD65>{colours.data(), size});
    ASSERT_EQ(columns.size(), size);
    std::vector<float> differences(size);
    for (const LabD65& from : random_labs(40, 20'015)) {
      ciede2000(from, columns, differences);
      for (std::size_t i = 0; i < size; ++i)
        ASSERT_EQ(differences[i], static_cast<float>(ciede2000(from, colours[i]))) << i;
    }
  }
}

// Whatever the processor: with four or eight pairs at a time, or one.
TEST(Difference, EveryWidthGivesTheSameBits) {
  const auto colours = random_labs(2'003, 20'016);
  const LabColumns<White::d65> columns(colours);
  const LabRows rows{columns.lightness.data(), columns.a.data(), columns.b.data(), columns.chroma.data()};
  ASSERT_TRUE(row_fills().back().runs_here());
  for (const RowFill& row : row_fills()) {
    if (!row.runs_here()) continue;
    for (std::size_t from = 0; from < 50; ++from) {
      std::vector<float> differences(colours.size(), -1);
      const LabPoint point{columns.lightness[from], columns.a[from], columns.b[from], columns.chroma[from]};
      row.fill(point, rows, differences.data(), differences.size());
      for (std::size_t i = 0; i < colours.size(); ++i)
        ASSERT_EQ(differences[i], static_cast<float>(ciede2000(colours[from], colours[i])))
            << row.name << " " << i;
    }
  }
}

TEST(Difference, BatchOfARunIsThatRun) {
  const auto colours = random_labs(300, 20'016);
  const LabColumns<White::d65> columns(colours);
  for (const std::size_t begin : {0, 1, 5, 150, 299, 300})
    for (std::size_t end = begin; end <= 300; end += 37) {
      std::vector<float> differences(end - begin);
      ciede2000(colours[7], columns, begin, differences);
      for (std::size_t i = begin; i < end; ++i)
        ASSERT_EQ(differences[i - begin], static_cast<float>(ciede2000(colours[7], colours[i])));
    }
}

TEST(Difference, OklabDistance) {
  EXPECT_EQ(oklab_distance({0.5, 0.1, -0.2}, {0.5, 0.1, -0.2}), 0);
  EXPECT_NEAR(oklab_distance({0.5, 0.1, -0.2}, {0.7, -0.1, -0.1}), 0.3, 1e-15);
  EXPECT_EQ(oklab_distance({0.5, 0.1, -0.2}, {0.7, -0.1, -0.1}),
            oklab_distance({0.7, -0.1, -0.1}, {0.5, 0.1, -0.2}));
}

}  // namespace
}  // namespace evencount::colour
