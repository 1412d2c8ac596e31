#include "render/picture.hpp"

#include <gtest/gtest.h>

#include <random>

namespace evencount::render {
namespace {

// (1), (3)
TEST(Picture, LegendColoursStayThemselves) {
  for (int r = 0; r < 256; r += 5)
    for (int g = 0; g < 256; g += 5)
      for (int b = 0; b < 256; b += 5) {
        const colour::Rgb rgb{static_cast<std::uint8_t>(r), static_cast<std::uint8_t>(g),
                              static_cast<std::uint8_t>(b)};
        const colour::Rgb shown = shown_as(of(rgb));
        if (largest(of(rgb)) <= knee) {
          EXPECT_EQ(shown, rgb);
        }
        EXPECT_LE(std::abs(shown.red - r), 2);
        EXPECT_LE(std::abs(shown.green - g), 2);
        EXPECT_LE(std::abs(shown.blue - b), 2);
      }
}

// (2)
TEST(Picture, HighlightsKeepTheirHue) {
  std::mt19937 random(1);
  std::uniform_real_distribution<double> share;
  for (int i = 0; i < 2000; ++i) {
    const Spectrum light{share(random) + 0.01, share(random) + 0.01, share(random) + 0.01};
    double last = 0;
    for (double k = 0.1; k < 1e4; k *= 1.5) {
      const Spectrum shown = softly_clipped(k * light);
      EXPECT_LE(largest(shown), 1);
      EXPECT_GE(largest(shown), last - 1e-12);
      last = largest(shown);
      EXPECT_NEAR(shown.r / shown.g, light.r / light.g, 1e-9 * light.r / light.g);
    }
  }
}

}  // namespace
}  // namespace evencount::render
