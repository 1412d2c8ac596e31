#include "chart/letters.hpp"

#include <gtest/gtest.h>

namespace evencount::chart {
namespace {

TEST(Letters, GoOnAfterZ) {
  EXPECT_EQ(letter_name(0), "A");
  EXPECT_EQ(letter_name(25), "Z");
  EXPECT_EQ(letter_name(26), "AA");
  EXPECT_EQ(letter_name(27), "AB");
  EXPECT_EQ(letter_name(51), "AZ");
  EXPECT_EQ(letter_name(52), "BA");
  EXPECT_EQ(letter_name(701), "ZZ");
  EXPECT_EQ(letter_name(702), "AAA");
}

constexpr int with_three_letters = 26 + 26 * 26 + 26 * 26 * 26;

TEST(Letters, ComeBackToTheirPlaces) {
  for (int i = 0; i < with_three_letters; ++i) ASSERT_EQ(letter_position(letter_name(i)), i);
}

TEST(Letters, OtherTextIsNone) {
  for (const char* bad : {"", "a", "1", "A1", " A", "É", "AAAA", "A "})
    EXPECT_EQ(letter_position(bad), std::nullopt);
}

}  // namespace
}  // namespace evencount::chart
