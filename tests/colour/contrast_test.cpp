#include "colour/contrast.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "random_colour.hpp"
#include "table.hpp"

namespace evencount::colour {
namespace {

TEST(Contrast, PublishedPairs) {
  for (const TableRow& row : read_table("wcag22_contrast.csv", 16)) {
    const double ratio = contrast(*parse_hex(row.text("fg")), *parse_hex(row.text("bg")));
    EXPECT_NEAR(ratio, row.number("computed"), 6e-7) << row.place;
    if (row.text("published").empty()) {
      EXPECT_EQ(ratio >= least_text_contrast, row.text("source").starts_with("pass")) << row.place;
    } else {
      EXPECT_NEAR(ratio, row.number("published"), row.number("tolerance")) << row.place;
    }
  }
}

TEST(Contrast, IsSymmetricAndWithinItsRange) {
  std::mt19937 random(8'001);
  for (int i = 0; i < 100'000; ++i) {
    const Rgb a = random_rgb(random), b = random_rgb(random);
    ASSERT_EQ(contrast(a, b), contrast(b, a));
    ASSERT_EQ(contrast(a, a), 1);
    ASSERT_GE(contrast(a, b), 1);
    ASSERT_LE(contrast(a, b), 21 + 1e-12);
  }
}

TEST(Contrast, InkStandsOutOnEveryGround) {
  std::mt19937 random(8'002);
  for (int i = 0; i < 100'000; ++i) {
    const Rgb ground = i < 256 ? grey_rgb(i) : random_rgb(random);
    ASSERT_GE(contrast(ground, ink_on(ground)), std::sqrt(21) - 1e-12);
  }
}

TEST(Contrast, LuminanceIsThatOfTheLight) {
  std::mt19937 random(8'003);
  for (int i = 0; i < 10'000; ++i) {
    const Rgb colour = random_rgb(random);
    ASSERT_EQ(luminance(colour), luminance(to_linear(colour)));
  }
  EXPECT_EQ(luminance(Rgb{0, 0, 0}), 0);
  EXPECT_NEAR(luminance(Rgb{255, 255, 255}), 1, 1e-15);
}

}  // namespace
}  // namespace evencount::colour
