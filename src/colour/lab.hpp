#pragma once
/// CIE XYZ and CIELAB (CIE 15), each with its white in the type: a difference between colours of two whites does not compile.
///
/// D65 is the white of sRGB and screens, D50 that of print and of measuring instruments. Between them goes the Bradford
/// adaptation, the one of ICC profiles and CSS.
///
/// Properties (tests/colour/lab_test.cpp):
///  (1) to_xyz(to_lab(x)) == x, adapt there and back, and to_linear(to_xyz(l)) == l, within 1e-13 (XYZ of white = 1)
///  (2) white is (100, 0, 0) and every grey of a screen has a == b == 0 exactly, in either white; by XYZ |a|, |b| < 1e-12
///  (3) lightness rises strictly with luminance
/// The same bits on every compiler: only +, -, *, / and cube_root.

#include "colour/srgb.hpp"

namespace evencount::colour {

enum class White { d65, d50 };

/// Tristimulus values of the 2 degree observer; white has y = 1.
template <White white>
struct Xyz {
  double x = 0, y = 0, z = 0;
  bool operator==(const Xyz&) const = default;
};
using XyzD65 = Xyz<White::d65>;
using XyzD50 = Xyz<White::d50>;

/// CIELAB: lightness 0 (black) to 100 (white); a towards red, b towards yellow.
template <White white>
struct Lab {
  double lightness = 0, a = 0, b = 0;
  bool operator==(const Lab&) const = default;
};
using LabD65 = Lab<White::d65>;
using LabD50 = Lab<White::d50>;

[[nodiscard]] XyzD65 to_xyz(Linear light);
[[nodiscard]] Linear to_linear(XyzD65 colour);

/// Bradford, linear: each white becomes the other, exactly to rounding.
[[nodiscard]] XyzD50 adapt_to_d50(XyzD65 colour);
[[nodiscard]] XyzD65 adapt_to_d65(XyzD50 colour);

[[nodiscard]] LabD65 to_lab(XyzD65 colour);
[[nodiscard]] LabD50 to_lab(XyzD50 colour);
[[nodiscard]] XyzD65 to_xyz(LabD65 colour);
[[nodiscard]] XyzD50 to_xyz(LabD50 colour);

/// From and to a screen's colour, in sRGB's own white or adapted to D50.
[[nodiscard]] LabD65 to_lab_d65(Linear light);
[[nodiscard]] LabD65 to_lab_d65(Rgb colour);
[[nodiscard]] LabD50 to_lab_d50(Linear light);
[[nodiscard]] LabD50 to_lab_d50(Rgb colour);
[[nodiscard]] Linear to_linear(LabD65 colour);
[[nodiscard]] Linear to_linear(LabD50 colour);

}  // namespace evencount::colour
