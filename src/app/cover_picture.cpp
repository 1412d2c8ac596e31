#include "app/cover_picture.hpp"

#include <algorithm>

#include "app/picture_argument.hpp"
#include "colour/srgb.hpp"

namespace evencount::app {
namespace {

/// The mean light of a block of at most `side` x `side` pixels from (left, top), on white.
colour::Linear mean(const picture::Image& image, int left, int top, int side) {
  const int right = std::min(left + side, image.width), bottom = std::min(top + side, image.height);
  colour::Linear sum;
  for (int y = top; y < bottom; ++y)
    for (int x = left; x < right; ++x) {
      const picture::Pixel& pixel = image.at(x, y);
      const double solid = pixel.alpha, clear = 1 - solid;
      sum.red += solid * pixel.red + clear;
      sum.green += solid * pixel.green + clear;
      sum.blue += solid * pixel.blue + clear;
    }
  const double count = static_cast<double>(right - left) * (bottom - top);
  return {sum.red / count, sum.green / count, sum.blue / count};
}

}  // namespace

std::shared_ptr<const drawing::Pixels> cover_of(const picture::Image& image) {
  const int side = (std::max(image.width, image.height) + most_cover_pixels - 1) / most_cover_pixels;
  drawing::Pixels pixels{(image.width + side - 1) / side, (image.height + side - 1) / side, {}};
  pixels.rgb.reserve(std::size_t{3} * static_cast<std::size_t>(pixels.width) *
                     static_cast<std::size_t>(pixels.height));
  for (int y = 0; y < image.height; y += side)
    for (int x = 0; x < image.width; x += side) {
      const colour::Rgb shown = colour::to_rgb(mean(image, x, y, side));
      pixels.rgb.insert(pixels.rgb.end(), {shown.red, shown.green, shown.blue});
    }
  return std::make_shared<const drawing::Pixels>(std::move(pixels));
}

Result<std::shared_ptr<const drawing::Pixels>> cover_picture(const std::string& path) {
  const auto image = picture_argument(path);
  if (!image) return image.problem();
  return cover_of(*image);
}

}  // namespace evencount::app
