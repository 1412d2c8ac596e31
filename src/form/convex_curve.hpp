#pragma once
/// A closed convex curve: the outline of a form's cross-section, or that outline moved outwards.
///
/// Properties (tests/form/convex_curve_test.cpp):
///  (1) offset(c, r).perimeter() == c.perimeter() + 2 pi r, within 1e-9 relative (Steiner)
///  (2) offset(offset(c, r), s) has the same points as offset(c, r + s), within 1e-9 mm
///  (3) every point of offset(c, r) lies r outside c along the normal
///  (4) perimeter and closing chords are unchanged by rotated, mirrored and subdivided, and scale with scaled
///  (5) sample(c, e): every point lies on c, and no part of c is farther than e from the polyline

#include <span>
#include <vector>

#include "base/units.hpp"
#include "form/piece.hpp"

namespace evencount::form {

/// A place on a curve: the piece's number, and the share (0 to 1) of it that lies behind the place.
struct Position {
  int piece = 0;
  double share = 0;
  bool operator==(const Position&) const = default;
};

struct Box {
  Point low;
  Point high;
  bool operator==(const Box&) const = default;
};

class ConvexCurve {
 public:
  /// A curve from its pieces, counterclockwise, each beginning where the one before it ends and with the same
  /// normal: a corner is an arc of radius zero, never a jump of the normal. Errors: not_convex (a gap or a
  /// jump of the normal between pieces, an inward turn, not exactly one turn in all), out_of_range (a radius,
  /// axis or size that is negative or not finite).
  [[nodiscard]] static Result<ConvexCurve> from_pieces(std::vector<Piece> pieces);

  [[nodiscard]] std::span<const Piece> pieces() const { return pieces_; }

  /// Within 1e-12 relative.
  [[nodiscard]] Length perimeter() const;

  /// The point and outward normal there. The position's piece must exist.
  [[nodiscard]] Placed at(Position position) const;

  /// The smallest upright box round the curve.
  [[nodiscard]] Box box() const;

  bool operator==(const ConvexCurve&) const = default;

 private:
  explicit ConvexCurve(std::vector<Piece> pieces) : pieces_(std::move(pieces)) {}
  friend ConvexCurve offset(const ConvexCurve&, Length);
  friend ConvexCurve rotated(const ConvexCurve&, double);
  friend ConvexCurve mirrored(const ConvexCurve&);
  friend ConvexCurve scaled(const ConvexCurve&, double);
  friend ConvexCurve subdivided(const ConvexCurve&, int);
  std::vector<Piece> pieces_;
};

/// The curve moved outwards by a distance, which must not be negative. Exact.
[[nodiscard]] ConvexCurve offset(const ConvexCurve& curve, Length outwards);

/// Turned about the origin, counterclockwise, by an angle in radians.
[[nodiscard]] ConvexCurve rotated(const ConvexCurve& curve, double angle);
/// Mirrored in the x axis; the pieces come in the opposite order, so that they still run counterclockwise.
[[nodiscard]] ConvexCurve mirrored(const ConvexCurve& curve);
/// Enlarged about the origin; factor > 0.
[[nodiscard]] ConvexCurve scaled(const ConvexCurve& curve, double factor);
/// The same points, every piece cut into `parts` >= 1 equal shares.
[[nodiscard]] ConvexCurve subdivided(const ConvexCurve& curve, int parts);

/// Points along the curve for drawing it, the first not repeated at the end. `chord_error` > 0 bounds the
/// distance between the curve and the polyline.
[[nodiscard]] std::vector<Point> sample(const ConvexCurve& curve, Length chord_error);

}  // namespace evencount::form
