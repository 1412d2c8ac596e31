#include "form/convex_curve.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <numbers>

namespace evencount::form {
namespace {

using std::numbers::pi;

// How far apart, as a share of the curve's size and as an angle, two ends may lie and still meet: rounding of
// makers.
constexpr double meeting_tolerance = 1e-9;

bool sound(const Arc& arc) {
  return std::isfinite(norm(arc.centre)) && std::isfinite(arc.radius_mm) && arc.radius_mm >= 0 &&
         arc.sweep > 0 && arc.sweep <= 2 * pi + meeting_tolerance && std::isfinite(arc.from);
}
bool sound(const Segment& segment) {
  const double length = distance(segment.from, segment.to);
  return std::isfinite(length) && length > 0;
}
bool sound(const EllipticArc& arc) {
  return std::isfinite(norm(arc.centre)) && std::isfinite(arc.x_axis_mm) && std::isfinite(arc.y_axis_mm) &&
         arc.x_axis_mm > 0 && arc.y_axis_mm > 0 && std::isfinite(arc.tilt) && std::isfinite(arc.from) &&
         arc.sweep > 0 && arc.sweep <= 2 * pi + meeting_tolerance && std::isfinite(arc.offset_mm) &&
         arc.offset_mm >= 0;
}

Problem not_convex(std::size_t piece, std::string found, std::string expected) {
  return {ProblemCode::not_convex, fmt::format("piece {} of the outline", piece + 1), std::move(found),
          std::move(expected)};
}

Point turned(Point p, Point axis) {
  return p.x_mm * axis + p.y_mm * quarter_turn(axis);
}
Point reflected(Point p) {
  return {p.x_mm, -p.y_mm};
}

Piece rotate(Arc arc, double angle) {
  arc.centre = turned(arc.centre, direction(angle));
  arc.from += angle;
  return arc;
}
Piece rotate(const Segment& segment, double angle) {
  return Segment{turned(segment.from, direction(angle)), turned(segment.to, direction(angle))};
}
Piece rotate(EllipticArc arc, double angle) {
  arc.centre = turned(arc.centre, direction(angle));
  arc.tilt += angle;
  return arc;
}

Piece mirror(Arc arc) {
  arc.centre = reflected(arc.centre);
  arc.from = -(arc.from + arc.sweep);
  return arc;
}
Piece mirror(const Segment& segment) {
  return Segment{reflected(segment.to), reflected(segment.from)};
}
Piece mirror(EllipticArc arc) {
  arc.centre = reflected(arc.centre);
  arc.tilt = -arc.tilt;
  arc.from = -(arc.from + arc.sweep);
  return arc;
}

Piece enlarge(Arc arc, double factor) {
  arc.centre = factor * arc.centre;
  arc.radius_mm *= factor;
  return arc;
}
Piece enlarge(const Segment& segment, double factor) {
  return Segment{factor * segment.from, factor * segment.to};
}
Piece enlarge(EllipticArc arc, double factor) {
  arc.centre = factor * arc.centre;
  arc.x_axis_mm *= factor;
  arc.y_axis_mm *= factor;
  arc.offset_mm *= factor;
  return arc;
}

void widen(Box& box, Point p) {
  box.low = {std::min(box.low.x_mm, p.x_mm), std::min(box.low.y_mm, p.y_mm)};
  box.high = {std::max(box.high.x_mm, p.x_mm), std::max(box.high.y_mm, p.y_mm)};
}

// The shares strictly inside the piece at which its normal points along an axis.
std::vector<double> upright_shares(const Arc& arc) {
  std::vector<double> shares;
  for (double k = std::floor(arc.from / (pi / 2)) + 1; k * (pi / 2) < arc.from + arc.sweep; ++k)
    shares.push_back((k * (pi / 2) - arc.from) / arc.sweep);
  return shares;
}
std::vector<double> upright_shares(const Segment&) {
  return {};
}
std::vector<double> upright_shares(const EllipticArc& arc) {
  std::vector<double> shares;
  for (const Point axis : {Point{1, 0}, Point{0, 1}, Point{-1, 0}, Point{0, -1}}) {
    const Point local = turned(axis, direction(-arc.tilt));
    double t = std::atan2(arc.y_axis_mm * local.y_mm, arc.x_axis_mm * local.x_mm);
    t += 2 * pi * std::ceil((arc.from - t) / (2 * pi));
    if (t < arc.from + arc.sweep) shares.push_back((t - arc.from) / arc.sweep);
  }
  return shares;
}

// A convex arc lies inside the triangle of its chord and its two end tangents, so that triangle's height
// bounds the error.
double triangle_height(const Placed& from, const Placed& to) {
  const Point chord = to.at - from.at;
  const double length = norm(chord);
  if (length == 0) return 0;
  const double first =
      std::abs(std::atan2(cross(quarter_turn(from.normal), chord), dot(quarter_turn(from.normal), chord)));
  const double last =
      std::abs(std::atan2(cross(chord, quarter_turn(to.normal)), dot(chord, quarter_turn(to.normal))));
  if (first + last >= pi / 2) return length + 1;  // too much of a turn for the bound; any height would do
  return length * std::tan(first) * std::tan(last) / std::max(std::tan(first) + std::tan(last), 1e-300);
}

void sample_piece(const Piece& piece, double from, double to, double error_mm, std::vector<Point>& points) {
  const Placed first = place(piece, from), last = place(piece, to);
  constexpr double finest = 1e-6;  // of a piece: below it points can't be told apart on any page
  const bool curved = !std::holds_alternative<Segment>(piece);
  const bool fits = !curved || first.at == last.at || to - from < finest;
  if (!fits && (to - from > 0.5 || triangle_height(first, last) > error_mm)) {
    sample_piece(piece, from, (from + to) / 2, error_mm, points);
    sample_piece(piece, (from + to) / 2, to, error_mm, points);
    return;
  }
  points.push_back(first.at);
}

}  // namespace

Result<ConvexCurve> ConvexCurve::from_pieces(std::vector<Piece> pieces) {
  if (pieces.empty()) return not_convex(0, "no pieces", "at least one");
  double size_mm = 0, whole_turn = 0;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (!std::visit([](const auto& p) { return sound(p); }, pieces[i]))
      return Problem{ProblemCode::out_of_range, fmt::format("piece {} of the outline", i + 1),
                     "a size that is negative, zero or not a number", "finite sizes above zero"};
    size_mm = std::max(size_mm, length_mm(pieces[i]));
    whole_turn += turn(pieces[i]);
  }
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const Placed end = place(pieces[i], 1), begin = place(pieces[(i + 1) % pieces.size()], 0);
    if (!(distance(end.at, begin.at) <= meeting_tolerance * size_mm))
      return not_convex(i, fmt::format("a gap of {:.3g} mm after it", distance(end.at, begin.at)), "no gap");
    if (!(distance(end.normal, begin.normal) <= meeting_tolerance))
      return not_convex(i, "a jump of direction after it", "an arc of radius zero at a corner");
  }
  if (!(std::abs(whole_turn - 2 * pi) <= meeting_tolerance * static_cast<double>(pieces.size())))
    return not_convex(0, fmt::format("{:.4g} turns in all", whole_turn / (2 * pi)),
                      "exactly one turn counterclockwise");
  return ConvexCurve(std::move(pieces));
}

