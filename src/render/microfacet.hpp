#pragma once
/// Rough surfaces as many small mirrors: the GGX distribution with heights and slopes that shade each other (E. Heitz, "Understanding
/// the Masking-Shadowing Function in Microfacet-Based BRDFs", JCGT 3(2), 2014), its visible normals sampled (Heitz, JCGT 7(4), 2018).
/// Both from memory. Directions are local: +z is the surface's normal. `alpha` is the roughness, above 0.
///
/// Properties (tests/render/microfacet_test.cpp):
///  (1) the shadow of all mirrors is the surface's: the integral of D(h) cos(h) is 1
///  (2) the visible ones fill the view: the integral of visible_density over h is 1
///  (3) sampled normals have that density

#include <numbers>

#include "render/space.hpp"

namespace evencount::render {

[[nodiscard]] inline double ggx(Vec3 half, double alpha) {
  const double a2 = alpha * alpha, c2 = half.z * half.z;
  const double d = c2 * (a2 - 1) + 1;
  return a2 / (std::numbers::pi * d * d);
}

/// Smith's lambda: the share of a direction's view that is shaded is lambda / (1 + lambda).
[[nodiscard]] inline double shaded(Vec3 v, double alpha) {
  const double c2 = v.z * v.z;
  if (c2 >= 1) return 0;
  return (std::sqrt(1 + alpha * alpha * (1 - c2) / c2) - 1) / 2;
}

[[nodiscard]] inline double seen_share(Vec3 v, double alpha) {
  return 1 / (1 + shaded(v, alpha));
}
[[nodiscard]] inline double seen_and_lit_share(Vec3 out, Vec3 in, double alpha) {
  return 1 / (1 + shaded(out, alpha) + shaded(in, alpha));
}

/// Density of `half` among the normals seen from `out`, per solid angle.
[[nodiscard]] inline double visible_density(Vec3 out, Vec3 half, double alpha) {
  return seen_share(out, alpha) * std::max(0.0, dot(out, half)) * ggx(half, alpha) / out.z;
}

/// A normal seen from `out`, which must lie above the surface.
[[nodiscard]] inline Vec3 sample_visible(Vec3 out, double alpha, double u, double v) {
  const Vec3 stretched = unit({alpha * out.x, alpha * out.y, out.z});
  const double flat = stretched.x * stretched.x + stretched.y * stretched.y;
  const Vec3 first =
      flat > 0 ? Vec3{-stretched.y / std::sqrt(flat), stretched.x / std::sqrt(flat), 0} : Vec3{1, 0, 0};
  const Vec3 second = cross(stretched, first);
  const double radius = std::sqrt(u), turn = 2 * std::numbers::pi * v, s = (1 + stretched.z) / 2;
  const double a = radius * std::cos(turn);
  const double b = (1 - s) * std::sqrt(std::max(0.0, 1 - a * a)) + s * radius * std::sin(turn);
  const Vec3 normal = a * first + b * second + std::sqrt(std::max(0.0, 1 - a * a - b * b)) * stretched;
  return unit({alpha * normal.x, alpha * normal.y, std::max(1e-9, normal.z)});
}

[[nodiscard]] constexpr Vec3 mirrored(Vec3 v, Vec3 half) {
  return 2 * dot(v, half) * half - v;
}

}  // namespace evencount::render
