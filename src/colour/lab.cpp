#include "colour/lab.hpp"

#include "colour/matrix.hpp"
#include "colour/primaries.hpp"
#include "colour/roots.hpp"

namespace evencount::colour {
namespace {

// The Bradford cone matrix: K. M. Lam 1985, as in CSS Color 4 and ICC.1, annex E.
constexpr Matrix bradford{{{0.8951, 0.2664, -0.1614}, {-0.7502, 1.7135, 0.0367}, {0.0389, -0.0685, 1.0296}}};

constexpr Matrix adaptation(const Triple& from, const Triple& to) {
  const Triple cones_from = bradford * from, cones_to = bradford * to;
  return inverse(bradford) *
         diagonal({cones_to[0] / cones_from[0], cones_to[1] / cones_from[1], cones_to[2] / cones_from[2]}) *
         bradford;
}
constexpr Matrix d65_to_d50 = adaptation(d65, d50), d50_to_d65 = adaptation(d50, d65);

// CIE 15: f(t) = cube root of t above (6/29)^3, and below it the line of the same value; both in exact fractions.
constexpr double epsilon = 216.0 / 24389, kappa = 24389.0 / 27;

double squeezed(double t) {
  return t > epsilon ? cube_root(t) : (kappa * t + 16) / 116;
}

double unsqueezed(double f) {
  const double cube = f * f * f;
  return cube > epsilon ? cube : (116 * f - 16) / kappa;
}

template <White white>
Lab<white> lab_of(Xyz<white> colour, const Triple& reference) {
  const double fx = squeezed(colour.x / reference[0]), fy = squeezed(colour.y),
               fz = squeezed(colour.z / reference[2]);
  return {116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)};
}

template <White white>
Xyz<white> xyz_of(Lab<white> colour, const Triple& reference) {
  const double fy = (colour.lightness + 16) / 116;
  return {reference[0] * unsqueezed(fy + colour.a / 500), unsqueezed(fy),
          reference[2] * unsqueezed(fy - colour.b / 200)};
}

// A grey has no hue. What rounding leaves of one, 1e-14 or so, CIEDE2000 would take the root of.
template <White white>
Lab<white> without_hue_if_grey(Lab<white> colour, Linear light) {
  return light.red == light.green && light.green == light.blue ? Lab<white>{colour.lightness, 0, 0} : colour;
}

}  // namespace

XyzD65 to_xyz(Linear light) {
  const auto [x, y, z] = rgb_to_xyz * Triple{light.red, light.green, light.blue};
  return {x, y, z};
}

Linear to_linear(XyzD65 colour) {
  const auto [red, green, blue] = xyz_to_rgb * Triple{colour.x, colour.y, colour.z};
  return {red, green, blue};
}

XyzD50 adapt_to_d50(XyzD65 colour) {
  const auto [x, y, z] = d65_to_d50 * Triple{colour.x, colour.y, colour.z};
  return {x, y, z};
}

XyzD65 adapt_to_d65(XyzD50 colour) {
  const auto [x, y, z] = d50_to_d65 * Triple{colour.x, colour.y, colour.z};
  return {x, y, z};
}

LabD65 to_lab(XyzD65 colour) {
  return lab_of(colour, d65);
}

LabD50 to_lab(XyzD50 colour) {
  return lab_of(colour, d50);
}

XyzD65 to_xyz(LabD65 colour) {
  return xyz_of(colour, d65);
}

XyzD50 to_xyz(LabD50 colour) {
  return xyz_of(colour, d50);
}

LabD65 to_lab_d65(Linear light) {
  return without_hue_if_grey(to_lab(to_xyz(light)), light);
}

LabD65 to_lab_d65(Rgb colour) {
  return to_lab_d65(to_linear(colour));
}

LabD50 to_lab_d50(Linear light) {
  return without_hue_if_grey(to_lab(adapt_to_d50(to_xyz(light))), light);
}

LabD50 to_lab_d50(Rgb colour) {
  return to_lab_d50(to_linear(colour));
}

Linear to_linear(LabD65 colour) {
  return to_linear(to_xyz(colour));
}

Linear to_linear(LabD50 colour) {
  return to_linear(adapt_to_d65(to_xyz(colour)));
}

}  // namespace evencount::colour
