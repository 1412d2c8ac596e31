#pragma once
/// Where a picture has detail finer than a bead: thin dark things on lighter ground and thin light ones on darker.
///
/// A closing (the least of the greatest) with a square fills what is darker than its surroundings and narrower than the square, and
/// nothing else; what it filled is dark detail. An opening finds light detail the same way. Red, green and blue are looked at apart, as
/// sRGB encodes them, so that a line of another hue and the same lightness is found too. Nothing is known of what lies past the
/// picture's edge: a line along the very edge counts as the side of something wider.
///
/// Properties (tests/picture/detail_test.cpp):
///  (1) none in a picture of one colour, nor inside or at the straight side of anything as wide as the square
///  (2) all of a line narrower than the square is detail, wherever it lies but along the picture's very edge, and however it runs, when
///      it differs enough; its ground is not
///  (3) the same as trying every square, pixel by pixel
///  (4) a negative has the detail of its picture

#include <cstdint>
#include <vector>

#include "colour/srgb.hpp"
#include "picture/image.hpp"

namespace evencount::picture {

/// One number a pixel of a part of a picture, row after row: 0 no detail .. 255 all detail.
struct DetailMap {
  int left = 0, top = 0, width = 0, height = 0;
  std::vector<std::uint8_t> detail;

  /// The pixels of row y from column x on; both inside the part.
  [[nodiscard]] const std::uint8_t* row(int x, int y) const {
    return detail.data() + static_cast<std::size_t>(y - top) * static_cast<std::size_t>(width) + (x - left);
  }
};

/// Contrasts of encoded values, of 255: below the first, noise (a few times that of a telephone's pictures indoors); from the second
/// on, certainly seen. From memory.
inline constexpr int contrast_from = 25, contrast_to = 64;

/// Of the pixels `left` .. `left + width`, `top` .. `top + height`, which lie inside the picture. Clear pixels show `ground`.
/// Detail is what is narrower than `square` pixels.
[[nodiscard]] DetailMap find_detail(const Image& image, int left, int top, int width, int height,
                                    colour::Linear ground, int square);

}  // namespace evencount::picture
