#include "picture/detail.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace evencount::picture {
namespace {

using Random = std::mt19937;
const colour::Linear white{1, 1, 1};

Image plain(int width, int height, float light) {
  Image image{width, height, {}};
  image.pixels.assign(static_cast<std::size_t>(width * height), {light, light, light, 1});
  return image;
}

int encoded(float light) {
  return colour::to_rgb(colour::Linear{static_cast<double>(light), 0, 0}).red;
}

/// Of every square that holds the pixel the greatest, of those the least; squares may stick out.
int closed_at(const std::vector<int>& plane, int width, int height, int x, int y, int square) {
  int least = 255;
  for (int top = y - square + 1; top <= y; ++top)
    for (int left = x - square + 1; left <= x; ++left) {
      int greatest = 0;
      for (int j = std::max(top, 0); j < std::min(top + square, height); ++j)
        for (int i = std::max(left, 0); i < std::min(left + square, width); ++i)
          greatest = std::max(greatest, plane[static_cast<std::size_t>(j * width + i)]);
      least = std::min(least, greatest);
    }
  return least;
}

TEST(Detail, IsWhatTryingEverySquareGives) {
  Random random(41);
  for (const int square : {1, 2, 3, 4, 5, 7, 9, 30}) {
    Image image = plain(19, 13, 0);
    for (Pixel& pixel : image.pixels)
      pixel = {static_cast<float>(random() % 100) / 99.0F, static_cast<float>(random() % 100) / 99.0F,
               static_cast<float>(random() % 100) / 99.0F, 1};
    const DetailMap map = find_detail(image, 0, 0, 19, 13, white, square);
    const int side = std::min({square, 19, 13});
    std::array<std::vector<int>, 3> planes, negatives;
    for (const Pixel& pixel : image.pixels) {
      const float channels[] = {pixel.red, pixel.green, pixel.blue};
      for (std::size_t c = 0; c < 3; ++c)
        planes[c].push_back(encoded(channels[c])), negatives[c].push_back(255 - encoded(channels[c]));
    }
    for (int y = 0; y < 13; ++y)
      for (int x = 0; x < 19; ++x) {
        const auto at = static_cast<std::size_t>(y * 19 + x);
        int contrast = 0;
        for (std::size_t c = 0; c < 3; ++c)
          contrast = std::max({contrast, closed_at(planes[c], 19, 13, x, y, side) - planes[c][at],
                               closed_at(negatives[c], 19, 13, x, y, side) - negatives[c][at]});
        // The encoding by a table may be one step off, which moves the share by up to 12.
        const double way = std::clamp(
            (contrast - contrast_from) / static_cast<double>(contrast_to - contrast_from), 0.0, 1.0);
        ASSERT_NEAR(*map.row(x, y), 255 * way * way * (3 - 2 * way), 24) << square << ": " << x << ", " << y;
      }
  }
}

TEST(Detail, NoneInOneColourNorInsideOrAtTheSideOfWhatIsWide) {
  for (const float light : {0.0F, 0.2F, 1.0F}) {
    const DetailMap map = find_detail(plain(30, 20, light), 3, 2, 20, 15, white, 6);
    EXPECT_EQ(std::count(map.detail.begin(), map.detail.end(), 0), 300);
  }
  Image halves = plain(40, 20, 0.9F);
  for (int y = 0; y < 20; ++y)
    for (int x = 0; x < 11; ++x) halves.at(x, y) = {0.02F, 0.02F, 0.02F, 1};
  const DetailMap map = find_detail(halves, 0, 0, 40, 20, white, 7);
  EXPECT_EQ(std::count(map.detail.begin(), map.detail.end(), 0), 800);
}

TEST(Detail, AllOfAThinLineAndNothingElse) {
  for (const bool negative : {false, true})
    for (const bool upright : {false, true})
      for (int at = 1; at < 19; ++at)
        for (const int thick : {1, 2, 3}) {
          if (at + thick > 19) continue;
          Image image = plain(20, 20, negative ? 0.02F : 0.9F);
          const float line = negative ? 0.9F : 0.02F;
          for (int along = 0; along < 20; ++along)
            for (int across = at; across < at + thick; ++across)
              image.at(upright ? across : along, upright ? along : across) = {line, line, line, 1};
          const DetailMap map = find_detail(image, 0, 0, 20, 20, white, 4);
          for (int y = 0; y < 20; ++y)
            for (int x = 0; x < 20; ++x) {
              const int across = upright ? x : y;
              ASSERT_EQ(*map.row(x, y), across >= at && across < at + thick ? 255 : 0)
                  << at << ": " << x << ", " << y;
            }
        }
}

TEST(Detail, ALineOfAnotherHueAndTheSameLightness) {
  Image image = plain(20, 20, 0);
  for (Pixel& pixel : image.pixels) pixel = {0.3F, 0.3F, 0.3F, 1};
  for (int y = 0; y < 20; ++y) image.at(9, y) = {0.9F, 0.12F, 0.32F, 1};  // the same luminance
  const DetailMap map = find_detail(image, 0, 0, 20, 20, white, 4);
  for (int y = 0; y < 20; ++y) EXPECT_EQ(*map.row(9, y), 255);
}

TEST(Detail, ClearPixelsShowTheGround) {
  Image image = plain(12, 12, 0.0F);
  for (int y = 0; y < 12; ++y) image.at(5, y).alpha = 0;
  EXPECT_EQ(*find_detail(image, 0, 0, 12, 12, white, 4).row(5, 6), 255);
  EXPECT_EQ(*find_detail(image, 0, 0, 12, 12, {0, 0, 0}, 4).row(5, 6), 0);
}

TEST(Detail, FaintTextureIsNone) {
  Random random(42);
  Image image = plain(40, 40, 0);
  for (Pixel& pixel : image.pixels) {
    const auto level = static_cast<std::uint8_t>(120 + random() % 24);
    const auto light = static_cast<float>(colour::linear_light(level));
    pixel = {light, light, light, 1};
  }
  const DetailMap map = find_detail(image, 0, 0, 40, 40, white, 8);
  EXPECT_EQ(*std::max_element(map.detail.begin(), map.detail.end()), 0);
}

}  // namespace
}  // namespace evencount::picture
