#include "colour/lab.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>
#include <numbers>

#include "colour/difference.hpp"
#include "colour/primaries.hpp"
#include "random_colour.hpp"
#include "table.hpp"

namespace evencount::colour {
namespace {

nlohmann::json worked() {
  std::ifstream stream(EVENCOUNT_CASES_DIR "/colour/srgb_worked.json");
  return nlohmann::json::parse(stream);
}

template <White white>
void expect_near(const Xyz<white>& is, const Xyz<white>& expected, double tolerance) {
  ASSERT_NEAR(is.x, expected.x, tolerance);
  ASSERT_NEAR(is.y, expected.y, tolerance);
  ASSERT_NEAR(is.z, expected.z, tolerance);
}

TEST(Lab, GoesThereAndBack) {
  std::mt19937 random(5'001);
  for (int i = 0; i < 50'000; ++i) {
    const Linear light = random_linear(random);
    const Linear back = to_linear(to_xyz(light));
    ASSERT_NEAR(back.red, light.red, 1e-13);
    ASSERT_NEAR(back.green, light.green, 1e-13);
    ASSERT_NEAR(back.blue, light.blue, 1e-13);
    const XyzD65 colour = to_xyz(light);
    expect_near(to_xyz(to_lab(colour)), colour, 1e-13);
    expect_near(adapt_to_d65(adapt_to_d50(colour)), colour, 1e-13);
    const XyzD50 print = adapt_to_d50(colour);
    expect_near(to_xyz(to_lab(print)), print, 1e-13);
  }
}

TEST(Lab, EveryScreenColourSurvivesPrintAndBack) {
  std::mt19937 random(5'002);
  for (int i = 0; i < 50'000; ++i) {
    const Rgb colour = random_rgb(random);
    ASSERT_EQ(to_rgb(to_linear(to_lab_d65(colour))), colour);
    ASSERT_EQ(to_rgb(to_linear(to_lab_d50(colour))), colour);
  }
}

TEST(Lab, GreysHaveNoHueAndGetLighter) {
  double before = -1;
  for (int value = 0; value < 256; ++value) {
    const LabD65 screen = to_lab_d65(grey_rgb(value));
    const LabD50 print = to_lab_d50(grey_rgb(value));
    EXPECT_EQ(screen, (LabD65{screen.lightness, 0, 0}));
    EXPECT_EQ(print, (LabD50{print.lightness, 0, 0}));
    EXPECT_NEAR(print.lightness, screen.lightness, 1e-12);
    EXPECT_GT(screen.lightness, before);
    before = screen.lightness;
    const LabD65 by_xyz = to_lab(to_xyz(to_linear(grey_rgb(value))));
    EXPECT_NEAR(by_xyz.a, 0, 1e-12);
    EXPECT_NEAR(by_xyz.b, 0, 1e-12);
  }
  EXPECT_EQ(to_lab_d65(grey_rgb(0)).lightness, 0);
  EXPECT_NEAR(to_lab_d65(grey_rgb(255)).lightness, 100, 1e-13);
}

// sRGB's matrices to the four decimals that IEC 61966-2-1 prints.
TEST(Lab, MatricesOfTheStandard) {
  const auto standard = worked();
  for (std::size_t row = 0; row < 3; ++row) {
    for (std::size_t column = 0; column < 3; ++column) {
      EXPECT_NEAR(rgb_to_xyz[row][column], standard["rgb_to_xyz_4dp"][row][column].get<double>(), 5.1e-5);
      // Printed as the inverse of the rounded matrix above, so off by more than half a unit.
      EXPECT_NEAR(xyz_to_rgb[row][column], standard["xyz_to_rgb_4dp"][row][column].get<double>(), 5e-4);
    }
  }
}

TEST(Lab, WorkedPoints) {
  const auto points = worked()["points"];
  ASSERT_EQ(points.size(), 5u);
  const auto white = to_xyz(Linear{1, 1, 1});
  EXPECT_NEAR(white.x, points[1]["value"][0].get<double>(), 1e-15);
  EXPECT_NEAR(white.y, points[1]["value"][1].get<double>(), 1e-15);
  EXPECT_NEAR(white.z, points[1]["value"][2].get<double>(), 1e-15);

  // Given with the matrix rounded to four decimals: each of three products may be off by half a unit.
  const auto red = to_xyz(to_linear(Encoded{0.72794351, 0.18184112, 0.17951801}));
  EXPECT_NEAR(red.x, points[2]["value"][0].get<double>(), 5e-5);
  EXPECT_NEAR(red.y, points[2]["value"][1].get<double>(), 5e-5);
  EXPECT_NEAR(red.z, points[2]["value"][2].get<double>(), 5e-5);

  const Rgb colours[] = {*parse_hex("#708090"), *parse_hex("#FFEFD5")};
  for (std::size_t i = 0; i < 2; ++i) {
    const auto& point = points[3 + i];
    const LabD50 lab = to_lab_d50(colours[i]);
    const double hue = std::atan2(lab.b, lab.a) * 180 / std::numbers::pi, tolerance = point["tolerance"];
    EXPECT_NEAR(lab.lightness, point["value"][0].get<double>(), tolerance);
    EXPECT_NEAR(std::hypot(lab.a, lab.b), point["value"][1].get<double>(), tolerance);
    EXPECT_NEAR(hue < 0 ? hue + 360 : hue, point["value"][2].get<double>(), tolerance);
  }
}

TEST(Lab, PublishedPoints) {
  const auto points = worked()["lab_points"];
  ASSERT_EQ(points.size(), 3u);
  for (const auto& point : points) {
    const auto value = [&](const char* key, int i) { return point[key][i].get<double>(); };
    const LabD65 lab = to_lab(XyzD65{value("XYZ", 0), value("XYZ", 1), value("XYZ", 2)});
    EXPECT_NEAR(lab.lightness, value("Lab", 0), 1e-8);
    EXPECT_NEAR(lab.a, value("Lab", 1), 1e-7);  // 500 times the eighth decimal of XYZ
    EXPECT_NEAR(lab.b, value("Lab", 2), 1e-7);
  }
}

TEST(Lab, WhitesBecomeOneAnother) {
  expect_near(adapt_to_d50({d65[0], d65[1], d65[2]}), XyzD50{d50[0], d50[1], d50[2]}, 1e-15);
  expect_near(adapt_to_d65({d50[0], d50[1], d50[2]}), XyzD65{d65[0], d65[1], d65[2]}, 1e-15);
}

// Measured patches to the screen, unclipped: Lab under D50, Bradford, sRGB.
TEST(Lab, PatchesOnTheScreen) {
  for (const TableRow& row : read_table("patch24_lab_to_srgb_computed.csv", 48)) {
    const Linear light = to_linear(LabD50{row.number("L_D50"), row.number("a_D50"), row.number("b_D50")});
    const Encoded screen = to_encoded(light);
    EXPECT_NEAR(255 * screen.red, row.number("sR_computed_255"), 6e-5) << row.place;
    EXPECT_NEAR(255 * screen.green, row.number("sG_computed_255"), 6e-5) << row.place;
    EXPECT_NEAR(255 * screen.blue, row.number("sB_computed_255"), 6e-5) << row.place;
    EXPECT_EQ(is_displayable(light), row.number("in_srgb_gamut") == 1) << row.place;
  }
}

// The sheet's columns describe the same 24 patches, but its 8-bit column is no conversion of its Lab column. Both editions and the first
// publication's luminance are near one another; nothing nearer than this can be asked of them.
TEST(Lab, PatchesOfTheSheet) {
  double largest = 0;
  for (const TableRow& row : read_table("patch24.csv", 24)) {
    const LabD50 first{row.number("L_D50_2005"), row.number("a_D50_2005"), row.number("b_D50_2005")};
    const LabD50 second{row.number("L_D50_2014"), row.number("a_D50_2014"), row.number("b_D50_2014")};
    const auto byte = [&](const char* heading) { return static_cast<std::uint8_t>(row.number(heading)); };
    const double off = ciede2000(first, to_lab_d50(Rgb{byte("sR8"), byte("sG8"), byte("sB8")}));
    EXPECT_LT(off, 4.2) << row.place;
    EXPECT_LT(ciede2000(first, second), 2.2) << row.place;
    const double y = row.number("Y_C_1976");
    EXPECT_NEAR(to_lab(XyzD50{y, y, y}).lightness, first.lightness, 2) << row.place;
    largest = std::max(largest, off);
  }
  EXPECT_GT(largest, 4);
}

}  // namespace
}  // namespace evencount::colour
