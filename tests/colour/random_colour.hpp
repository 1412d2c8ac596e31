#pragma once
// Seeded random colours, drawn the same way on every standard library.

#include <cstdint>
#include <random>

#include "colour/srgb.hpp"

namespace evencount::colour {

inline double random_between(std::mt19937& random, double low, double high) {
  return low + (high - low) * static_cast<double>(random()) / 4294967296.0;
}

inline Rgb random_rgb(std::mt19937& random) {
  const auto byte = [&] { return static_cast<std::uint8_t>(random() >> 24); };
  return Rgb{byte(), byte(), byte()};
}

// Also a little outside what a screen shows.
inline Linear random_linear(std::mt19937& random, double low = -0.2, double high = 1.3) {
  const auto channel = [&] { return random_between(random, low, high); };
  return Linear{channel(), channel(), channel()};
}

inline Rgb grey_rgb(int value) {
  const auto v = static_cast<std::uint8_t>(value);
  return {v, v, v};
}

}  // namespace evencount::colour
