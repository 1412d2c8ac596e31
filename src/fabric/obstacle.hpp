#pragma once
/// What beads can't enter: a form or a stone, by the distance from it.

#include <functional>

#include "fabric/vec3.hpp"
#include "form/bezel_stone.hpp"
#include "form/form.hpp"

namespace evencount::fabric {

/// How far a point is from a solid.
struct Clearance {
  double distance_mm = 0;  ///< below zero inside: how deep
  Vec3 away;               ///< unit: the shortest way off
};

/// Distance from a solid, anywhere in space.
using Obstacle = std::function<Clearance(Vec3)>;

/// The distance from a convex curve in its plane, below zero inside, and the way off.
///
/// Properties (tests/fabric/obstacle_test.cpp): (1) within 1e-9 mm of the least distance to sampled points, their spacing
/// allowed for; (2) stepping by the distance against the way off lands on the curve.
struct PlaneClearance {
  double distance_mm = 0;
  form::Point away;
};
[[nodiscard]] PlaneClearance clearance(const form::ConvexCurve& curve, form::Point from);

/// A section, `half_length_mm` long to both sides of z = 0; without a length, endless.
[[nodiscard]] Obstacle extruded(form::ConvexCurve section, std::optional<double> half_length_mm);

/// A body of revolution about z: its outline in the plane of the axis, which is y there and the mirror line.
[[nodiscard]] Obstacle revolved(form::ConvexCurve meridian);

/// The form, its holes along z, as settle_closed and settle_round lay beads round it. Errors: those of form::section.
[[nodiscard]] Result<Obstacle> obstacle_of(const form::Form& form);

/// A round stone, its front towards +z, z = 0 at the middle of its girdle: spherical cap, upright edge, cone or flat face.
/// Errors: those of form::check_stone; out_of_range (an oval stone).
[[nodiscard]] Result<Obstacle> obstacle_of(const form::Stone& stone);

}  // namespace evencount::fabric
