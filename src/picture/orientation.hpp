#pragma once
/// Which way up a camera was held.

#include <cstddef>
#include <cstdint>
#include <string_view>

namespace evencount::picture {

/// EXIF's and TIFF's tag 274, by where the first stored row and column belong in the upright picture.
enum class Orientation : std::uint8_t {
  top_left = 1,  ///< stored upright
  top_right,     ///< mirrored
  bottom_right,  ///< turned by half
  bottom_left,   ///< upside down in a mirror
  left_top,      ///< rows and columns changed over
  right_top,     ///< to be turned a quarter clockwise
  right_bottom,  ///< changed over and turned by half
  left_bottom,   ///< to be turned a quarter anticlockwise
};

/// The orientation in a block of EXIF, with or without its "Exif\0\0" in front. Upright when there is none, when the block is damaged
/// or the number is none of the eight.
[[nodiscard]] Orientation exif_orientation(std::string_view exif);

/// Upright for a number that is none of the eight.
[[nodiscard]] Orientation orientation_of(unsigned number);

/// Rows and columns change places.
[[nodiscard]] constexpr bool swaps_sides(Orientation orientation) {
  return orientation >= Orientation::left_top;
}

/// Where stored pixels go in the upright picture: pixel (x, y) to index origin + x * by_column + y * by_row.
/// Property: the indices of all pixels are 0 .. width * height - 1, each once.
struct Places {
  std::ptrdiff_t origin = 0, by_column = 0, by_row = 0;
};
/// For a picture stored `width` wide and `height` high.
[[nodiscard]] Places places(Orientation orientation, int width, int height);

}  // namespace evencount::picture
