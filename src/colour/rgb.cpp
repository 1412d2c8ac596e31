#include "colour/rgb.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/text.hpp"

namespace evencount::colour {
namespace {

int hex_digit(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (c >= 'A' && c <= 'F') return c - 'A' + 10;
  return -1;
}

std::uint8_t encoded(double linear) {
  const double value = linear <= 0.0031308 ? 12.92 * linear : 1.055 * std::pow(linear, 1 / 2.4) - 0.055;
  return static_cast<std::uint8_t>(std::lround(255 * std::clamp(value, 0.0, 1.0)));
}

}  // namespace

Result<Rgb> parse_hex(std::string_view text) {
  const Problem bad{ProblemCode::bad_text, "", quoted(text), "a colour such as #1b2a49"};
  if (text.empty() || text.front() != '#') return bad;
  const std::string_view digits = text.substr(1);
  if (digits.size() != 3 && digits.size() != 6) return bad;
  const std::size_t width = digits.size() / 3;
  std::uint8_t channels[3] = {};
  for (std::size_t i = 0; i < 3; ++i) {
    const int high = hex_digit(digits[i * width]);
    const int low = hex_digit(digits[i * width + width - 1]);
    if (high < 0 || low < 0) return bad;
    channels[i] = static_cast<std::uint8_t>(16 * high + low);
  }
  return Rgb{channels[0], channels[1], channels[2]};
}

std::string to_hex(Rgb colour) {
  return fmt::format("#{:02x}{:02x}{:02x}", colour.red, colour.green, colour.blue);
}

double linear_light(std::uint8_t channel) {
  const double value = channel / 255.0;
  return value <= 0.04045 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
}

double luminance(Rgb colour) {
  return 0.2126 * linear_light(colour.red) + 0.7152 * linear_light(colour.green) +
         0.0722 * linear_light(colour.blue);
}

double contrast(Rgb a, Rgb b) {
  const auto [darker, lighter] = std::minmax({luminance(a), luminance(b)});
  return (lighter + 0.05) / (darker + 0.05);
}

Rgb ink_on(Rgb ground) {
  constexpr Rgb black{0, 0, 0}, white{255, 255, 255};
  return contrast(ground, black) >= contrast(ground, white) ? black : white;
}

Rgb mix(Rgb a, Rgb b, double share) {
  const auto channel = [&](std::uint8_t from, std::uint8_t to) {
    return encoded((1 - share) * linear_light(from) + share * linear_light(to));
  };
  return {channel(a.red, b.red), channel(a.green, b.green), channel(a.blue, b.blue)};
}

}  // namespace evencount::colour
