#include "colour/difference_rows.hpp"

#include <array>
#include <cmath>

namespace evencount::colour {
namespace {

struct Direction {
  double cosine, sine;
};

// 1 / (k^2 C(2k, k)), k = 1..: (2 asin x)^2 = 2 sum (2x)^(2k) / (k^2 C(2k, k)).
template <int terms>
constexpr std::array<double, terms> squared_arcsine = [] {
  std::array<double, terms> coefficients{};
  double central = 1;
  for (int k = 1; k <= terms; ++k) {
    central *= 2.0 * (2 * k - 1) / k;
    coefficients[static_cast<std::size_t>(k - 1)] = 1 / (k * k * central);
  }
  return coefficients;
}();

// 1 / k!, k = 0..
template <int terms>
constexpr std::array<double, terms> reciprocal_factorials = [] {
  std::array<double, terms> coefficients{};
  double factorial = 1;
  for (int k = 0; k < terms; ++k) {
    if (k > 0) factorial *= k;
    coefficients[static_cast<std::size_t>(k)] = 1 / factorial;
  }
  return coefficients;
}();

// Horner's scheme. Recursive, since compilers run several pairs at a time only where no inner loop is left.
template <std::size_t k = 0, std::size_t terms>
[[gnu::always_inline]] inline double polynomial(const std::array<double, terms>& coefficients, double x) {
  if constexpr (k + 1 == terms) {
    return coefficients[k];
  } else {
    return coefficients[k] + x * polynomial<k + 1>(coefficients, x);
  }
}

[[gnu::always_inline]] inline double to_the_64th(double x) {
  const double x2 = x * x, x4 = x2 * x2, x8 = x4 * x4, x16 = x8 * x8, x32 = x16 * x16;
  return x32 * x32;
}

// sin(2 * 30 degrees * exp(-(phi / 25 degrees)^2)) from cos(phi), within 2e-14. The series are short because what they miss far
// from 0 is multiplied by an exponential that is nothing there.
[[gnu::always_inline]] inline double blue_turn(double cosine) {
  constexpr double per_25_degrees_squared = 5.2524901600187901;  // (180 / pi / 25)^2
  constexpr double sixty_degrees = 1.0471975511965977;           // pi / 3
  const double cosine_of_half = std::sqrt(0.5 * (cosine > -1 ? 1 + cosine : 0));
  const double u = 0.5 * (1 - cosine_of_half);  // sin^2(phi / 4)
  const double phi_squared = 32 * u * polynomial(squared_arcsine<12>, 4 * u);
  // exp(-x) = exp(-x / 64)^64
  const double power =
      to_the_64th(polynomial(reciprocal_factorials<12>, -phi_squared * (per_25_degrees_squared / 64)));
  const double angle = sixty_degrees * power, square = -angle * angle;
  constexpr std::array<double, 9> sine = [] {
    std::array<double, 9> coefficients{};
    for (std::size_t k = 0; k < 9; ++k) coefficients[k] = reciprocal_factorials<18>[2 * k + 1];
    return coefficients;
  }();
  return angle * polynomial(sine, square);
}

// T of the formula, from the mean hue's direction.
[[gnu::always_inline]] inline double hue_weight(Direction h) {
  constexpr double cos30 = 0.86602540378443865, sin30 = 0.5;
  constexpr double cos6 = 0.99452189536827333, sin6 = 0.10452846326765347;
  constexpr double cos63 = 0.45399049973954675, sin63 = 0.89100652418836786;
  const double c1 = h.cosine, s1 = h.sine;
  const double c2 = c1 * c1 - s1 * s1, s2 = 2 * c1 * s1;
  const double c3 = c2 * c1 - s2 * s1, s3 = s2 * c1 + c2 * s1;
  const double c4 = c2 * c2 - s2 * s2, s4 = 2 * c2 * s2;
  return 1 - 0.17 * (c1 * cos30 + s1 * sin30) + 0.24 * c2 + 0.32 * (c3 * cos6 - s3 * sin6) -
         0.20 * (c4 * cos63 + s4 * sin63);
}

// sqrt(C^7 / (C^7 + 25^7))
[[gnu::always_inline]] inline double saturation(double chroma) {
  constexpr double twenty_five_to_7 = 6103515625.0;
  const double cube = chroma * chroma * chroma, seventh = cube * cube * chroma;
  return std::sqrt(seventh / (seventh + twenty_five_to_7));
}

// Everything the formula asks of angles follows from the cross and dot product of the two chroma vectors: with d the angle between
// them and P = C1' C2', cross = P sin d, dot = P cos d. No branch, so that the batch form runs on several colours at once.
[[gnu::always_inline]] inline double difference(const LabPoint& p, const LabPoint& q) {
  const double stretch = 1.5 - 0.5 * saturation(0.5 * (p.chroma + q.chroma));  // 1 + G
  const double a1 = stretch * p.a, a2 = stretch * q.a, b1 = p.b, b2 = q.b;
  const double chroma1 = std::sqrt(a1 * a1 + b1 * b1), chroma2 = std::sqrt(a2 * a2 + b2 * b2);
  const double product = chroma1 * chroma2;
  const double cross = a1 * b2 - a2 * b1, dot = a1 * a2 + b1 * b2;
  const bool near = dot >= 0;
  // Which way from the first hue to the second; exactly opposite hues go up from the smaller.
  const double first_is_smaller = b1 > 0 ? 1.0 : b1 < 0 ? -1.0 : a1 > 0 ? 1.0 : -1.0;
  const double way = cross > 0 ? 1.0 : cross < 0 ? -1.0 : first_is_smaller;

  // sqrt(P) times the cosine (near) or the sine (far) of half the angle between: the larger of the two, so that nothing cancels.
  const double half = std::sqrt(0.5 * (product + (near ? dot : -dot)));
  const double delta_hue = near ? cross / (half > 0 ? half : 1) : 2 * way * half;

  // The mean hue: the bisector, taken from the sum of the two directions or, when they are nearly opposite, square to their
  // difference. A colour without chroma has no hue and leaves the other's.
  const double weight1 = product > 0 ? chroma2 : 1, weight2 = product > 0 ? chroma1 : 1;
  const double u1 = weight1 * a1, v1 = weight1 * b1, u2 = weight2 * a2, v2 = weight2 * b2;
  const double u = near ? u1 + u2 : way * (v2 - v1), v = near ? v1 + v2 : way * (u1 - u2);
  const double length = std::sqrt(u * u + v * v);
  const double scale =
      1 / (length > 0 ? length : 1);  // two greys have no hue, and no difference of hue that it would weigh
  const Direction mean{u * scale, v * scale};

  constexpr double cos275 = 0.087155742747658174, sin275 = -0.99619469809174553;
  const double mean_chroma = 0.5 * (chroma1 + chroma2);
  const double from_middle = 0.5 * (p.lightness + q.lightness) - 50, square = from_middle * from_middle;
  const double lightness = (q.lightness - p.lightness) / (1 + 0.015 * square / std::sqrt(20 + square));
  const double chroma = (chroma2 - chroma1) / (1 + 0.045 * mean_chroma);
  const double hue = delta_hue / (1 + 0.015 * mean_chroma * hue_weight(mean));
  // The formula counts hues from 0 to 360 degrees and does not close its ring: the first quarter lies far from 275.
  const double blue = -2 * saturation(mean_chroma) * blue_turn(mean.cosine * cos275 + mean.sine * sin275);
  const double least = mean.cosine < mean.sine ? mean.cosine : mean.sine;
  const double turn = least < 0 ? blue : 0;
  const double sum = lightness * lightness + chroma * chroma + hue * hue + turn * chroma * hue;
  return std::sqrt(sum > 0 ? sum : 0);
}

[[gnu::always_inline]] inline void fill_row(const LabPoint& from, const LabRows& to,
                                            float* __restrict differences, std::size_t size) {
  for (std::size_t i = 0; i < size; ++i)
    differences[i] = static_cast<float>(difference(from, {to.lightness[i], to.a[i], to.b[i], to.chroma[i]}));
}

void fill_plainly(const LabPoint& from, const LabRows& to, float* differences, std::size_t size) {
  fill_row(from, to, differences, size);
}

#if defined(__x86_64__) && defined(__GNUC__)
// The same operations on four or eight pairs at a time: the results are the same to the bit, as nothing is fused or reordered.
[[gnu::target("avx2")]] void fill_by_four(const LabPoint& from, const LabRows& to, float* differences,
                                          std::size_t size) {
  fill_row(from, to, differences, size);
}

[[gnu::target("avx512f")]] void fill_by_eight(const LabPoint& from, const LabRows& to, float* differences,
                                              std::size_t size) {
  fill_row(from, to, differences, size);
}
#endif

bool always() {
  return true;
}

constexpr RowFill row_fills_of_this_build[] = {
#if defined(__x86_64__) && defined(__GNUC__)
    {"eight at a time", [] { return __builtin_cpu_supports("avx512f") != 0; }, fill_by_eight},
    {"four at a time", [] { return __builtin_cpu_supports("avx2") != 0; }, fill_by_four},
#endif
    {"plainly", always, fill_plainly}};

}  // namespace

double ciede2000_of(const LabPoint& p, const LabPoint& q) {
  return difference(p, q);
}

std::span<const RowFill> row_fills() {
  return row_fills_of_this_build;
}

}  // namespace evencount::colour
