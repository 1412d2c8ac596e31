#pragma once
/// The whites and sRGB's primaries as XYZ, worked out from their chromaticities when compiling. Only for this room's sources.

#include "colour/matrix.hpp"

namespace evencount::colour {

/// XYZ of a chromaticity at y = 1.
[[nodiscard]] constexpr Triple from_chromaticity(double x, double y) {
  return {x / y, 1, (1 - x - y) / y};
}

inline constexpr Triple d65 = from_chromaticity(0.3127, 0.3290);  // IEC 61966-2-1
inline constexpr Triple d50 =
    from_chromaticity(0.3457, 0.3585);  // CIE 15, to four figures as CSS Color 4 has it

/// The columns are the primaries, each scaled so that red + green + blue = white.
inline constexpr Matrix rgb_to_xyz = [] {
  constexpr Triple red = from_chromaticity(0.64, 0.33), green = from_chromaticity(0.30, 0.60),
                   blue = from_chromaticity(0.15, 0.06);  // IEC 61966-2-1
  constexpr Matrix primaries{
      {{red[0], green[0], blue[0]}, {red[1], green[1], blue[1]}, {red[2], green[2], blue[2]}}};
  return primaries * diagonal(inverse(primaries) * d65);
}();
inline constexpr Matrix xyz_to_rgb = inverse(rgb_to_xyz);

}  // namespace evencount::colour
