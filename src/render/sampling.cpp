#include "render/sampling.hpp"

#include <numbers>

namespace evencount::render {
namespace {

using Bits = std::uint32_t;

/// The second dimension's bits for each byte of an index; the first is the index with its bits reversed. Direction numbers of the
/// polynomial x + 1: each is the one before it, xored with itself shifted by one.
using ByteTable = std::array<std::array<Bits, 256>, 4>;
ByteTable make_byte_table() {
  std::array<Bits, 32> directions{};
  directions[0] = Bits{1} << 31;
  for (std::size_t i = 1; i < 32; ++i) directions[i] = directions[i - 1] ^ (directions[i - 1] >> 1);
  ByteTable table{};
  for (std::size_t byte = 0; byte < 4; ++byte)
    for (std::size_t value = 0; value < 256; ++value)
      for (std::size_t bit = 0; bit < 8; ++bit)
        if ((value >> bit) & 1u) table[byte][value] ^= directions[8 * byte + bit];
  return table;
}

Bits reversed(Bits x) {
  x = ((x & 0x55555555u) << 1) | ((x >> 1) & 0x55555555u);
  x = ((x & 0x33333333u) << 2) | ((x >> 2) & 0x33333333u);
  x = ((x & 0x0f0f0f0fu) << 4) | ((x >> 4) & 0x0f0f0f0fu);
  x = ((x & 0x00ff00ffu) << 8) | ((x >> 8) & 0x00ff00ffu);
  return (x << 16) | (x >> 16);
}

/// Each bit changed by those below it only (S. Laine, T. Karras; constants of Burley's paper, from memory).
Bits stirred(Bits x, Bits seed) {
  x += seed;
  x ^= x * 0x6c50b47cu;
  x ^= x * 0xb82f1e52u;
  x ^= x * 0xc7afe638u;
  x ^= x * 0x8d22f6e6u;
  return x;
}

Bits scrambled(Bits x, Bits seed) {
  return reversed(stirred(reversed(x), seed));
}

}  // namespace

Four spread_point(std::uint32_t pixel, std::uint32_t sample, std::uint32_t set, std::uint32_t seed) {
  static const ByteTable table = make_byte_table();
  Four point{};
  for (Bits pair = 0; pair < 2; ++pair) {
    const Bits own = hashed(hashed(pixel, seed), 2 * set + pair);
    const Bits index = scrambled(sample, own);
    const Bits second = table[0][index & 255u] ^ table[1][(index >> 8) & 255u] ^
                        table[2][(index >> 16) & 255u] ^ table[3][index >> 24];
    point[2 * pair] = share_of(scrambled(reversed(index), hashed(own, 1)));
    point[2 * pair + 1] = share_of(scrambled(second, hashed(own, 2)));
  }
  return point;
}

double normal_of(std::uint32_t a, std::uint32_t b) {
  return std::sqrt(-2 * std::log(1 - share_of(a))) * std::cos(2 * std::numbers::pi * share_of(b));
}

DiscPoint on_disc(double u, double v) {  // concentric: neighbours stay neighbours (Shirley, Chiu 1997)
  const double a = 2 * u - 1, b = 2 * v - 1;
  if (a == 0 && b == 0) return {};
  constexpr double quarter = std::numbers::pi / 4;
  if (std::abs(a) > std::abs(b)) return {a * std::cos(quarter * b / a), a * std::sin(quarter * b / a)};
  return {b * std::sin(quarter * a / b), b * std::cos(quarter * a / b)};
}

Vec3 cosine_direction(double u, double v) {
  const DiscPoint p = on_disc(u, v);
  return {p.x, p.y, std::sqrt(std::max(0.0, 1 - p.x * p.x - p.y * p.y))};
}

}  // namespace evencount::render
