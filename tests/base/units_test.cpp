#include "base/units.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <limits>

#include "base/text.hpp"

namespace evencount {
namespace {

TEST(Length, FactoriesNameTheUnit) {
  EXPECT_DOUBLE_EQ(centimetres(1.5).mm(), 15);
  EXPECT_DOUBLE_EQ(metres(2).mm(), 2000);
  EXPECT_DOUBLE_EQ(inches(1).mm(), 25.4);
  EXPECT_DOUBLE_EQ(millimetres(50.8).inches(), 2);
  EXPECT_DOUBLE_EQ((millimetres(3) + millimetres(4) - millimetres(2)).mm(), 5);
  EXPECT_DOUBLE_EQ(millimetres(10) / millimetres(4), 2.5);
  EXPECT_DOUBLE_EQ((2 * millimetres(3) / 4).mm(), 1.5);
  EXPECT_LT(millimetres(-1), millimetres(0));
}

TEST(Length, IsReadInTheUnitsOfAWorkbench) {
  const auto mm = [](std::string_view text) { return parse_length(text).value().mm(); };
  EXPECT_DOUBLE_EQ(mm("17"), 17);
  EXPECT_DOUBLE_EQ(mm("17mm"), 17);
  EXPECT_DOUBLE_EQ(mm(" 17 mm "), 17);
  EXPECT_DOUBLE_EQ(mm("1.7 cm"), 17);
  EXPECT_DOUBLE_EQ(mm("2 m"), 2000);
  EXPECT_DOUBLE_EQ(mm("0.67in"), 17.018);
  EXPECT_DOUBLE_EQ(mm("3/4in"), 19.05);
  EXPECT_DOUBLE_EQ(mm("3 / 4 in"), 19.05);
  EXPECT_DOUBLE_EQ(mm("1\""), 25.4);
  EXPECT_DOUBLE_EQ(mm("1 yd"), 914.4);
  EXPECT_DOUBLE_EQ(mm("-2mm"), -2);
}

TEST(Length, WhatIsNoLengthIsRefused) {
  for (const char* bad : {"", " ", "mm", "in", "17km", "17 mmm", "17mm17", "1,7cm", "nan", "inf", "nanmm",
                          "1/0", "1/", "/2", "1/2/3", "0/0", "1e999", "17mm x", "--1"}) {
    const auto length = parse_length(bad);
    ASSERT_FALSE(length.ok()) << bad;
    EXPECT_EQ(length.problem().code, ProblemCode::bad_text);
    EXPECT_EQ(length.problem().found, quote(bad));
  }
}

// Every part is finite, but what they come to is not.
TEST(Length, IsNeverInfinite) {
  for (const char* bad : {"1e308m", "1e308/1e-10", "-1e308 m", "1e308cm"})
    EXPECT_FALSE(parse_length(bad).ok()) << bad;
}

RC_GTEST_PROP(LengthProperty, ComesBackFromItsText, (int hundredths)) {
  const double mm = hundredths / 100.0;
  RC_ASSERT(parse_length(plain_number(mm, 2) + "mm").value().mm() == mm);
}

TEST(Mass, AddsUp) {
  EXPECT_DOUBLE_EQ((grams(2) + 1.5 * grams(2)).grams(), 5);
  EXPECT_DOUBLE_EQ(grams(5) / grams(2), 2.5);
}

TEST(Money, IsWrittenWithTwoPlaces) {
  EXPECT_EQ(to_text(Money{1234, "EUR"}), "12.34 EUR");
  EXPECT_EQ(to_text(Money{1200, "USD"}), "12.00 USD");
  EXPECT_EQ(to_text(Money{5, "EUR"}), "0.05 EUR");
  EXPECT_EQ(to_text(Money{0, "EUR"}), "0.00 EUR");
  EXPECT_EQ(to_text(Money{-5, "EUR"}), "-0.05 EUR");
  EXPECT_EQ(to_text(Money{-1234, "EUR"}), "-12.34 EUR");
  EXPECT_EQ(to_text(Money{std::numeric_limits<std::int64_t>::max(), "EUR"}), "92233720368547758.07 EUR");
  EXPECT_EQ(to_text(Money{std::numeric_limits<std::int64_t>::min(), "EUR"}), "-92233720368547758.08 EUR");
}

}  // namespace
}  // namespace evencount
