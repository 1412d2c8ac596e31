#include "picture/detail.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace evencount::picture {
namespace {

using Plane = std::vector<std::uint8_t>;
using Channel = float Pixel::*;

/// Light to sRGB's 8 bits, by a table in its square root, which is nearly even.
class Encoder {
 public:
  Encoder() {
    for (std::size_t i = 0; i < table_.size(); ++i) {
      const double root = static_cast<double>(i) / static_cast<double>(table_.size() - 1);
      table_[i] = colour::to_rgb(colour::Linear{root * root, 0, 0}).red;
    }
  }
  [[nodiscard]] std::uint8_t encode(float light) const {
    const float root = std::sqrt(std::clamp(light, 0.0F, 1.0F));
    return table_[static_cast<std::size_t>(root * static_cast<float>(table_.size() - 1) + 0.5F)];
  }

 private:
  std::array<std::uint8_t, 4096> table_{};
};

/// Calls pass(more) so that a run that reaches over one pixel comes to reach over `square`: twice as far each time, then what is left.
template <typename Pass>
void reach_over(std::size_t square, Pass&& pass) {
  for (std::size_t reached = 1; reached < square;) {
    const std::size_t more = std::min(reached, square - reached);
    pass(more);
    reached += more;
  }
}

/// A plane with room before its rows and columns for squares that stick out; the room is black.
struct Roomy {
  Roomy(std::size_t inner_width, std::size_t inner_height, std::size_t side)
      : square(side), room(side - 1), width(inner_width + room), height(inner_height + room) {}

  void fill(const Plane& inner) {
    plane.assign(width * height, 0);
    for (std::size_t y = room; y < height; ++y)
      std::copy_n(inner.data() + (y - room) * (width - room), width - room, plane.data() + y * width + room);
  }

  /// Every pixel becomes the greatest of the square that begins at it, as far as that is inside.
  void spread_light() {
    reach_over(square, [&](std::size_t more) {
      for (std::size_t y = 0; y < height; ++y) {
        std::uint8_t* row = plane.data() + y * width;
        for (std::size_t x = 0; x + more < width; ++x) row[x] = std::max(row[x], row[x + more]);
      }
    });
    reach_over(square, [&](std::size_t more) {
      for (std::size_t y = 0; y + more < height; ++y) {
        std::uint8_t* row = plane.data() + y * width;
        for (std::size_t x = 0; x < width; ++x) row[x] = std::max(row[x], row[x + more * width]);
      }
    });
  }

  /// Every pixel becomes the least of the square that ends at it. Only right behind the room, where it is all inside.
  void shrink_light() {
    reach_over(square, [&](std::size_t more) {
      for (std::size_t y = 0; y < height; ++y) {
        std::uint8_t* row = plane.data() + y * width;
        for (std::size_t x = width; x-- > more;) row[x] = std::min(row[x], row[x - more]);
      }
    });
    reach_over(square, [&](std::size_t more) {
      for (std::size_t y = height; y-- > more;) {
        std::uint8_t* row = plane.data() + y * width;
        for (std::size_t x = 0; x < width; ++x) row[x] = std::min(row[x], row[x - more * width]);
      }
    });
  }

  std::size_t square, room, width, height;
  Plane plane;
};

std::uint8_t share_of_detail(int contrast) {
  const double way =
      std::clamp((contrast - contrast_from) / static_cast<double>(contrast_to - contrast_from), 0.0, 1.0);
  return static_cast<std::uint8_t>(std::lround(255 * way * way * (3 - 2 * way)));
}

}  // namespace

DetailMap find_detail(const Image& image, int left, int top, int width, int height, colour::Linear ground,
                      int square) {
  const auto w = static_cast<std::size_t>(width), h = static_cast<std::size_t>(height);
  DetailMap map{left, top, width, height, std::vector<std::uint8_t>(w * h, 0)};
  const auto side = static_cast<std::size_t>(std::min({square, width, height}));
  const Encoder encoder;
  Plane plane(w * h);
  Roomy filled(w, h, side);
  const std::pair<Channel, double> channels[] = {
      {&Pixel::red, ground.red}, {&Pixel::green, ground.green}, {&Pixel::blue, ground.blue}};
  for (const auto& [channel, ground_light] : channels) {
    const auto behind = static_cast<float>(ground_light);
    for (std::size_t y = 0; y < h; ++y) {
      const Pixel* pixels = &image.at(left, top + static_cast<int>(y));
      for (std::size_t x = 0; x < w; ++x)
        plane[y * w + x] =
            encoder.encode(pixels[x].*channel * pixels[x].alpha + behind * (1 - pixels[x].alpha));
    }
    for (int negative = 0; negative < 2; ++negative) {
      filled.fill(plane);
      filled.spread_light();
      filled.shrink_light();
      for (std::size_t y = 0, i = 0; y < h; ++y) {
        const std::uint8_t* row = filled.plane.data() + (y + filled.room) * filled.width + filled.room;
        for (std::size_t x = 0; x < w; ++x, ++i) {
          map.detail[i] = std::max(map.detail[i], static_cast<std::uint8_t>(row[x] - plane[i]));
          plane[i] = static_cast<std::uint8_t>(255 - plane[i]);
        }
      }
    }
  }
  std::array<std::uint8_t, 256> shares{};
  for (std::size_t contrast = 0; contrast < shares.size(); ++contrast)
    shares[contrast] = share_of_detail(static_cast<int>(contrast));
  for (std::uint8_t& detail : map.detail) detail = shares[detail];
  return map;
}

}  // namespace evencount::picture
