#include "drawing/step_layout.hpp"

#include <algorithm>
#include <cmath>

namespace evencount::drawing {
namespace {

/// Beads are drawn apart so that the thread between them is seen: along their holes, and a little across. By eye.
constexpr double apart_along_hole = 1.36, apart_across_hole = 1.12;
constexpr double apart_to_go_under = 1.65;  // where the needle goes round a thread between two beads, too
constexpr double square_gap_mm = 1.2;       // between the corners of beads in squares

}  // namespace

double distance(Point a, Point b) {
  return std::hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm);
}

Point direction_of(weave::Travel travel) {
  switch (travel) {
    case weave::Travel::left:
      return {-1, 0};
    case weave::Travel::right:
      return {1, 0};
    case weave::Travel::forth:
      return {0, 1};
    case weave::Travel::back:
      return {0, -1};
  }
  return {};
}

StepLayout::StepLayout(const weave::Lattice& lattice, const bead::Gauge& gauge, const bead::Size& size,
                       double bead_length_mm, const weave::Moment& moment, bool goes_under)
    : lattice_(lattice), rounding_(size.kind == bead::Kind::round ? 0.42 : 0.18) {
  const double scale = bead_length_mm / size.length.mm();
  const bool across = lattice.holes == weave::Holes::across;
  const double apart = goes_under ? apart_to_go_under : apart_along_hole;
  half_length_mm_ = bead_length_mm / 2;
  half_width_mm_ = scale * size.diameter.mm() / 2;
  hole_mm_ = scale * size.hole.mm();
  half_column_mm_ = scale * gauge.column.mm() / 2 * (across ? apart : apart_across_hole);
  half_edge_mm_ = scale * gauge.edge.mm() / 2 * (across ? apart_across_hole : apart);
  gap_mm_ = 2 * (across ? half_column_mm_ : half_edge_mm_) - bead_length_mm;
  if (lattice.holes == weave::Holes::round_squares) {
    half_column_mm_ = half_edge_mm_ = half_length_mm_ + half_width_mm_ + square_gap_mm;
    gap_mm_ = 2 * (half_width_mm_ + square_gap_mm);
  }
  if (moment.at_seam) seam_gap_mm_ = 0.8 * half_edge_mm_;
}

Point StepLayout::middle(weave::Spot spot) const {
  const bool past_seam = spot.along >= 2 * lattice_.edge && seam_gap_mm_ > 0;
  return {spot.across * half_column_mm_, spot.along * half_edge_mm_ + (past_seam ? seam_gap_mm_ : 0)};
}

double StepLayout::bulge_mm(double aside_mm) {
  return std::clamp(0.38 * aside_mm, 1.3, 3.6);
}

Point StepLayout::mouth(weave::Spot spot, weave::Travel out, double lane_mm) const {
  const bool across = weave::axis_of(out) == weave::Axis::across;
  const Point lane = across ? Point{0, lane_mm} : Point{lane_mm, 0};
  return middle(spot) + half_length_mm_ * direction_of(out) + lane;
}

Rectangle StepLayout::barrel(weave::Spot spot, weave::Axis axis) const {
  const double x = axis == weave::Axis::across ? half_length_mm_ : half_width_mm_;
  const double y = axis == weave::Axis::across ? half_width_mm_ : half_length_mm_;
  return {.corner = middle(spot) - Point{x, y},
          .width_mm = 2 * x,
          .height_mm = 2 * y,
          .radius_mm = 2 * rounding_ * std::min(x, y)};
}

std::array<Rectangle, 2> StepLayout::hole(weave::Spot spot, weave::Axis axis) const {
  constexpr double deep_mm = 0.55;
  const bool across = axis == weave::Axis::across;
  const double width = across ? deep_mm : hole_mm_, height = across ? hole_mm_ : deep_mm;
  const auto end = [&](weave::Travel out) {
    const Point centre = mouth(spot, out) - deep_mm / 2 * direction_of(out);
    return Rectangle{.corner = centre - Point{width / 2, height / 2}, .width_mm = width, .height_mm = height};
  };
  return across ? std::array{end(weave::Travel::left), end(weave::Travel::right)}
                : std::array{end(weave::Travel::back), end(weave::Travel::forth)};
}

}  // namespace evencount::drawing
