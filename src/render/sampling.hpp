#pragma once
/// Points spread evenly for a pixel's samples, and the directions made from them.
///
/// Points are pairs of the first two dimensions of Sobol's sequence, each pair shuffled and scrambled by hashes of the pixel, the set
/// and the seed (B. Burley, "Practical Hash-based Owen Scrambling", JCGT 9(4), 2020, from memory).
/// A point depends on nothing else: not on the order in which pixels are done, nor on the number of threads.
///
/// Properties (tests/render/sampling_test.cpp):
///  (1) of the first 2^(a + b) points of a set, each box of 2^-a by 2^-b in its first two dimensions, and in its last two, holds one
///  (2) every number is from 0 (included) to 1 (excluded)
///  (3) the same pixel, sample, set and seed give the same point; another pixel or seed another
///  (4) directions have the density that is said: their means are those of the density, within the error of the points

#include <array>
#include <cstdint>

#include "render/space.hpp"

namespace evencount::render {

using Four = std::array<double, 4>;

/// Which point is asked for. `set` counts groups of four dimensions along a path.
[[nodiscard]] Four spread_point(std::uint32_t pixel, std::uint32_t sample, std::uint32_t set,
                                std::uint32_t seed);

/// A well mixed number from two; for scatter that must not depend on order.
[[nodiscard]] constexpr std::uint32_t hashed(std::uint32_t a, std::uint32_t b) {
  // From memory: the finaliser of a 32-bit hash with low bias (C. Wellons, "hash prospector").
  std::uint32_t x = a * 0x9e3779b9u ^ (b + 0x7f4a7c15u + (a << 6));
  x ^= x >> 16, x *= 0x7feb352du, x ^= x >> 15, x *= 0x846ca68bu, x ^= x >> 16;
  return x;
}
/// From 0 (included) to 1 (excluded).
[[nodiscard]] constexpr double share_of(std::uint32_t bits) {
  return bits * 0x1p-32;
}
/// A number from the normal distribution, from two well mixed ones.
[[nodiscard]] double normal_of(std::uint32_t a, std::uint32_t b);

/// A point of the unit disc, uniform.
struct DiscPoint {
  double x = 0, y = 0;
};
[[nodiscard]] DiscPoint on_disc(double u, double v);

/// Round +z with density cos / pi.
[[nodiscard]] Vec3 cosine_direction(double u, double v);

/// The share that a sample of density `a` counts when `b` could have made it too (power heuristic, E. Veach 1997).
[[nodiscard]] constexpr double power_share(double a, double b) {
  return a <= 0 ? 0 : 1 / (1 + (b / a) * (b / a));
}

}  // namespace evencount::render