Length ConvexCurve::perimeter() const {
  double sum_mm = 0;
  for (const Piece& piece : pieces_) sum_mm += length_mm(piece);
  return millimetres(sum_mm);
}

Placed ConvexCurve::at(Position position) const {
  assert(position.piece >= 0 && static_cast<std::size_t>(position.piece) < pieces_.size());
  return place(pieces_[static_cast<std::size_t>(position.piece)], position.share);
}

Box ConvexCurve::box() const {
  const Point first = place(pieces_.front(), 0).at;
  Box box{first, first};
  for (const Piece& piece : pieces_) {
    widen(box, place(piece, 1).at);
    for (const double share : std::visit([](const auto& p) { return upright_shares(p); }, piece))
      widen(box, place(piece, share).at);
  }
  return box;
}

ConvexCurve offset(const ConvexCurve& curve, Length outwards) {
  assert(outwards >= Length{});
  std::vector<Piece> pieces;
  for (const Piece& piece : curve.pieces()) pieces.push_back(moved_out(piece, outwards.mm()));
  return ConvexCurve(std::move(pieces));
}

ConvexCurve rotated(const ConvexCurve& curve, double angle) {
  std::vector<Piece> pieces;
  for (const Piece& piece : curve.pieces())
    pieces.push_back(std::visit([&](const auto& p) { return rotate(p, angle); }, piece));
  return ConvexCurve(std::move(pieces));
}

ConvexCurve mirrored(const ConvexCurve& curve) {
  std::vector<Piece> pieces;
  for (const Piece& piece : curve.pieces())
    pieces.push_back(std::visit([](const auto& p) { return mirror(p); }, piece));
  std::reverse(pieces.begin(), pieces.end());
  return ConvexCurve(std::move(pieces));
}

ConvexCurve scaled(const ConvexCurve& curve, double factor) {
  assert(factor > 0);
  std::vector<Piece> pieces;
  for (const Piece& piece : curve.pieces())
    pieces.push_back(std::visit([&](const auto& p) { return enlarge(p, factor); }, piece));
  return ConvexCurve(std::move(pieces));
}

ConvexCurve subdivided(const ConvexCurve& curve, int parts) {
  assert(parts >= 1);
  std::vector<Piece> pieces;
  for (const Piece& piece : curve.pieces())
    for (int k = 0; k < parts; ++k) pieces.push_back(part(piece, 1.0 * k / parts, 1.0 * (k + 1) / parts));
  return ConvexCurve(std::move(pieces));
}

std::vector<Point> sample(const ConvexCurve& curve, Length chord_error) {
  assert(chord_error > Length{});
  std::vector<Point> points;
  for (const Piece& piece : curve.pieces()) {
    const auto already = points.size();
    sample_piece(piece, 0, 1, chord_error.mm(), points);
    if (already > 0 && points.size() > already && points[already] == points[already - 1])
      points.erase(points.begin() + static_cast<std::ptrdiff_t>(already));
  }
  return points;
}

}  // namespace evencount::form
