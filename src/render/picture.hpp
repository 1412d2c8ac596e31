#pragma once
/// The picture: light per pixel, and how it becomes 8-bit colours.
///
/// The view transform: light times the exposure, clipped softly, encoded as sRGB. Up to `knee` nothing is changed, so a colour of the legend
/// under the light that the lights are set to comes out as itself. Beyond it all three channels are scaled alike: highlights keep their hue and run
/// into white only as far as they are white. No curve, no grading, no dither.
///
/// Properties (tests/render/picture_test.cpp):
///  (1) light whose largest channel is at most `knee` is encoded exactly as colour::to_rgb encodes it
///  (2) the ratios of channels are kept, and brighter light is never shown darker
///  (3) every colour of sRGB at exposure 1 comes out within 2 of 255 in each channel

#include <cstdint>
#include <vector>

#include "render/spectrum.hpp"

namespace evencount::render {

struct Picture {
  int width = 0, height = 0;
  std::vector<std::uint8_t> rgb;  ///< rows from the top, three bytes a pixel
  bool operator==(const Picture&) const = default;
};

inline constexpr double knee = 0.96;

/// Scales light so that its largest channel stays below 1.
[[nodiscard]] Spectrum softly_clipped(Spectrum light);
[[nodiscard]] colour::Rgb shown_as(Spectrum light, double exposure = 1);

}  // namespace evencount::render
