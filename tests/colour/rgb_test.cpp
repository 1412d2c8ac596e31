#include "colour/rgb.hpp"

#include <gtest/gtest.h>

namespace evencount::colour {
namespace {

constexpr Rgb black{0, 0, 0}, white{255, 255, 255};

TEST(Rgb, HexIsReadAndWritten) {
  EXPECT_EQ(parse_hex("#1b2a49").value(), (Rgb{0x1b, 0x2a, 0x49}));
  EXPECT_EQ(parse_hex("#1B2A49").value(), (Rgb{0x1b, 0x2a, 0x49}));
  EXPECT_EQ(parse_hex("#fa0").value(), (Rgb{0xff, 0xaa, 0x00}));
  for (int value = 0; value < 256; ++value) {
    const Rgb colour{static_cast<std::uint8_t>(value), static_cast<std::uint8_t>(255 - value), 7};
    EXPECT_EQ(parse_hex(to_hex(colour)).value(), colour);
  }
  for (const char* bad : {"", "#", "1b2a49", "#1b2a4", "#1b2a4g", "#1b2a490", "#12", "red"})
    EXPECT_EQ(parse_hex(bad).problem().code, ProblemCode::bad_text) << bad;
}

// IEC 61966-2-1, worked values of the decoding formula: 0 -> 0, 255 -> 1, and the straight part below 0.04045.
TEST(Rgb, LinearLight) {
  EXPECT_EQ(linear_light(0), 0);
  EXPECT_EQ(linear_light(255), 1);
  EXPECT_NEAR(linear_light(10), 10 / 255.0 / 12.92, 1e-15);
  EXPECT_NEAR(linear_light(188), 0.502886, 1e-6);
  for (int value = 1; value < 256; ++value)
    EXPECT_GT(linear_light(static_cast<std::uint8_t>(value)),
              linear_light(static_cast<std::uint8_t>(value - 1)));
}

// WCAG 2.2, https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio: black on white is 21:1. Grey #767676 on white is the
// well-known darkest step to pass 4.5:1 (from memory).
TEST(Rgb, Contrast) {
  EXPECT_NEAR(contrast(black, white), 21, 1e-12);
  EXPECT_NEAR(contrast(white, black), 21, 1e-12);
  EXPECT_NEAR(contrast(white, white), 1, 1e-12);
  EXPECT_GT(contrast({0x76, 0x76, 0x76}, white), 4.5);
  EXPECT_LT(contrast({0x77, 0x77, 0x77}, white), 4.5);
  const Rgb night{0x17, 0x23, 0x3f}, moon{0xf3, 0xe9, 0xcf};
  EXPECT_EQ(contrast(night, moon), contrast(moon, night));
}

TEST(Rgb, InkStandsOut) {
  EXPECT_EQ(ink_on(white), black);
  EXPECT_EQ(ink_on(black), white);
  EXPECT_EQ(ink_on({0x17, 0x23, 0x3f}), white);
  EXPECT_EQ(ink_on({0xf3, 0xe9, 0xcf}), black);
}

TEST(Rgb, MixingGoesFromOneToTheOther) {
  const Rgb night{0x17, 0x23, 0x3f}, moon{0xf3, 0xe9, 0xcf};
  EXPECT_EQ(mix(night, moon, 0), night);
  EXPECT_EQ(mix(night, moon, 1), moon);
  // Half the light of white is 0.5 linear, which encodes to 188 (IEC 61966-2-1: 1.055 x 0.5^(1/2.4) - 0.055 = 0.7354).
  EXPECT_EQ(mix(black, white, 0.5), (Rgb{188, 188, 188}));
}

}  // namespace
}  // namespace evencount::colour
