#include "form/sections.hpp"

#include <fmt/format.h>

#include <numbers>

#include "base/text.hpp"

namespace evencount::form {
namespace {

using std::numbers::pi;

std::string shown(Length length) {
  return plain_number(length.mm(), 4) + " mm";
}

bool usable(Length length) {
  return std::isfinite(length.mm()) && length > Length{};
}

Problem unusable(std::string where, Length found, std::string expected) {
  return {ProblemCode::out_of_range, std::move(where), shown(found), std::move(expected)};
}

void add_arc(std::vector<Piece>& pieces, Point centre, double radius_mm, double from, double sweep) {
  if (sweep > 1e-12) pieces.push_back(Arc{centre, radius_mm, from, sweep});  // a smaller turn is rounding
}

void add_segment(std::vector<Piece>& pieces, Point from, Point to) {
  if (distance(from, to) > 1e-12 * (norm(from) + norm(to))) pieces.push_back(Segment{from, to});
}

}  // namespace

Result<ConvexCurve> lens(Length width, Length thickness, Length tip_radius) {
  if (!usable(width)) return unusable("width", width, "above 0");
  if (!usable(thickness) || thickness > width)
    return unusable("thickness", thickness, fmt::format("above 0, at most the width of {}", shown(width)));
  if (!(tip_radius >= Length{} && (2 * tip_radius < thickness)))
    return unusable("tip radius", tip_radius, "0 or more, less than half the thickness");
  const double h = thickness.mm() / 2, tip = tip_radius.mm(), w = width.mm() / 2 - tip;
  // The side's circle touches the tip's circle from outside: w^2 + (radius - h)^2 == (radius - tip)^2.
  const double radius = (w * w + h * h - tip * tip) / (2 * (h - tip));
  const double half = std::atan2(w, radius - h);
  std::vector<Piece> pieces;
  add_arc(pieces, {w, 0}, tip, 0, pi / 2 - half);
  add_arc(pieces, {0, h - radius}, radius, pi / 2 - half, 2 * half);
  // The far tip is cut where the near one is, so that half a turn leads pieces onto pieces.
  add_arc(pieces, {-w, 0}, tip, pi / 2 + half, pi / 2 - half);
  add_arc(pieces, {-w, 0}, tip, pi, pi / 2 - half);
  add_arc(pieces, {0, radius - h}, radius, 3 * pi / 2 - half, 2 * half);
  add_arc(pieces, {w, 0}, tip, 3 * pi / 2 + half, pi / 2 - half);
  return ConvexCurve::from_pieces(std::move(pieces));
}

Result<ConvexCurve> circle(Length diameter) {
  if (!usable(diameter)) return unusable("diameter", diameter, "above 0");
  return ConvexCurve::from_pieces({Arc{{}, diameter.mm() / 2, 0, pi}, Arc{{}, diameter.mm() / 2, pi, pi}});
}

Result<ConvexCurve> ellipse(Length width, Length height) {
  if (!usable(width)) return unusable("width", width, "above 0");
  if (!usable(height)) return unusable("height", height, "above 0");
  if (width == height) return circle(width);
  std::vector<Piece> pieces;
  for (int quarter = 0; quarter < 4; ++quarter)
    pieces.push_back(EllipticArc{{}, width.mm() / 2, height.mm() / 2, 0, quarter * pi / 2, pi / 2, 0});
  return ConvexCurve::from_pieces(std::move(pieces));
}

Result<ConvexCurve> rounded_bar(Length width, Length thickness, Length corner_radius) {
  if (!usable(width)) return unusable("width", width, "above 0");
  if (!usable(thickness)) return unusable("thickness", thickness, "above 0");
  const double r = corner_radius.mm(), w = width.mm() / 2 - r, h = thickness.mm() / 2 - r;
  if (!(r >= 0 && w >= 0 && h >= 0))
    return unusable("corner radius", corner_radius, "0 or more, at most half the smaller side");
  std::vector<Piece> pieces;
  add_segment(pieces, {w + r, 0}, {w + r, h});
  add_arc(pieces, {w, h}, r, 0, pi / 2);
  add_segment(pieces, {w, h + r}, {-w, h + r});
  add_arc(pieces, {-w, h}, r, pi / 2, pi / 2);
  add_segment(pieces, {-w - r, h}, {-w - r, -h});
  add_arc(pieces, {-w, -h}, r, pi, pi / 2);
  add_segment(pieces, {-w, -h - r}, {w, -h - r});
  add_arc(pieces, {w, -h}, r, 3 * pi / 2, pi / 2);
  add_segment(pieces, {w + r, -h}, {w + r, 0});
  return ConvexCurve::from_pieces(std::move(pieces));
}

Result<ConvexCurve> dome(Length width, Length height, Length edge_radius) {
  if (!usable(width)) return unusable("width", width, "above 0");
  if (!usable(height) || 2 * height > width)
    return unusable("height", height, fmt::format("above 0, at most half the width of {}", shown(width)));
  if (!(edge_radius >= Length{} && 2 * edge_radius < height))
    return unusable("edge radius", edge_radius, "0 or more, less than half the height");
  const double edge = edge_radius.mm(), w = width.mm() / 2 - edge, top = height.mm() / 2, h = 2 * top - edge;
  // The front's circle touches the edge's circle from outside: w^2 + (radius - h)^2 == (radius - edge)^2.
  const double radius = (w * w + h * h - edge * edge) / (2 * (h - edge));
  const double half = std::atan2(w, radius - h);
  std::vector<Piece> pieces;
  add_arc(pieces, {0, top - radius}, radius, pi / 2, half);
  add_arc(pieces, {-w, edge - top}, edge, pi / 2 + half, pi - half);
  add_segment(pieces, {-w, -top}, {w, -top});
  add_arc(pieces, {w, edge - top}, edge, 3 * pi / 2, pi - half);
  add_arc(pieces, {0, top - radius}, radius, pi / 2 - half, half);
  return ConvexCurve::from_pieces(std::move(pieces));
}

Result<ConvexCurve> polygon(std::span<const Point> corners) {
  const std::size_t count = corners.size();
  if (count < 3)
    return Problem{ProblemCode::not_convex, "polygon", fmt::format("{} corners", count), "at least 3"};
  std::vector<Piece> pieces;
  for (std::size_t i = 0; i < count; ++i) {
    const Point here = corners[i], next = corners[(i + 1) % count], after = corners[(i + 2) % count];
    const Point side = next - here, following = after - next;
    const double sweep = std::atan2(cross(side, following), dot(side, following));
    if (!(norm(side) > 0) || !(sweep > 0))
      return Problem{ProblemCode::not_convex, fmt::format("corner {} of the polygon", (i + 1) % count + 1),
                     fmt::format("a turn of {:.3g} degrees", sweep * 180 / pi), "a turn counterclockwise"};
    pieces.push_back(Segment{here, next});
    pieces.push_back(Arc{next, 0, std::atan2(side.y_mm, side.x_mm) - pi / 2, sweep});
  }
  return ConvexCurve::from_pieces(std::move(pieces));
}

}  // namespace evencount::form
