#pragma once
/// Points and directions in the plane of a cross-section, in millimetres.

#include <cmath>

namespace evencount::form {

/// A point, or a vector between points. x runs along the form's width, y along its thickness; the holes of
/// the beads and of the form stand across this plane.
struct Point {
  double x_mm = 0;
  double y_mm = 0;
  bool operator==(const Point&) const = default;
  friend Point operator+(Point a, Point b) { return {a.x_mm + b.x_mm, a.y_mm + b.y_mm}; }
  friend Point operator-(Point a, Point b) { return {a.x_mm - b.x_mm, a.y_mm - b.y_mm}; }
  friend Point operator*(double k, Point a) { return {k * a.x_mm, k * a.y_mm}; }
};

[[nodiscard]] inline double dot(Point a, Point b) {
  return a.x_mm * b.x_mm + a.y_mm * b.y_mm;
}
/// Above zero when b is counterclockwise from a.
[[nodiscard]] inline double cross(Point a, Point b) {
  return a.x_mm * b.y_mm - a.y_mm * b.x_mm;
}
[[nodiscard]] inline double norm(Point a) {
  return std::sqrt(dot(a, a));
}
[[nodiscard]] inline double distance(Point a, Point b) {
  return norm(b - a);
}
/// The unit vector at an angle in radians, counterclockwise from +x.
[[nodiscard]] inline Point direction(double angle) {
  return {std::cos(angle), std::sin(angle)};
}
/// A quarter turn counterclockwise.
[[nodiscard]] inline Point quarter_turn(Point a) {
  return {-a.y_mm, a.x_mm};
}

}  // namespace evencount::form
