#include "colour/srgb.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>

#include "random_colour.hpp"
#include "table.hpp"

namespace evencount::colour {
namespace {

TEST(Srgb, EveryByteGoesThereAndBack) {
  for (int value = 0; value < 256; ++value) {
    EXPECT_EQ(to_rgb(to_linear(grey_rgb(value))), grey_rgb(value));
    const auto v = static_cast<std::uint8_t>(value);
    const Rgb mixed{v, static_cast<std::uint8_t>(255 - value), static_cast<std::uint8_t>(value * 37)};
    EXPECT_EQ(to_rgb(to_linear(mixed)), mixed);
  }
}

TEST(Srgb, RandomColoursGoThereAndBack) {
  std::mt19937 random(4'001);
  for (int i = 0; i < 200'000; ++i) {
    const Rgb colour = random_rgb(random);
    ASSERT_EQ(to_rgb(to_linear(colour)), colour);
  }
}

TEST(Srgb, LightGoesThereAndBack) {
  std::mt19937 random(4'002);
  for (int i = 0; i < 200'000; ++i) {
    const double light = random_between(random, -2, 2);
    const double back = to_linear(to_encoded(Linear{light, 0, 0})).red;
    ASSERT_NEAR(back, light, 1e-14 * std::abs(light) + 1e-300) << light;
  }
}

TEST(Srgb, PublishedCurve) {
  int value = 0;
  for (const TableRow& row : read_table("srgb_8bit_to_linear.csv", 256)) {
    EXPECT_EQ(row.number("code8"), value);
    EXPECT_NEAR(linear_light(static_cast<std::uint8_t>(value)), row.number("linear"), 1e-15) << row.place;
    ++value;
  }
}

TEST(Srgb, WorkedValues) {
  std::ifstream stream(EVENCOUNT_CASES_DIR "/colour/srgb_worked.json");
  const auto worked = nlohmann::json::parse(stream);
  EXPECT_NEAR(to_encoded(Linear{0.18, 0.18, 0.18}).green, worked["points"][0]["value"].get<double>(), 1e-15);
  // The straight part ends where IEC 61966-2-1 says, and both parts meet there within its rounding.
  const double decode = worked["decode"]["threshold"], encode = worked["encode"]["threshold"];
  const double slope = worked["decode"]["slope"];
  EXPECT_EQ(to_linear(Encoded{decode, 0, 0}).red, decode / slope);
  EXPECT_NEAR(to_linear(Encoded{std::nextafter(decode, 1), 0, 0}).red, decode / slope, 1e-7);
  EXPECT_EQ(to_encoded(Linear{encode, 0, 0}).red, slope * encode);
  EXPECT_NEAR(to_encoded(Linear{std::nextafter(encode, 1), 0, 0}).red, slope * encode, 1e-7);
}

TEST(Srgb, TheCurveIsThatOfThePower) {
  for (int i = 0; i <= 10'000; ++i) {
    const double value = i / 10'000.0;
    const double light = value <= 0.04045 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
    ASSERT_NEAR(to_linear(Encoded{value, value, value}).blue, light, 1e-15) << value;
    const double encoded = value <= 0.0031308 ? 12.92 * value : 1.055 * std::pow(value, 1 / 2.4) - 0.055;
    ASSERT_NEAR(to_encoded(Linear{value, value, value}).blue, encoded, 1e-15) << value;
  }
}

TEST(Srgb, TheCurveRisesAndIsOdd) {
  double before = -10;
  for (int i = -2'000; i <= 2'000; ++i) {
    const double value = i / 1'000.0, light = to_linear(Encoded{value, 0, 0}).red;
    EXPECT_GT(light, before);
    EXPECT_EQ(to_linear(Encoded{-value, 0, 0}).red, -light);
    EXPECT_EQ(to_encoded(Linear{-value, 0, 0}).red, -to_encoded(Linear{value, 0, 0}).red);
    before = light;
  }
}

TEST(Srgb, ClipsWhatNoScreenShows) {
  EXPECT_EQ(to_rgb(Linear{-0.5, 0.5, 7}), (Rgb{0, 188, 255}));
  EXPECT_TRUE(is_displayable({0, 1, 0.5}));
  EXPECT_TRUE(is_displayable({-1e-12, 1 + 1e-12, 0.5}));
  EXPECT_FALSE(is_displayable({-1e-3, 1, 0.5}));
  EXPECT_FALSE(is_displayable({0, 1.001, 0.5}));
  EXPECT_FALSE(is_displayable({0, 1, 1.001}));
}

}  // namespace
}  // namespace evencount::colour
