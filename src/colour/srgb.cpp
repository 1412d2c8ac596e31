#include "colour/srgb.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "base/text.hpp"
#include "colour/roots.hpp"

namespace evencount::colour {
namespace {

// IEC 61966-2-1: the straight part below `decode_threshold`, slope, offset; the exponent 2.4 is in the roots below.
constexpr double decode_threshold = 0.04045, encode_threshold = 0.0031308, slope = 12.92, offset = 0.055;

constexpr double decoded(double value) {
  if (value < 0) return -decoded(-value);
  if (value <= decode_threshold) return value / slope;
  const double base = (value + offset) / (1 + offset);
  return base * base * fifth_root(base * base);  // base^2.4
}

double encoded(double light) {
  if (light < 0) return -encoded(-light);
  if (light <= encode_threshold) return slope * light;
  return (1 + offset) * cube_root(light * std::sqrt(std::sqrt(light))) -
         offset;  // light^(1 / 2.4) = light^(5 / 12)
}

constexpr std::array<double, 256> decoded_bytes = [] {
  std::array<double, 256> values{};
  for (std::size_t i = 0; i < 256; ++i) values[i] = decoded(static_cast<double>(i) / 255);
  return values;
}();

std::uint8_t byte(double value) {
  return static_cast<std::uint8_t>(std::lround(255 * std::clamp(value, 0.0, 1.0)));
}

int hex_digit(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (c >= 'A' && c <= 'F') return c - 'A' + 10;
  return -1;
}

}  // namespace

Result<Rgb> parse_hex(std::string_view text) {
  const Problem bad{ProblemCode::bad_text, "", quote(text), "a colour such as #1b2a49"};
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
  return decoded_bytes[channel];
}

Linear to_linear(Rgb colour) {
  return {linear_light(colour.red), linear_light(colour.green), linear_light(colour.blue)};
}

Linear to_linear(Encoded colour) {
  return {decoded(colour.red), decoded(colour.green), decoded(colour.blue)};
}

Encoded to_encoded(Linear light) {
  return {encoded(light.red), encoded(light.green), encoded(light.blue)};
}

Rgb to_rgb(Encoded colour) {
  return {byte(colour.red), byte(colour.green), byte(colour.blue)};
}

Rgb to_rgb(Linear light) {
  return to_rgb(to_encoded(light));
}

bool is_displayable(Linear light, double tolerance) {
  const auto fits = [&](double channel) { return channel >= -tolerance && channel <= 1 + tolerance; };
  return fits(light.red) && fits(light.green) && fits(light.blue);
}

Rgb mix(Rgb a, Rgb b, double share) {
  const auto channel = [&](std::uint8_t from, std::uint8_t to) {
    return (1 - share) * linear_light(from) + share * linear_light(to);
  };
  return to_rgb(Linear{channel(a.red, b.red), channel(a.green, b.green), channel(a.blue, b.blue)});
}

}  // namespace evencount::colour
