#pragma once
/// Light and reflectance in three channels: linear light in sRGB's primaries, white = (1, 1, 1).
///
/// Three channels, not wavelengths: the legend's colours are measured in three. Thin films, whose colour comes of wavelengths, are
/// worked out over the spectrum first (optics.hpp) and come here as reflectances.

#include <algorithm>
#include <cmath>

#include "colour/srgb.hpp"

namespace evencount::render {

struct Spectrum {
  double r = 0, g = 0, b = 0;
  bool operator==(const Spectrum&) const = default;
  friend constexpr Spectrum operator+(Spectrum a, Spectrum b) { return {a.r + b.r, a.g + b.g, a.b + b.b}; }
  friend constexpr Spectrum operator-(Spectrum a, Spectrum b) { return {a.r - b.r, a.g - b.g, a.b - b.b}; }
  friend constexpr Spectrum operator*(Spectrum a, Spectrum b) { return {a.r * b.r, a.g * b.g, a.b * b.b}; }
  friend constexpr Spectrum operator/(Spectrum a, Spectrum b) { return {a.r / b.r, a.g / b.g, a.b / b.b}; }
  friend constexpr Spectrum operator*(double k, Spectrum a) { return {k * a.r, k * a.g, k * a.b}; }
  constexpr Spectrum& operator+=(Spectrum a) { return *this = *this + a; }
  constexpr Spectrum& operator*=(Spectrum a) { return *this = *this * a; }
  [[nodiscard]] constexpr double operator[](int channel) const {
    return channel == 0 ? r : channel == 1 ? g : b;
  }
  constexpr double& operator[](int channel) { return channel == 0 ? r : channel == 1 ? g : b; }
};

[[nodiscard]] constexpr Spectrum grey(double value) {
  return {value, value, value};
}
[[nodiscard]] constexpr double largest(Spectrum s) {
  return std::max({s.r, s.g, s.b});
}
/// The plain mean, for choosing between lobes and lights; not how light it looks.
[[nodiscard]] constexpr double mean(Spectrum s) {
  return (s.r + s.g + s.b) / 3;
}
[[nodiscard]] inline Spectrum exp(Spectrum s) {
  return {std::exp(s.r), std::exp(s.g), std::exp(s.b)};
}
[[nodiscard]] constexpr Spectrum mix(Spectrum a, Spectrum b, double share) {
  return (1 - share) * a + share * b;
}
[[nodiscard]] inline Spectrum of(colour::Rgb colour) {
  const colour::Linear light = colour::to_linear(colour);
  return {light.red, light.green, light.blue};
}
[[nodiscard]] constexpr colour::Linear to_linear(Spectrum s) {
  return {s.r, s.g, s.b};
}

}  // namespace evencount::render
