#pragma once
/// A picture as light.

#include <cstddef>
#include <cstdint>
#include <vector>

namespace evencount::picture {

/// Linear light in sRGB's primaries, 0..1 a channel for what sRGB can show and outside that for other colours; not multiplied by
/// alpha. Single precision: a file has 16 bits at most.
struct Pixel {
  float red = 0, green = 0, blue = 0;
  float alpha = 1;  ///< 0 clear .. 1 solid
  bool operator==(const Pixel&) const = default;
};

/// Where a file's numbers got their meaning as light from.
enum class LightFrom : std::uint8_t {
  srgb,     ///< the file says sRGB, or says nothing
  profile,  ///< a colour profile in the file
  gamma,    ///< a PNG's own exponent and primaries
  inks,     ///< inks without a profile, by a plain rule: a rough guess
};

/// Upright: row 0 is the top, column 0 the left, whatever way the camera was held.
struct Image {
  int width = 0;
  int height = 0;
  std::vector<Pixel> pixels;  ///< row after row, width * height of them
  bool has_alpha = false;     ///< the file has alpha; without it every pixel is solid
  int bits = 8;               ///< a sample in the file, 8 or 16: how finely light is told apart
  LightFrom light_from = LightFrom::srgb;

  [[nodiscard]] const Pixel& at(int x, int y) const { return pixels[index(x, y)]; }
  [[nodiscard]] Pixel& at(int x, int y) { return pixels[index(x, y)]; }

 private:
  [[nodiscard]] std::size_t index(int x, int y) const {
    return static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x);
  }
};

}  // namespace evencount::picture
