#include <algorithm>
#include <numbers>

#include "fabric/layout.hpp"

namespace evencount::fabric {

namespace {
using std::numbers::pi;
}

Roll::Roll(const Layout& layout) : layout_(layout) {
  const weave::Lattice& lattice = layout.lattice();
  const double round_mm = lattice.turn() * layout.column_mm() / 2,
               rise_mm = lattice.rise * layout.edge_mm() / 2;
  turn_mm_ = std::hypot(round_mm, rise_mm);
  cosine_ = round_mm / turn_mm_;
  sine_ = rise_mm / turn_mm_;
}

double Roll::radius_mm(double chord_mm) const {
  return chord_mm * cosine_ / (2 * std::sin(pi * layout_.column_mm() * cosine_ / turn_mm_));
}

Cylinder Roll::placed(Cylinder shape, FlatPoint at, weave::Axis axis, double radius_mm) const {
  const form::Point normal = form::direction(-pi / 2 - 2 * pi * round(at) / turn_mm_);
  const form::Point onwards = -1 * form::quarter_turn(normal);
  const FlatPoint hole = axis == weave::Axis::across ? FlatPoint{1, 0} : FlatPoint{0, 1};
  shape.middle = {radius_mm * normal.x_mm, radius_mm * normal.y_mm, up(at)};
  shape.axis = {round(hole) * onwards.x_mm, round(hole) * onwards.y_mm, up(hole)};
  return shape;
}

double Roll::easy_chord_mm() const {
  const weave::Lattice& lattice = layout_.lattice();
  double low = layout_.column_mm();
  if (lattice.holes == weave::Holes::round_squares) return low;
  const auto placed_at = [&](int column, double radius) {
    const weave::Site site = lattice.site({column, 0});
    return placed(layout_.main_shape(), layout_.flat(site.middle), site.axis, radius);
  };
  const auto overlap_mm = [&](double chord_mm) {
    const double radius = radius_mm(chord_mm);
    double most = -1;
    // As far as the columns' shifts repeat.
    for (int column = 0; column + 1 < lattice.columns && column <= 2 * lattice.drop; ++column)
      most = std::max(most, contact(placed_at(column, radius), placed_at(column + 1, radius)).overlap_mm);
    return most;
  };
  if (overlap_mm(low) <= 0) return low;
  double high = low + 2 * reach_mm(layout_.main_shape());
  constexpr int halvings = 50;
  for (int i = 0; i < halvings; ++i) {
    const double middle = (low + high) / 2;
    (overlap_mm(middle) > 0 ? low : high) = middle;
  }
  return high;
}

}  // namespace evencount::fabric
