#include "form/elliptic.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace evencount::form {
namespace {

using std::numbers::pi;

struct Carlson {
  double rf;
  double rd;
};

// RF(x, y, 1) and RD(x, y, 1) together: both duplicate the same arguments.
Carlson carlson(double x, double y) {
  constexpr double close_enough = 1e-3;  // the series below leave an error of about its sixth power
  double z = 1, sum = 0, scale = 1;
  for (;;) {
    const double root_x = std::sqrt(x), root_y = std::sqrt(y), root_z = std::sqrt(z);
    const double lambda = root_x * (root_y + root_z) + root_y * root_z;
    const double mean = (x + y + 3 * z) / 5;
    if (std::max({std::abs(x - mean), std::abs(y - mean), std::abs(z - mean)}) < close_enough * mean) break;
    sum += scale / (root_z * (z + lambda));
    scale /= 4;
    x = (x + lambda) / 4;
    y = (y + lambda) / 4;
    z = (z + lambda) / 4;
  }
  const double mean_f = (x + y + z) / 3;
  const double fx = 1 - x / mean_f, fy = 1 - y / mean_f, fz = -fx - fy;
  const double e2 = fx * fy - fz * fz, e3 = fx * fy * fz;
  const double rf = (1 - e2 / 10 + e3 / 14 + e2 * e2 / 24 - 3 * e2 * e3 / 44) / std::sqrt(mean_f);

  const double mean_d = (x + y + 3 * z) / 5;
  const double dx = 1 - x / mean_d, dy = 1 - y / mean_d, dz = -(dx + dy) / 3;
  const double d2 = dx * dy - 6 * dz * dz, d3 = (3 * dx * dy - 8 * dz * dz) * dz;
  const double d4 = 3 * (dx * dy - dz * dz) * dz * dz, d5 = dx * dy * dz * dz * dz;
  const double series =
      1 - 3 * d2 / 14 + d3 / 6 + 9 * d2 * d2 / 88 - 3 * d4 / 22 - 9 * d2 * d3 / 52 + 3 * d5 / 26;
  return {rf, scale * series / (mean_d * std::sqrt(mean_d)) + 3 * sum};
}

// From the end of the x axis (t = 0) to t in [0, pi/2].
double from_x_axis(double x_axis, double y_axis, double t) {
  // ds = sqrt(x^2 sin^2 t + y^2 cos^2 t) dt = y sqrt(1 - m sin^2 t) dt, an integral of the second kind.
  const double sine = std::sin(t), cosine = std::cos(t);
  const double m = 1 - (x_axis / y_axis) * (x_axis / y_axis);
  const double sine2 = sine * sine;
  const auto [rf, rd] = carlson(cosine * cosine, 1 - m * sine2);
  return y_axis * sine * (rf - m * sine2 * rd / 3);
}

// Signed length from t = 0, for any t.
double from_zero(double x_axis, double y_axis, double t) {
  const double halves = std::round(t / pi);
  const double rest = t - halves * pi;
  // The form above loses figures when x is much longer than y, so start from the other axis then.
  const double quarter =
      x_axis <= y_axis ? from_x_axis(x_axis, y_axis, pi / 2) : from_x_axis(y_axis, x_axis, pi / 2);
  const double turned = std::abs(rest);
  const double part = x_axis <= y_axis ? from_x_axis(x_axis, y_axis, turned)
                                       : quarter - from_x_axis(y_axis, x_axis, pi / 2 - turned);
  return 2 * halves * quarter + std::copysign(part, rest);
}

}  // namespace

double elliptic_arc_length(double x_axis, double y_axis, double from, double sweep) {
  return from_zero(x_axis, y_axis, from + sweep) - from_zero(x_axis, y_axis, from);
}

}  // namespace evencount::form
