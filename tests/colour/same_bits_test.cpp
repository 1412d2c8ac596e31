// The headers promise the same bits on every compiler and processor: a digest of many results, which must never change by itself. A
// change of a formula changes it on purpose, and then the new digest is checked in with g++ and clang++.

#include <gtest/gtest.h>

#include <bit>

#include "colour/difference.hpp"
#include "colour/vision.hpp"
#include "random_colour.hpp"

namespace evencount::colour {
namespace {

class Digest {
 public:
  void add(double value) {
    // FNV-1a, byte by byte.
    const auto bits = std::bit_cast<std::uint64_t>(value);
    for (int byte = 0; byte < 8; ++byte) {
      hash_ ^= (bits >> (8 * byte)) & 0xff;
      hash_ *= 1099511628211u;
    }
  }
  template <typename... Values>
  void add_all(Values... values) {
    (add(values), ...);
  }
  std::uint64_t value() const { return hash_; }

 private:
  std::uint64_t hash_ = 14695981039346656037u;
};

TEST(SameBits, OfConversions) {
  std::mt19937 random(6'001);
  Digest digest;
  for (int i = 0; i < 256; ++i) digest.add(linear_light(static_cast<std::uint8_t>(i)));
  for (int i = 0; i < 10'000; ++i) {
    const Linear light = random_linear(random);
    const Encoded encoded = to_encoded(light);
    const LabD65 screen = to_lab_d65(light);
    const LabD50 print = to_lab_d50(light);
    const Oklab ok = to_oklab(light);
    const Linear back = to_linear(print), ok_back = to_linear(ok);
    digest.add_all(encoded.red, encoded.green, encoded.blue, screen.lightness, screen.a, screen.b,
                   print.lightness, print.a, print.b, ok.lightness, ok.a, ok.b, back.red, back.green,
                   back.blue, ok_back.red, ok_back.green, ok_back.blue);
  }
  EXPECT_EQ(digest.value(), 8327312546769428838u);
}

TEST(SameBits, OfDifferences) {
  std::mt19937 random(6'002);
  Digest digest;
  std::vector<LabD65> stock;
  for (int i = 0; i < 1'000; ++i) stock.push_back(to_lab_d65(random_rgb(random)));
  const LabColumns<White::d65> columns(stock);
  std::vector<float> differences(stock.size());
  for (int i = 0; i < 20; ++i) {
    const LabD65 from = to_lab_d65(random_rgb(random));
    ciede2000(from, columns, differences);
    for (std::size_t j = 0; j < stock.size(); ++j)
      digest.add_all(ciede2000(from, stock[j]), static_cast<double>(differences[j]));
  }
  EXPECT_EQ(digest.value(), 8156382020294414359u);
}

TEST(SameBits, OfSimulations) {
  std::mt19937 random(6'003);
  Digest digest;
  for (const Deficiency deficiency : {Deficiency::protan, Deficiency::deutan, Deficiency::tritan}) {
    for (int i = 0; i < 2'000; ++i) {
      const Linear light = random_linear(random);
      const Linear a = seen(*machado_vision(deficiency, random_between(random, 0, 1)), light);
      const Linear b = seen(brettel_vision(deficiency), light);
      digest.add_all(a.red, a.green, a.blue, b.red, b.green, b.blue);
    }
  }
  EXPECT_EQ(digest.value(), 6410800225979347207u);
}

}  // namespace
}  // namespace evencount::colour
