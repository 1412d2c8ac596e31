#pragma once
// CIEDE2000 as Sharma, Wu and Dalal (2005) write it, step by step in degrees, equations numbered as there. Slow, and a little
// unsteady: two hues that are opposite on paper come out of atan2 a last bit nearer or further than 180 degrees, and the mean
// hue falls on one side or the other. A hue difference within 1e-11 degrees of 180 counts as 180,
// and a mean hue within 1e-11 of 360 as 0.

#include <cmath>
#include <numbers>

namespace evencount::oracle {

struct LabPoint {
  double lightness, a, b;
};

inline double ciede2000(const LabPoint& p, const LabPoint& q) {
  const auto radians = [](double degrees) { return degrees * std::numbers::pi / 180; };
  const auto hue = [](double a, double b) {
    if (a == 0 && b == 0) return 0.0;
    const double degrees = std::atan2(b, a) * 180 / std::numbers::pi;
    return degrees < 0 ? degrees + 360 : degrees;
  };
  const auto saturation = [](double chroma) {
    return std::sqrt(std::pow(chroma, 7) / (std::pow(chroma, 7) + std::pow(25.0, 7)));
  };

  const double mean_ab = (std::hypot(p.a, p.b) + std::hypot(q.a, q.b)) / 2;  // (2), (3)
  const double g = 0.5 * (1 - saturation(mean_ab));                          // (4)
  const double a1 = (1 + g) * p.a, a2 = (1 + g) * q.a;                       // (5)
  const double c1 = std::hypot(a1, p.b), c2 = std::hypot(a2, q.b);           // (6)
  const double h1 = hue(a1, p.b), h2 = hue(a2, q.b);                         // (7)

  constexpr double opposite = 180 + 1e-11;
  double dh = h2 - h1;  // (10)
  if (c1 * c2 == 0)
    dh = 0;
  else if (dh > opposite)
    dh -= 360;
  else if (dh < -opposite)
    dh += 360;
  const double dl = q.lightness - p.lightness, dc = c2 - c1;               // (8), (9)
  const double dhue = 2 * std::sqrt(c1 * c2) * std::sin(radians(dh / 2));  // (11)

  const double l = (p.lightness + q.lightness) / 2, c = (c1 + c2) / 2;  // (12), (13)
  double h = h1 + h2;                                                   // (14)
  if (c1 * c2 != 0) {
    if (std::abs(h1 - h2) <= opposite)
      h /= 2;
    else
      h = h < 360 ? (h + 360) / 2 : (h - 360) / 2;
  }
  if (h > 360 - 1e-11) h = 0;
  const double t = 1 - 0.17 * std::cos(radians(h - 30)) + 0.24 * std::cos(radians(2 * h)) +
                   0.32 * std::cos(radians(3 * h + 6)) - 0.20 * std::cos(radians(4 * h - 63));  // (15)
  const double turn = 30 * std::exp(-std::pow((h - 275) / 25, 2));                              // (16)
  const double rc = 2 * saturation(c);                                                          // (17)
  const double sl = 1 + 0.015 * std::pow(l - 50, 2) / std::sqrt(20 + std::pow(l - 50, 2));      // (18)
  const double sc = 1 + 0.045 * c, sh = 1 + 0.015 * c * t;                                      // (19), (20)
  const double rt = -std::sin(radians(2 * turn)) * rc;                                          // (21)
  return std::sqrt(std::pow(dl / sl, 2) + std::pow(dc / sc, 2) + std::pow(dhue / sh, 2) +
                   rt * (dc / sc) * (dhue / sh));  // (22)
}

}  // namespace evencount::oracle
