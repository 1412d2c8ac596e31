#pragma once
/// Roots made of +, -, * and / alone, which IEEE 754 rounds the same everywhere; std::cbrt and std::pow differ in the last
/// bit from one C library to the next.
///
/// Properties (tests/colour/roots_test.cpp), for finite numbers that are not subnormal:
///  (1) within 1e-15 relative of the true root
///  (2) cube_root(-x) == -cube_root(x); roots of 0 and 1 are exact

#include <bit>
#include <cstdint>

namespace evencount::colour {

/// The n-th root of x > 0, n 3 or 5: dividing the bits by n divides the exponent, which is a guess within a few per cent.
template <int n>
[[nodiscard]] constexpr double guess_root(double x) {
  constexpr std::uint64_t one = std::bit_cast<std::uint64_t>(1.0);
  return std::bit_cast<double>(std::bit_cast<std::uint64_t>(x) / n + (one - one / n));
}

[[nodiscard]] constexpr double cube_root(double x) {
  if (x == 0) return x;
  const double size = x < 0 ? -x : x;
  double root = guess_root<3>(size);
  // Halley's steps treble the figures: 5 %, 1e-4, 1e-12, rounding.
  for (int step = 0; step < 3; ++step) {
    const double cube = root * root * root;
    root += root * (size - cube) / (2 * cube + size);
  }
  return x < 0 ? -root : root;
}

/// x >= 0.
[[nodiscard]] constexpr double fifth_root(double x) {
  if (x == 0) return x;
  double root = guess_root<5>(x);
  for (int step = 0; step < 4; ++step) {
    const double fifth = root * root * root * root * root;
    root += root * (x - fifth) / (3 * fifth + 2 * x);  // Halley
  }
  return root;
}

}  // namespace evencount::colour
