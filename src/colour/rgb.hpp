#pragma once
/// A colour as a screen shows it, and how light it is: what a legend needs.

#include <cstdint>
#include <string>
#include <string_view>

#include "base/result.hpp"

namespace evencount::colour {

/// An sRGB colour (IEC 61966-2-1), 8 bits a channel.
struct Rgb {
  std::uint8_t red = 0, green = 0, blue = 0;
  bool operator==(const Rgb&) const = default;
};

/// "#1b2a49" (three or six hex digits, either case).
/// Errors: bad_text.
[[nodiscard]] Result<Rgb> parse_hex(std::string_view text);
[[nodiscard]] std::string to_hex(Rgb colour);

/// One channel, 0-255, to linear light, 0-1. IEC 61966-2-1: threshold 0.04045, exponent 2.4.
[[nodiscard]] double linear_light(std::uint8_t channel);

/// Relative luminance, 0 (black) to 1 (white). WCAG 2.2, definition of relative luminance.
[[nodiscard]] double luminance(Rgb colour);

/// Contrast ratio, 1 to 21, the same for (a, b) and (b, a). WCAG 2.2, definition of contrast ratio.
[[nodiscard]] double contrast(Rgb a, Rgb b);

/// Black or white, whichever stands out more on `ground`.
[[nodiscard]] Rgb ink_on(Rgb ground);

/// `share` of the way from a to b in linear light, 0 <= share <= 1.
[[nodiscard]] Rgb mix(Rgb a, Rgb b, double share);

}  // namespace evencount::colour
