#pragma once
/// How different two colours look: CIEDE2000 (CIE 142-2001; G. Sharma, W. Wu, E. N. Dalal, "The CIEDE2000 color-difference
/// formula: implementation notes, supplementary test data, and mathematical observations", Color Res. Appl. 30(1), 2005), all three
/// weights 1. About 1 is just seen; 2 to 3 are told apart side by side; 10 and more is plainly another colour (from memory).
///
/// Properties (tests/colour/difference_test.cpp):
///  (1) ciede2000(a, b) == ciede2000(b, a) to the bit, and ciede2000(a, a) == 0
///  (2) the 34 pairs of tests/cases/colour/ciede2000_sharma2005.csv within 1e-4, both ways round
///  (3) within 1e-10 of the textbook form in tests/oracle/ciede2000_oracle.hpp
///  (4) each value of the batch form is ciede2000 of that pair, rounded to float, whatever the processor
/// The same bits on every compiler: only +, -, *, / and square roots, no angle is ever taken.
///
/// Two colours of exactly opposite hue have no mean hue; the formula then takes the one 90 degrees on from the smaller hue, and so do
/// we, by the sign of a product instead of by comparing two arctangents with 180 degrees. The difference jumps there: by 0.06 for
/// pale colours, by tens for strong ones, which are far apart on either side. It also jumps where the mean hue passes 0, by up to 3e-4.

#include <cstddef>
#include <span>
#include <vector>

#include "colour/lab.hpp"
#include "colour/oklab.hpp"

namespace evencount::colour {

[[nodiscard]] double ciede2000(LabD65 a, LabD65 b);
[[nodiscard]] double ciede2000(LabD50 a, LabD50 b);

/// Straight-line distance; 0.02 is about what CIEDE2000 calls 1 to 2 (from memory).
[[nodiscard]] double oklab_distance(Oklab a, Oklab b);

/// Many colours laid out in columns, for comparing them with one at a time.
template <White white>
struct LabColumns {
  LabColumns() = default;
  explicit LabColumns(std::span<const Lab<white>> colours);

  [[nodiscard]] std::size_t size() const { return lightness.size(); }
  [[nodiscard]] Lab<white> operator[](std::size_t i) const { return {lightness[i], a[i], b[i]}; }

  std::vector<double> lightness, a, b;
  std::vector<double> chroma;  ///< sqrt(a^2 + b^2)
};

/// differences[i] = ciede2000(from, to[i]). `differences` is as long as `to`.
void ciede2000(LabD65 from, const LabColumns<White::d65>& to, std::span<float> differences);
void ciede2000(LabD50 from, const LabColumns<White::d50>& to, std::span<float> differences);

/// The same for a run of neighbours: differences[i] = ciede2000(from, to[begin + i]).
void ciede2000(LabD65 from, const LabColumns<White::d65>& to, std::size_t begin, std::span<float> differences);
void ciede2000(LabD50 from, const LabColumns<White::d50>& to, std::size_t begin, std::span<float> differences);

extern template struct LabColumns<White::d65>;
extern template struct LabColumns<White::d50>;

}  // namespace evencount::colour
