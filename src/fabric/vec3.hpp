#pragma once
/// Points and directions in space, in millimetres.

#include <cmath>

namespace evencount::fabric {

struct Vec3 {
  double x = 0, y = 0, z = 0;
  bool operator==(const Vec3&) const = default;
  friend constexpr Vec3 operator+(Vec3 a, Vec3 b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
  friend constexpr Vec3 operator-(Vec3 a, Vec3 b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
  friend constexpr Vec3 operator*(double k, Vec3 a) { return {k * a.x, k * a.y, k * a.z}; }
};

[[nodiscard]] constexpr double dot(Vec3 a, Vec3 b) {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}
[[nodiscard]] constexpr Vec3 cross(Vec3 a, Vec3 b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
[[nodiscard]] inline double norm(Vec3 a) {
  return std::sqrt(dot(a, a));
}
/// The unit vector that way; `a` must not be zero.
[[nodiscard]] inline Vec3 unit(Vec3 a) {
  return (1 / norm(a)) * a;
}
/// What is left of `a` across the unit vector `along`.
[[nodiscard]] constexpr Vec3 across(Vec3 a, Vec3 along) {
  return a - dot(a, along) * along;
}

}  // namespace evencount::fabric
