#pragma once
/// A slow, obvious walk round a section: no pieces, no derivatives, no tangents; points by bisection, chords by
/// bisection. It shares no code with src/form.

#include <cmath>
#include <functional>
#include <numbers>

namespace evencount::oracle {

struct Dot {
  double x;
  double y;
};

/// A closed curve as a function of u in [0, 2 pi), counterclockwise, with period 2 pi.
using Loop = std::function<Dot(double)>;

/// The edge of a shape seen from its middle: the point in direction u where the distance to the shape is `out`.
inline Loop by_distance(std::function<double(Dot)> distance_to, double out, double reach) {
  return [=](double u) {
    double inside = 0, outside = reach;
    for (int i = 0; i < 80; ++i) {
      const double r = (inside + outside) / 2;
      (distance_to({r * std::cos(u), r * std::sin(u)}) < out ? inside : outside) = r;
    }
    return Dot{inside * std::cos(u), inside * std::sin(u)};
  };
}

/// The distance from a point to the lens in which two discs overlap; 0 inside.
inline double distance_to_lens(Dot p, double width, double thickness) {
  const double w = width / 2, h = thickness / 2, radius = (w * w + h * h) / (2 * h), down = radius - h;
  const double x = std::abs(p.x), y = std::abs(p.y);  // the lens is symmetric both ways
  if (std::hypot(x, y + down) <= radius) return 0;
  // The nearest point of the upper arc lies towards the arc's centre (0, -down), unless that passes the tip.
  if (x * down <= w * (y + down)) return std::hypot(x, y + down) - radius;
  return std::hypot(x - w, y);
}

/// The distance from a point to the segment from (-half, 0) to (half, 0).
inline double distance_to_stroke(Dot p, double half) {
  return std::hypot(std::max(std::abs(p.x) - half, 0.0), p.y);
}

/// An ellipse moved outwards, by its own formula.
inline Loop ellipse_moved_out(double width, double height, double out) {
  return [=](double u) {
    const double a = width / 2, b = height / 2, g = std::hypot(b * std::cos(u), a * std::sin(u));
    return Dot{(a + out * b / g) * std::cos(u), (b + out * a / g) * std::sin(u)};
  };
}

/// The chord of the ring of n beads that begins at u = start.
inline double closing_chord(const Loop& loop, int n, double start) {
  const double lap = 2 * std::numbers::pi;
  const auto apart = [&](Dot a, double u) { return std::hypot(loop(u).x - a.x, loop(u).y - a.y); };
  const auto lands_past = [&](double chord) {
    double u = start;
    for (int i = 0; i < n; ++i) {
      const Dot here = loop(u);
      double near = u, far = u + lap / 720;
      while (apart(here, far) < chord) {
        near = far;
        far += lap / 720;
        if (far > u + lap) return true;
      }
      for (int k = 0; k < 50; ++k) (apart(here, (near + far) / 2) < chord ? near : far) = (near + far) / 2;
      u = far;
      if (u > start + lap) return true;
    }
    return false;
  };
  double shorter = 0,
         longer = 4 * apart(loop(start), start + lap / 2) / n + 4 * apart(loop(start), start + lap / 4) / n;
  for (int i = 0; i < 45; ++i) {
    const double chord = (shorter + longer) / 2;
    (lands_past(chord) ? longer : shorter) = chord;
  }
  return longer;
}

}  // namespace evencount::oracle
