#pragma once
/// The pieces a cross-section is made of.
///
/// Every piece runs counterclockwise, with the solid on its left and the outward normal on its right; angles
/// are in radians. Each kind stays of its own kind when it is moved outwards, which is what makes offsets
/// exact.

#include <variant>

#include "form/point.hpp"

namespace evencount::form {

/// A circular arc. `from` is the angle of its first normal; `sweep` > 0, at most a full turn.
/// A radius of zero is a corner: one point whose normals sweep the corner's turn.
struct Arc {
  Point centre;
  double radius_mm = 0;
  double from = 0;
  double sweep = 0;
  bool operator==(const Arc&) const = default;
};

/// A straight piece.
struct Segment {
  Point from;
  Point to;
  bool operator==(const Segment&) const = default;
};

/// An arc of the ellipse centre + turn(tilt) (x cos t, y sin t), t from `from` over `sweep`, moved outwards
/// by `offset_mm` >= 0 along its normals. Both axes > 0.
struct EllipticArc {
  Point centre;
  double x_axis_mm = 0;
  double y_axis_mm = 0;
  double tilt = 0;
  double from = 0;
  double sweep = 0;
  double offset_mm = 0;
  bool operator==(const EllipticArc&) const = default;
};

using Piece = std::variant<Arc, Segment, EllipticArc>;

/// A point of a curve and its outward unit normal. The curve runs on in the direction `quarter_turn(normal)`.
struct Placed {
  Point at;
  Point normal;
  bool operator==(const Placed&) const = default;
};

/// The point at `share` of a piece, 0 its beginning and 1 its end: a share of the angle for arcs, of the
/// length for segments, of the parameter t for elliptic arcs.
[[nodiscard]] Placed place(const Piece& piece, double share);

/// How far the normal turns along a piece, in radians; 0 for a segment.
[[nodiscard]] double turn(const Piece& piece);

/// The piece's length in millimetres, within 1e-12 relative.
[[nodiscard]] double length_mm(const Piece& piece);

/// The part of a piece between two shares, 0 <= first < last <= 1.
[[nodiscard]] Piece part(const Piece& piece, double first, double last);

/// The piece moved outwards by `distance_mm` >= 0.
[[nodiscard]] Piece moved_out(const Piece& piece, double distance_mm);

}  // namespace evencount::form
