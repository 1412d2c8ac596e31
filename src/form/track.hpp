#pragma once
/// Stepping round a curve in equal chords. Internal to the room: closure.hpp is the way in.

#include <optional>
#include <vector>

#include "form/convex_curve.hpp"

namespace evencount::form {

/// A place on a track: a piece of the track and how far along it, in the piece's own measure (radians for
/// arcs and elliptic arcs, millimetres for segments), with the point and the unit tangent there.
struct TrackPlace {
  std::size_t piece = 0;
  double local = 0;
  Point at;
  Point tangent;
  /// How far the last step went in `local` on an elliptic arc, and how much farther than the one before: a first guess for
  /// the next.
  double stride = 0;
  double stride_growth = 0;
};

/// How far a walk is meant to lead. On a curve that is its own image after half a turn, a ring of an even number of beads is
/// so too: half of its chords lead half round.
enum class Lap { whole, half };

/// What a walk of n chords tells.
struct Walk {
  bool arrived = false;  ///< false: some chord was too long to find a next point
  double overshoot_mm =
      0;  ///< along the curve, past the start (or the point opposite to it) after the lap; its sign is exact, its size near 0
  double by_chord = 0;  ///< derivative of the end's arc length by the chord
  double by_start = 0;  ///< derivative of the end's arc length by the start's
};

/// A curve prepared for walking: zero-length pieces dropped, arcs cut to at most half a turn.
class Track {
 public:
  explicit Track(const ConvexCurve& curve);

  [[nodiscard]] double perimeter_mm() const { return perimeter_mm_; }

  /// True when the curve is its own mirror image about its beginning (and then about the far side too).
  [[nodiscard]] bool mirrored_about_start() const { return mirrored_; }

  /// True when half a turn about its middle leads the curve, piece by piece, onto itself.
  [[nodiscard]] bool same_after_half_turn() const { return middle_.has_value(); }

  [[nodiscard]] TrackPlace place_at(Position position) const;
  /// The place that far along from the beginning; for elliptic arcs a share of the length counts as that
  /// share of t.
  [[nodiscard]] TrackPlace place_at_mm(double along_mm) const;
  /// The inverse of place_at_mm.
  [[nodiscard]] double along_mm(const TrackPlace& place) const;
  /// d(true arc length) / d(along_mm); 1 but on elliptic arcs.
  [[nodiscard]] double stretch(const TrackPlace& place) const;
  [[nodiscard]] Position position_of(const TrackPlace& place) const;

  /// The first point ahead at exactly the chord's distance. False when there is none within one lap.
  [[nodiscard]] bool step(TrackPlace& place, double chord_mm) const;

  /// n chords from a start. Half a lap only where same_after_half_turn.
  [[nodiscard]] Walk walk(const TrackPlace& start, int n, double chord_mm, Lap lap = Lap::whole) const;

 private:
  struct Part {
    Piece piece;
    int origin = 0;           ///< the curve's piece this is part of
    double origin_first = 0;  ///< the shares of it that this part covers
    double origin_last = 1;
    double extent = 0;  ///< largest `local`
    double length_mm = 0;
    double begins_mm = 0;
    Point begin;
    Point end;
    Point axis;       ///< unit: an arc's first normal, a segment's direction, an elliptic arc's x axis
    Point last_axis;  ///< an arc's last normal
  };

  void find_middle();
  [[nodiscard]] bool step_beyond(TrackPlace& place, double chord_mm) const;  ///< past the piece it is on
  [[nodiscard]] TrackPlace placed(std::size_t piece, double local) const;
  // Each moves `place` to the first point of a piece at the chord's distance from it, or returns false when there is none.
  [[nodiscard]] bool cross_arc(const Part& p, const Arc& arc, double chord_mm, TrackPlace& place) const;
  [[nodiscard]] bool cross_segment(const Part& p, double chord_mm, TrackPlace& place) const;
  [[nodiscard]] bool cross_elliptic(const Part& p, const EllipticArc& arc, double first, double chord_mm,
                                    TrackPlace& place) const;
  [[nodiscard]] bool cross_piece(std::size_t piece, double chord_mm, TrackPlace& place) const;

  std::vector<Part> parts_;
  double perimeter_mm_ = 0;
  bool mirrored_ = false;
  std::optional<Point> middle_;
};

}  // namespace evencount::form
