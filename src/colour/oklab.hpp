#pragma once
/// OKLab (B. Ottosson, "A perceptual color space for image processing", 2020): distances that are nearly even, for a few
/// multiplications; made for mixing, and for shortlists that CIEDE2000 then decides.
///
/// Properties (tests/colour/oklab_test.cpp):
///  (1) to_linear(to_oklab(l)) == l and to_xyz(to_oklab(x)) == x, within 1e-12
///  (2) a grey of a screen has |a|, |b| < 1e-14, and white is (1, 0, 0) within 1e-14
///  (3) the rows of tests/cases/colour/oklab_reference.csv, each within its stated tolerance
/// The same bits on every compiler: only +, -, *, / and cube_root.

#include "colour/lab.hpp"
#include "colour/srgb.hpp"

namespace evencount::colour {

/// Lightness 0 (black) to 1 (white); a towards red, b towards yellow, within about 0.4 of 0.
struct Oklab {
  double lightness = 0, a = 0, b = 0;
  bool operator==(const Oklab&) const = default;
};

/// With the matrix refitted in 2021, as CSS Color 4 has it.
[[nodiscard]] Oklab to_oklab(Linear light);
[[nodiscard]] Oklab to_oklab(Rgb colour);
[[nodiscard]] Linear to_linear(Oklab colour);

/// With the matrix first published, in 2020, that the table of examples is made with. Going by XYZ differs from going straight by up to
/// 1.3e-4, so take the way back that belongs to the way there.
[[nodiscard]] Oklab to_oklab(XyzD65 colour);
[[nodiscard]] XyzD65 to_xyz(Oklab colour);

}  // namespace evencount::colour
