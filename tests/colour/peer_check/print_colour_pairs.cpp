// Prints 10,000 pairs of sRGB colours and what we make of them, a line each, for compare.mjs:
//   R G B  R G B  Lab D65 of the first  Lab D50 of the first  OKLab of the first  CIEDE2000 (D65)  CIEDE2000 (D50)  contrast

#include <fmt/format.h>

#include <algorithm>
#include <random>

#include "colour/contrast.hpp"
#include "colour/difference.hpp"

using namespace evencount::colour;

int main() {
  std::mt19937 random(20'040);
  const auto byte = [&] { return static_cast<std::uint8_t>(random() >> 24); };
  // A few steps up or down: pairs that are hard to tell apart matter most.
  const auto near = [&](std::uint8_t value) {
    return static_cast<std::uint8_t>(std::clamp(value + static_cast<int>(random() % 9) - 4, 0, 255));
  };
  for (int i = 0; i < 10'000; ++i) {
    Rgb a{byte(), byte(), byte()}, b{byte(), byte(), byte()};
    if (i % 4 == 1) b = {near(a.red), near(a.green), near(a.blue)};
    if (i % 16 == 2) a.green = a.blue = a.red;
    const LabD65 lab = to_lab_d65(a);
    const LabD50 print = to_lab_d50(a);
    const Oklab ok = to_oklab(a);
    fmt::print("{} {} {} {} {} {} {} {} {} {} {} {} {} {} {} {} {} {}\n", a.red, a.green, a.blue, b.red, b.green,
               b.blue, lab.lightness, lab.a, lab.b, print.lightness, print.a, print.b, ok.lightness, ok.a, ok.b,
               ciede2000(lab, to_lab_d65(b)), ciede2000(print, to_lab_d50(b)), contrast(a, b));
  }
}
