#pragma once
/// Where the beads of a step diagram lie: private to this room.

#include <array>

#include "bead/bead_size.hpp"
#include "bead/gauge.hpp"
#include "drawing/step_drawing.hpp"

namespace evencount::drawing {

[[nodiscard]] constexpr Point operator+(Point a, Point b) {
  return {a.x_mm + b.x_mm, a.y_mm + b.y_mm};
}
[[nodiscard]] constexpr Point operator-(Point a, Point b) {
  return {a.x_mm - b.x_mm, a.y_mm - b.y_mm};
}
[[nodiscard]] constexpr Point operator*(double k, Point a) {
  return {k * a.x_mm, k * a.y_mm};
}
[[nodiscard]] double distance(Point a, Point b);
/// The way of travel on the sheet, of length 1.
[[nodiscard]] Point direction_of(weave::Travel travel);
/// A quarter turn to the right as one looks along it.
[[nodiscard]] constexpr Point aside_of(Point direction) {
  return {-direction.y_mm, direction.x_mm};
}

/// Sizes on the sheet. The origin is where the unrolled lattice has its own; y goes down.
class StepLayout {
 public:
  StepLayout(const weave::Lattice& lattice, const bead::Gauge& gauge, const bead::Size& size,
             double bead_length_mm, const weave::Moment& moment, bool goes_under);

  /// The middle of a bead.
  [[nodiscard]] Point middle(weave::Spot spot) const;
  /// Half of a drawn bead along and across its hole.
  [[nodiscard]] double half_length_mm() const { return half_length_mm_; }
  [[nodiscard]] double half_width_mm() const { return half_width_mm_; }
  [[nodiscard]] double hole_mm() const { return hole_mm_; }
  /// Between the ends of two beads that follow each other.
  [[nodiscard]] double gap_mm() const { return gap_mm_; }
  /// From one bead to the next beside it.
  [[nodiscard]] double beside_mm(weave::Axis axis) const {
    return 2 * (axis == weave::Axis::across ? half_edge_mm_ : half_column_mm_);
  }
  /// How far a turn round an edge bulges that comes back so far aside.
  [[nodiscard]] static double bulge_mm(double aside_mm);
  /// Where the thread crosses a bead's end when it travels that way, `lane_mm` off the middle of the hole.
  [[nodiscard]] Point mouth(weave::Spot middle, weave::Travel out, double lane_mm = 0) const;
  /// The corner and the size of a bead.
  [[nodiscard]] Rectangle barrel(weave::Spot middle, weave::Axis axis) const;
  /// The two ends of its hole.
  [[nodiscard]] std::array<Rectangle, 2> hole(weave::Spot middle, weave::Axis axis) const;
  [[nodiscard]] weave::Axis axis_of(weave::Cell cell) const { return lattice_.site(cell).axis; }

 private:
  weave::Lattice lattice_;
  double half_column_mm_ = 0, half_edge_mm_ = 0;
  double half_length_mm_ = 0, half_width_mm_ = 0, hole_mm_ = 0, gap_mm_ = 0, seam_gap_mm_ = 0;
  double rounding_ = 0.2;
};

}  // namespace evencount::drawing
