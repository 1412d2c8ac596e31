#pragma once
/// sRGB (IEC 61966-2-1:1999): colours as files and screens hold them, and the light they stand for.
///
/// Three types, so that no sum of light is ever taken of encoded values: `Rgb` (8 bits), `Encoded` (the same curve, not rounded),
/// `Linear` (light). Only `Linear` may be added, scaled or mixed.
///
/// Properties (tests/colour/srgb_test.cpp):
///  (1) to_rgb(to_linear(c)) == c for every colour
///  (2) to_linear(to_encoded(x)) == x within 1e-14 relative, outside 0..1 as well
///  (3) to_linear and to_encoded rise strictly, and are odd: f(-x) == -f(x)
///  (4) the 256 values of tests/cases/colour/srgb_8bit_to_linear.csv within 1e-15
/// The same bits on every compiler: only +, -, *, / and square roots.

#include <cstdint>
#include <string>
#include <string_view>

#include "base/result.hpp"

namespace evencount::colour {

/// An sRGB colour, 8 bits a channel.
struct Rgb {
  std::uint8_t red = 0, green = 0, blue = 0;
  bool operator==(const Rgb&) const = default;
};

/// An sRGB colour before it is rounded to 8 bits: 0..1 a channel, below 0 or above 1 outside what sRGB can show.
struct Encoded {
  double red = 0, green = 0, blue = 0;
  bool operator==(const Encoded&) const = default;
};

/// Light in sRGB's primaries: 0..1 a channel, below 0 or above 1 outside what sRGB can show.
struct Linear {
  double red = 0, green = 0, blue = 0;
  bool operator==(const Linear&) const = default;
};

/// "#1b2a49" (three or six hex digits, either case).
/// Errors: bad_text.
[[nodiscard]] Result<Rgb> parse_hex(std::string_view text);
[[nodiscard]] std::string to_hex(Rgb colour);

/// One channel, 0-255, to linear light, 0-1. Threshold 0.04045, exponent 2.4.
[[nodiscard]] double linear_light(std::uint8_t channel);

[[nodiscard]] Linear to_linear(Rgb colour);
[[nodiscard]] Linear to_linear(Encoded colour);
/// Colours outside 0..1 follow the curve's mirror image.
[[nodiscard]] Encoded to_encoded(Linear light);
/// Each channel clipped to 0..1, then rounded to the nearest of 256.
[[nodiscard]] Rgb to_rgb(Linear light);
[[nodiscard]] Rgb to_rgb(Encoded colour);

/// Every channel lies within 0..1, or outside by no more than `tolerance`.
[[nodiscard]] bool is_displayable(Linear light, double tolerance = 1e-9);

/// `share` of the way from a to b in linear light, 0 <= share <= 1.
[[nodiscard]] Rgb mix(Rgb a, Rgb b, double share);

}  // namespace evencount::colour
