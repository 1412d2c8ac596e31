#include "render/optics.hpp"

#include <array>
#include <numbers>

#include "colour/lab.hpp"

namespace evencount::render {
namespace {

/// Amplitudes reflected at a boundary between densities n1 and n2, by polarisation.
struct Amplitudes {
  double across = 0, in_plane = 0;
};
Amplitudes amplitudes(double n1, double cos1, double n2, double cos2) {
  return {(n1 * cos1 - n2 * cos2) / (n1 * cos1 + n2 * cos2),
          (n2 * cos1 - n1 * cos2) / (n2 * cos1 + n1 * cos2)};
}

double cosine_beyond(double cosine, double density) {
  const double sine2 = (1 - cosine * cosine) / (density * density);
  return sine2 >= 1 ? 0 : std::sqrt(1 - sine2);
}

double clamped_cosine(double cosine) {
  return std::clamp(std::abs(cosine), 1e-9, 1.0);
}

/// CIE standard illuminant D65, relative, 400 to 700 nm every 10 (from memory of the CIE's table).
constexpr std::array<double, 31> daylight_65{82.75,  91.49,  93.43,  86.68,  104.86, 117.01, 117.81, 114.86,
                                             115.92, 108.81, 109.35, 107.80, 104.79, 107.69, 104.41, 104.05,
                                             100.00, 96.33,  95.79,  88.69,  90.01,  89.60,  87.70,  83.29,
                                             83.70,  80.03,  80.21,  82.28,  78.28,  69.72,  71.61};
constexpr double first_nm = 400, step_nm = 10;

/// The 2 degree observer as sums of lobes (C. Wyman, P.-P. Sloan, P. Shirley, "Simple Analytic Approximations to the CIE XYZ Color
/// Matching Functions", JCGT 2(2), 2013; from memory).
double lobe(double nm, double middle, double below, double above) {
  const double t = (nm - middle) * (nm < middle ? below : above);
  return std::exp(-0.5 * t * t);
}
colour::XyzD65 observer(double nm) {
  return {0.362 * lobe(nm, 442.0, 0.0624, 0.0374) + 1.056 * lobe(nm, 599.8, 0.0264, 0.0323) -
              0.065 * lobe(nm, 501.1, 0.0490, 0.0382),
          0.821 * lobe(nm, 568.8, 0.0213, 0.0247) + 0.286 * lobe(nm, 530.9, 0.0613, 0.0322),
          1.217 * lobe(nm, 437.0, 0.0845, 0.0278) + 0.681 * lobe(nm, 459.0, 0.0385, 0.0725)};
}

/// What each wavelength adds to the three channels; a reflectance of 1 everywhere gives (1, 1, 1).
struct Weights {
  std::array<Spectrum, daylight_65.size()> of;
  colour::XyzD65 white;
};
const Weights& weights() {
  static const Weights all = [] {
    Weights w;
    Spectrum sum;
    for (std::size_t i = 0; i < daylight_65.size(); ++i) {
      const colour::XyzD65 seen = observer(first_nm + step_nm * static_cast<double>(i));
      const colour::XyzD65 light{daylight_65[i] * seen.x, daylight_65[i] * seen.y, daylight_65[i] * seen.z};
      w.white = {w.white.x + light.x, w.white.y + light.y, w.white.z + light.z};
      const colour::Linear rgb = colour::to_linear(light);
      w.of[i] = {rgb.red, rgb.green, rgb.blue};
      sum += w.of[i];
    }
    for (Spectrum& weight : w.of) weight = weight / sum;
    return w;
  }();
  return all;
}

}  // namespace

double fresnel(double cosine, double density) {
  const double cos1 = clamped_cosine(cosine), cos2 = cosine_beyond(cos1, density);
  if (cos2 == 0) return 1;
  const Amplitudes r = amplitudes(1, cos1, density, cos2);
  return (r.across * r.across + r.in_plane * r.in_plane) / 2;
}

double fresnel_mean(double n) {
  const double n2 = n * n, n4 = n2 * n2;
  return 0.5 + (n - 1) * (3 * n + 1) / (6 * (n + 1) * (n + 1)) +
         n2 * (n2 - 1) * (n2 - 1) / std::pow(n2 + 1, 3) * std::log((n - 1) / (n + 1)) -
         2 * n2 * n * (n2 + 2 * n - 1) / ((n2 + 1) * (n4 - 1)) +
         8 * n4 * (n4 + 1) / ((n2 + 1) * (n4 - 1) * (n4 - 1)) * std::log(n);
}

double film_reflectance(const Film& film, double cosine, double wavelength_nm) {
  const double cos0 = clamped_cosine(cosine), cos1 = cosine_beyond(cos0, film.density),
               cos2 = cosine_beyond(cos0, film.below);
  if (cos1 == 0 || cos2 == 0) return 1;
  const Amplitudes top = amplitudes(1, cos0, film.density, cos1);
  const Amplitudes bottom = amplitudes(film.density, cos1, film.below, cos2);
  const double phase = 4 * std::numbers::pi * film.density * film.thickness_nm * cos1 / wavelength_nm;
  const double turn = std::cos(phase);
  const auto airy = [&](double a, double b) {  // |a + b e^(i phase)|^2 / |1 + a b e^(i phase)|^2
    return (a * a + b * b + 2 * a * b * turn) / (1 + a * a * b * b + 2 * a * b * turn);
  };
  return (airy(top.across, bottom.across) + airy(top.in_plane, bottom.in_plane)) / 2;
}

Spectrum film_colour(const std::function<double(double)>& reflectance) {
  const Weights& w = weights();
  Spectrum sum;
  for (std::size_t i = 0; i < w.of.size(); ++i)
    sum += reflectance(first_nm + step_nm * static_cast<double>(i)) * w.of[i];
  return {std::clamp(sum.r, 0.0, 1.0), std::clamp(sum.g, 0.0, 1.0), std::clamp(sum.b, 0.0, 1.0)};
}

Spectrum film_colour(const Film& film, double cosine) {
  return film_colour([&](double nm) { return film_reflectance(film, cosine, nm); });
}

Chromaticity daylight() {
  const colour::XyzD65 white = weights().white;
  const double sum = white.x + white.y + white.z;
  return {white.x / sum, white.y / sum};
}

}  // namespace evencount::render
