#include "form/piece.hpp"

#include <numbers>

#include "form/elliptic.hpp"

namespace evencount::form {
namespace {

Placed place_on(const Arc& arc, double share) {
  const Point normal = direction(arc.from + share * arc.sweep);
  return {arc.centre + arc.radius_mm * normal, normal};
}

Point segment_normal(const Segment& segment) {
  const Point along = segment.to - segment.from;
  return (-1 / norm(along)) * quarter_turn(along);
}

Placed place_on(const Segment& segment, double share) {
  return {(1 - share) * segment.from + share * segment.to, segment_normal(segment)};
}

Placed place_on(const EllipticArc& arc, double share) {
  const Point unit = direction(arc.from + share * arc.sweep);
  const Point steep{arc.y_axis_mm * unit.x_mm, arc.x_axis_mm * unit.y_mm};
  const Point normal = (1 / norm(steep)) * steep;
  const Point local = Point{arc.x_axis_mm * unit.x_mm, arc.y_axis_mm * unit.y_mm} + arc.offset_mm * normal;
  const Point axis = direction(arc.tilt);
  const auto turned = [&](Point p) { return p.x_mm * axis + p.y_mm * quarter_turn(axis); };
  return {arc.centre + turned(local), turned(normal)};
}

// The normal's angle at parameter t, continuous in t, measured from the ellipse's own axis.
double normal_angle(const EllipticArc& arc, double t) {
  const double halves = std::round(t / std::numbers::pi);
  const double rest = t - halves * std::numbers::pi;
  return halves * std::numbers::pi +
         std::atan2(arc.x_axis_mm * std::sin(rest), arc.y_axis_mm * std::cos(rest));
}

double turn_of(const Arc& arc) {
  return arc.sweep;
}
double turn_of(const Segment&) {
  return 0;
}
double turn_of(const EllipticArc& arc) {
  return normal_angle(arc, arc.from + arc.sweep) - normal_angle(arc, arc.from);
}

double length_of(const Arc& arc) {
  return arc.radius_mm * arc.sweep;
}
double length_of(const Segment& segment) {
  return distance(segment.from, segment.to);
}
double length_of(const EllipticArc& arc) {
  return elliptic_arc_length(arc.x_axis_mm, arc.y_axis_mm, arc.from, arc.sweep) +
         arc.offset_mm * turn_of(arc);
}

template <typename Curved>
Piece part_of(Curved arc, double first, double last) {
  arc.from += first * arc.sweep;
  arc.sweep *= last - first;
  return arc;
}

Piece part_of(const Segment& segment, double first, double last) {
  return Segment{place_on(segment, first).at, place_on(segment, last).at};
}

Piece moved(Arc arc, double distance_mm) {
  arc.radius_mm += distance_mm;
  return arc;
}

Piece moved(const Segment& segment, double distance_mm) {
  const Point shift = distance_mm * segment_normal(segment);
  return Segment{segment.from + shift, segment.to + shift};
}

Piece moved(EllipticArc arc, double distance_mm) {
  arc.offset_mm += distance_mm;
  return arc;
}

}  // namespace

Placed place(const Piece& piece, double share) {
  return std::visit([&](const auto& p) { return place_on(p, share); }, piece);
}

double turn(const Piece& piece) {
  return std::visit([](const auto& p) { return turn_of(p); }, piece);
}

double length_mm(const Piece& piece) {
  return std::visit([](const auto& p) { return length_of(p); }, piece);
}

Piece part(const Piece& piece, double first, double last) {
  return std::visit([&](const auto& p) { return part_of(p, first, last); }, piece);
}

Piece moved_out(const Piece& piece, double distance_mm) {
  return std::visit([&](const auto& p) { return moved(p, distance_mm); }, piece);
}

}  // namespace evencount::form
