#pragma once
/// The cross-sections that forms have. Each is centred on the origin, width along x, and begins on the +x
/// axis, a dome at its top (so that the beginning is a point of mirror symmetry).
///
/// Errors of all: out_of_range (a size that is not finite or not above zero, or a relation named below that
/// fails).

#include <span>

#include "form/convex_curve.hpp"

namespace evencount::form {

/// Two circular arcs that meet at tips. thickness <= width; 0 <= tip_radius < thickness / 2: the tips are
/// rounded with that radius, and the width over the rounded tips stays `width`.
[[nodiscard]] Result<ConvexCurve> lens(Length width, Length thickness, Length tip_radius = {});

[[nodiscard]] Result<ConvexCurve> circle(Length diameter);

[[nodiscard]] Result<ConvexCurve> ellipse(Length width, Length height);

/// A rectangle with rounded corners; 0 <= corner_radius <= half the smaller side. At half the smaller side it
/// is a bar with round ends, at 0 a rectangle.
[[nodiscard]] Result<ConvexCurve> rounded_bar(Length width, Length thickness, Length corner_radius);

/// A segment of a circle, `width` wide along its flat side, which lies below; height <= width / 2;
/// 0 <= edge_radius < height / 2: the two edges are rounded with that radius, and the width over them stays `width`.
[[nodiscard]] Result<ConvexCurve> dome(Length width, Length height, Length edge_radius = {});

/// A convex polygon, counterclockwise, at least three corners.
/// Errors: also not_convex (clockwise, a corner that turns inwards or not at all, repeated corners).
[[nodiscard]] Result<ConvexCurve> polygon(std::span<const Point> corners);

}  // namespace evencount::form
