#include "colour/oklab.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "table.hpp"

namespace evencount::colour {
namespace {

TEST(Oklab, PublishedPairs) {
  for (const TableRow& row : read_table("oklab_reference.csv", 15)) {
    const double in[3] = {row.number("in0"), row.number("in1"), row.number("in2")};
    const auto byte = [&](int i) { return static_cast<std::uint8_t>(in[i]); };
    const Oklab is = row.text("kind") == "sRGB8" ? to_oklab(Rgb{byte(0), byte(1), byte(2)})
                                                 : to_oklab(XyzD65{in[0], in[1], in[2]});
    const double tolerance = row.number("tolerance");
    EXPECT_NEAR(is.lightness, row.number("L"), tolerance) << row.place;
    EXPECT_NEAR(is.a, row.number("a"), tolerance) << row.place;
    EXPECT_NEAR(is.b, row.number("b"), tolerance) << row.place;
  }
}

TEST(Oklab, GoesThereAndBack) {
  std::mt19937 random(7'001);
  const auto channel = [&] { return -0.2 + 1.5 * static_cast<double>(random()) / 4294967296.0; };
  for (int i = 0; i < 50'000; ++i) {
    const Linear light{channel(), channel(), channel()};
    const Linear back = to_linear(to_oklab(light));
    ASSERT_NEAR(back.red, light.red, 1e-12);
    ASSERT_NEAR(back.green, light.green, 1e-12);
    ASSERT_NEAR(back.blue, light.blue, 1e-12);
    const XyzD65 colour{channel(), channel(), channel()};
    const XyzD65 again = to_xyz(to_oklab(colour));
    ASSERT_NEAR(again.x, colour.x, 1e-12);
    ASSERT_NEAR(again.y, colour.y, 1e-12);
    ASSERT_NEAR(again.z, colour.z, 1e-12);
  }
}

TEST(Oklab, GreysHaveNoColour) {
  for (int value = 0; value < 256; ++value) {
    const auto v = static_cast<std::uint8_t>(value);
    const Oklab grey = to_oklab(Rgb{v, v, v});
    EXPECT_NEAR(grey.a, 0, 1e-14);
    EXPECT_NEAR(grey.b, 0, 1e-14);
    EXPECT_NEAR(grey.lightness, std::cbrt(linear_light(v)), 1e-14);
  }
}

// What the header says of the two matrices.
TEST(Oklab, TheTwoPublishedMatricesNearlyAgree) {
  std::mt19937 random(7'002);
  double largest = 0;
  for (int i = 0; i < 100'000; ++i) {
    const auto byte = [&] { return static_cast<std::uint8_t>(random() >> 24); };
    const Linear light = to_linear(Rgb{byte(), byte(), byte()});
    const Oklab straight = to_oklab(light), by_xyz = to_oklab(to_xyz(light));
    largest = std::max({largest, std::abs(straight.lightness - by_xyz.lightness),
                        std::abs(straight.a - by_xyz.a), std::abs(straight.b - by_xyz.b)});
  }
  EXPECT_LT(largest, 1.3e-4);
  EXPECT_GT(largest, 1e-4);
}

}  // namespace
}  // namespace evencount::colour
