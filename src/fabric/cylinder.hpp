#pragma once
/// A bead as a rigid cylinder, and how far two of them lie inside each other.
///
/// The overlap is the least push along any one direction that parts the two. It is found by trying directions: a direction along
/// which their shadows don't meet parts them, and where all shadows meet, the least overlap of the tried ones is the answer. Tried
/// are both axes, across each axis and across both, the way from axis to axis and from middle to middle; all of them are then
/// turned until they get no better. No direction can show less than the true overlap, so the figure is never too small.
///
/// Properties (tests/fabric/cylinder_test.cpp):
///  (1) where two cylinders have a point in common, overlap_mm is above zero
///  (2) moving one of them by the contact's overlap along its direction parts them
///  (3) exact for parallel cylinders side by side, end to end, and across each other: within 1e-12 mm
///  (4) the same after turning, mirroring and moving both, within 1e-9 mm; with the two exchanged, within 1e-4 mm
///  (5) at most 1 % of the smaller radius above the least of 200,000 directions

#include "fabric/vec3.hpp"

namespace evencount::fabric {

struct Cylinder {
  Vec3 middle;
  Vec3 axis{1, 0, 0};  ///< unit
  double half_length_mm = 0;
  double radius_mm = 0;
  double rim_mm = 0;  ///< the radius to which both rims are rounded, at most half_length_mm and radius_mm
  bool operator==(const Cylinder&) const = default;
};

/// The radius of the ball round a cylinder.
[[nodiscard]] inline double reach_mm(const Cylinder& cylinder) {
  return std::sqrt(cylinder.half_length_mm * cylinder.half_length_mm +
                   cylinder.radius_mm * cylinder.radius_mm);
}

struct Contact {
  double overlap_mm = 0;  ///< below zero: a gap of at least that much lies between them
  Vec3 towards{1, 0, 0};  ///< unit, from the first to the second: the way to part them
};

/// How two cylinders lie to each other. `hint` is a direction worth trying first: that of the contact a moment ago.
[[nodiscard]] Contact contact(const Cylinder& first, const Cylinder& second, Vec3 hint = {});

/// Where they touch, as arms from their middles: what a push along the contact turns about.
struct Arms {
  Vec3 first;
  Vec3 second;
};
[[nodiscard]] Arms contact_arms(const Cylinder& first, const Cylinder& second, Vec3 towards);

}  // namespace evencount::fabric
