#include "app/cover_picture.hpp"

#include <gtest/gtest.h>

#include "colour/srgb.hpp"

namespace evencount::app {
namespace {

picture::Image plain(int width, int height, picture::Pixel pixel) {
  picture::Image image;
  image.width = width, image.height = height;
  image.pixels.assign(static_cast<std::size_t>(width) * static_cast<std::size_t>(height), pixel);
  return image;
}

TEST(Cover, ASmallPictureKeepsItsPixels) {
  picture::Image image = plain(3, 2, {0, 0, 0, 1});
  image.at(2, 1) = {1, 0, 0, 1};
  const auto pixels = cover_of(image);
  EXPECT_EQ(pixels->width, 3);
  EXPECT_EQ(pixels->height, 2);
  EXPECT_EQ(pixels->rgb, (std::vector<std::uint8_t>{0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 255, 0, 0}));
}

TEST(Cover, WhatIsClearShowsWhite) {
  const auto pixels = cover_of(plain(1, 1, {0, 0, 0, 0}));
  EXPECT_EQ(pixels->rgb, (std::vector<std::uint8_t>{255, 255, 255}));
}

/// Black and white in turn are half of the light, which is far from half of the number.
TEST(Cover, ALargePictureIsAveragedAsLight) {
  picture::Image image = plain(2 * most_cover_pixels, 7, {0, 0, 0, 1});
  for (int y = 0; y < image.height; ++y)
    for (int x = y % 2; x < image.width; x += 2) image.at(x, y) = {1, 1, 1, 1};
  const auto pixels = cover_of(image);
  EXPECT_EQ(pixels->width, most_cover_pixels);
  EXPECT_EQ(pixels->height, 4);
  const std::uint8_t half = colour::to_rgb(colour::Linear{0.5, 0.5, 0.5}).red;
  for (const std::uint8_t value : pixels->rgb) EXPECT_EQ(value, half);
}

}  // namespace
}  // namespace evencount::app
