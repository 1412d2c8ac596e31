#include "form/bezel_rounds.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace evencount::form {
namespace {

using std::numbers::pi;
constexpr double nowhere = -std::numeric_limits<double>::infinity();

// From memory: a round leans at most this much further in than the round under it, so that the second one drawn in lies flat.
constexpr double largest_fold = pi / 4;

// Half the circle's chord squared, never below zero for rounding.
double side_of(double hypotenuse, double other) {
  return std::sqrt(std::max(0.0, hypotenuse * hypotenuse - other * other));
}

// A spherical cap on a base of half width b: heights above the base, x from the axis.
double above_dome_mm(double x, double b, double dome, double half_bead) {
  const double sphere = (b * b + dome * dome) / (2 * dome);
  if (x * sphere > b * (sphere + half_bead)) return side_of(half_bead, x - b);  // touches the edge alone
  return dome - sphere + side_of(sphere + half_bead, x);
}

// A cone, or at depth 0 a flat face.
double above_cone_mm(double x, double b, double depth, double half_bead) {
  const double slant = std::hypot(b, depth);
  const double out = half_bead * depth / slant, up = half_bead * b / slant;
  if (x > b + out) return side_of(half_bead, x - b);
  if (x < out) return depth + side_of(half_bead, x);
  return depth * (1 - (x - out) / b) + up;
}

struct Step {
  double length_mm;
  LaidRound from;
  [[nodiscard]] LaidRound to(double lean) const {
    return {from.radius_mm - length_mm * std::sin(lean), from.height_mm + length_mm * std::cos(lean), 0,
            lean};
  }
};

// The lean that brings a round to its natural radius, as far as the fabric folds inwards. Beads that touch can't be closed any
// further, so the way back to upright has no limit.
double free_lean(const Step& step, double wanted_mm) {
  const double inwards = (step.from.radius_mm - wanted_mm) / step.length_mm;
  return std::min({std::asin(std::clamp(inwards, -1.0, 1.0)), step.from.lean + largest_fold, pi / 2});
}

template <typename Clears>
std::vector<LaidRound> lay(const Meridian& stone, const RoundBeads& wall, const LaidRound& start,
                           std::span<const RoundBeads> rounds, const Clears& clears) {
  std::vector<LaidRound> laid;
  RoundBeads under = wall;
  LaidRound from = start;
  for (const RoundBeads& round : rounds) {
    const Step step{(under.edge_mm + round.edge_mm) / 4, from};
    const double natural = natural_radius_mm(under, round);
    double lean = free_lean(step, std::max(natural, stone.smallest_mm()));
    if (!clears(step.to(lean), round)) {
      double out = -pi / 2, in = lean;
      constexpr int halvings = 60;  // down to rounding
      for (int i = 0; i < halvings; ++i) (clears(step.to((out + in) / 2), round) ? out : in) = (out + in) / 2;
      lean = out;
    }
    from = step.to(lean);
    from.natural_mm = natural;
    laid.push_back(from);
    under = round;
  }
  return laid;
}

}  // namespace

Meridian::Meridian(const Stone& stone, double outline_mm)
    : girdle_mm_(outline_mm / (2 * pi)),
      half_width_mm_(std::min(stone.width, stone.height).mm() / 2),
      half_edge_mm_(stone.girdle.mm() / 2),
      dome_mm_(stone.dome.mm()),
      back_mm_(stone.back_depth.mm()) {
  const double longer = std::max(stone.width, stone.height).mm() / 2;
  // An ellipse's ends have the radius b^2 / a.
  smallest_mm_ = is_round(stone) ? 0 : girdle_mm_ - half_width_mm_ * half_width_mm_ / longer;
}

double Meridian::clear_height_mm(StoneSide side, double radius_mm, double half_bead_mm) const {
  const double x = std::max(0.0, radius_mm - girdle_mm_ + half_width_mm_);
  // Beads that rest against the girdle from outside touch it only within rounding.
  constexpr double rounding = 1e-12;
  if (x >= (half_width_mm_ + half_bead_mm) * (1 - rounding)) return nowhere;
  const double above = side == StoneSide::front ? above_dome_mm(x, half_width_mm_, dome_mm_, half_bead_mm)
                                                : above_cone_mm(x, half_width_mm_, back_mm_, half_bead_mm);
  return half_edge_mm_ + above;
}

double natural_radius_mm(const RoundBeads& under, const RoundBeads& round) {
  const int beads = under.beads + round.beads;
  const double way = under.beads * under.column_mm + round.beads * round.column_mm;
  return way / beads / (2 * std::sin(pi / beads));
}

std::vector<LaidRound> lay_free(const Meridian& stone, const RoundBeads& wall, double wall_mm,
                                std::span<const RoundBeads> rounds) {
  return lay(stone, wall, {wall_mm, 0, wall_mm, 0}, rounds,
             [](const LaidRound&, const RoundBeads&) { return true; });
}

std::vector<LaidRound> lay_over(const Meridian& stone, StoneSide side, const RoundBeads& wall, double wall_mm,
                                double height_mm, std::span<const RoundBeads> rounds) {
  return lay(stone, wall, {wall_mm, height_mm, wall_mm, 0}, rounds,
             [&](const LaidRound& laid, const RoundBeads& round) {
               const double rounding = 1e-12 * stone.girdle_mm();
               return laid.height_mm + rounding >=
                      stone.clear_height_mm(side, laid.radius_mm, round.half_bead_mm);
             });
}

double wall_needed_mm(const Meridian& stone, StoneSide side, std::span<const LaidRound> laid,
                      std::span<const RoundBeads> rounds) {
  double needed = nowhere;
  for (std::size_t i = 0; i < laid.size(); ++i)
    needed = std::max(
        needed, stone.clear_height_mm(side, laid[i].radius_mm, rounds[i].half_bead_mm) - laid[i].height_mm);
  return std::isfinite(needed) ? needed : stone.half_edge_mm();
}

}  // namespace evencount::form
