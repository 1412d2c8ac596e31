#include "fabric/obstacle.hpp"

#include <algorithm>
#include <array>
#include <numbers>

namespace evencount::fabric {
namespace {

using form::Arc;
using form::ConvexCurve;
using form::EllipticArc;
using form::Piece;
using form::Placed;
using form::Point;
using form::Segment;

using std::numbers::pi;

/// How far an angle lies beyond `from`, counted counterclockwise from 0 to 2 pi.
double beyond(double angle, double from) {
  const double turns = (angle - from) / (2 * pi);
  return (turns - std::floor(turns)) * 2 * pi;
}

/// The share of an arc of angles nearest to an angle.
double share_of_sweep(double angle, double from, double sweep) {
  const double ahead = beyond(angle, from);
  if (ahead <= sweep) return ahead / sweep;
  return ahead - sweep < 2 * pi - ahead ? 1 : 0;
}

double nearest_share(const Arc& arc, Point p) {
  const Point out = p - arc.centre;
  return share_of_sweep(std::atan2(out.y_mm, out.x_mm), arc.from, arc.sweep);
}

double nearest_share(const Segment& segment, Point p) {
  const Point way = segment.to - segment.from;
  return std::clamp(form::dot(p - segment.from, way) / form::dot(way, way), 0.0, 1.0);
}

/// The parameter of the nearest point of a whole ellipse: in the first quadrant the foot of the normal is the one root of a
/// function that falls all the way, so halving finds it.
double nearest_parameter(double a, double b, Point p) {
  const double x = std::abs(p.x_mm), y = std::abs(p.y_mm);
  double low = 0, high = pi / 2;
  constexpr int halvings = 50;  // of a quarter turn: to the last bit
  for (int i = 0; i < halvings; ++i) {
    const double t = (low + high) / 2;
    const double ahead = (y - b * std::sin(t)) * b * std::cos(t) - (x - a * std::cos(t)) * a * std::sin(t);
    (ahead > 0 ? low : high) = t;
  }
  const double t = (low + high) / 2;
  const double upper = p.x_mm >= 0 ? t : pi - t;
  return p.y_mm >= 0 ? upper : -upper;
}

double nearest_share(const EllipticArc& arc, Point p) {
  const Point out = p - arc.centre, axis = form::direction(arc.tilt);
  const Point local{form::dot(out, axis), form::dot(out, form::quarter_turn(axis))};
  return share_of_sweep(nearest_parameter(arc.x_axis_mm, arc.y_axis_mm, local), arc.from, arc.sweep);
}

double angle_of(Point p) {
  return std::atan2(p.y_mm, p.x_mm);
}

/// A corner from one outward normal to the next.
Arc corner(Point at, double from, double to) {
  return {at, 0, from, beyond(to, from)};
}

}  // namespace

PlaneClearance clearance(const ConvexCurve& curve, Point from) {
  PlaneClearance best{1e300, {}};
  for (const Piece& piece : curve.pieces()) {
    const Placed foot =
        form::place(piece, std::visit([&](const auto& p) { return nearest_share(p, from); }, piece));
    const Point out = from - foot.at;
    const double distance = form::norm(out);
    const bool inside = form::dot(out, foot.normal) < 0;
    constexpr double on_the_curve = 1e-9;  // mm: nearer than that the way off is the normal
    // At a sharp corner pieces are as near as each other; from outside, the one that the point lies in front of tells.
    const double known = std::abs(best.distance_mm);
    if (inside ? distance >= known - on_the_curve
               : distance >= known + (best.distance_mm < 0 ? on_the_curve : 0))
      continue;
    const Point away = distance < on_the_curve ? foot.normal : (inside ? -1 / distance : 1 / distance) * out;
    best = {inside ? -distance : distance, away};
  }
  return best;
}

Obstacle extruded(ConvexCurve section, std::optional<double> half_length_mm) {
  return [section = std::move(section), half_length_mm](Vec3 p) -> Clearance {
    const PlaneClearance aside = clearance(section, {p.x, p.y});
    const Vec3 off{aside.away.x_mm, aside.away.y_mm, 0};
    if (!half_length_mm) return {aside.distance_mm, off};
    const double along = std::abs(p.z) - *half_length_mm;
    const Vec3 on{0, 0, std::copysign(1.0, p.z)};
    if (along <= 0 || aside.distance_mm <= 0)
      return aside.distance_mm >= along ? Clearance{aside.distance_mm, off} : Clearance{along, on};
    const double distance = std::hypot(aside.distance_mm, along);
    return {distance, (aside.distance_mm / distance) * off + (along / distance) * on};
  };
}

Obstacle revolved(ConvexCurve meridian) {
  return [meridian = std::move(meridian)](Vec3 p) -> Clearance {
    const double radius = std::hypot(p.x, p.y);
    const PlaneClearance found = clearance(meridian, {radius, p.z});
    const Vec3 out = radius > 0 ? Vec3{p.x / radius, p.y / radius, 0} : Vec3{1, 0, 0};
    return {found.distance_mm, found.away.x_mm * out + Vec3{0, 0, found.away.y_mm}};
  };
}

Result<Obstacle> obstacle_of(const form::Form& form) {
  auto section = form::section(form);
  if (!section) return section.problem();
  std::optional<double> half_length_mm;
  if (form.length_along_holes) half_length_mm = form.length_along_holes->mm() / 2;
  return extruded(std::move(*section), half_length_mm);
}

Result<Obstacle> obstacle_of(const form::Stone& stone) {
  if (const auto sound = form::check_stone(stone); !sound) return sound.problem();
  if (!form::is_round(stone))
    return Problem{ProblemCode::out_of_range, "stone", form::describe(stone), "a round stone"};
  const double girdle = stone.width.mm() / 2, edge = stone.girdle.mm() / 2, dome = stone.dome.mm();
  const double cap_radius = (girdle * girdle + dome * dome) / (2 * dome);
  const Point cap_centre{0, edge + dome - cap_radius};
  const double rim = angle_of(Point{girdle, edge} - cap_centre);
  const Point right{girdle, -edge}, left{-girdle, -edge};
  std::vector<Piece> pieces;
  if (edge > 0) pieces.push_back(Segment{right, {girdle, edge}});
  if (edge > 0 && rim > 0) pieces.push_back(corner({girdle, edge}, 0, rim));
  pieces.push_back(Arc{cap_centre, cap_radius, rim, pi - 2 * rim});
  if (edge > 0 && rim > 0) pieces.push_back(corner({-girdle, edge}, pi - rim, pi));
  if (edge > 0) pieces.push_back(Segment{{-girdle, edge}, left});
  const double before_back = edge > 0 ? pi : pi - rim;
  if (stone.back == form::BackShape::flat) {
    pieces.push_back(corner(left, before_back, 3 * pi / 2));
    pieces.push_back(Segment{left, right});
    pieces.push_back(corner(right, 3 * pi / 2, edge > 0 ? 2 * pi : 2 * pi + rim));
  } else {
    const Point apex{0, -edge - stone.back_depth.mm()};
    const double facing = angle_of(-1 * form::quarter_turn(right - apex));  // of the cone's right side
    pieces.push_back(corner(left, before_back, pi - facing));
    pieces.push_back(Segment{left, apex});
    pieces.push_back(corner(apex, pi - facing, facing + 2 * pi));
    pieces.push_back(Segment{apex, right});
    pieces.push_back(corner(right, facing, edge > 0 ? 0 : rim));
  }
  auto meridian = ConvexCurve::from_pieces(std::move(pieces));
  if (!meridian) return meridian.problem();
  return revolved(std::move(*meridian));
}

}  // namespace evencount::fabric
