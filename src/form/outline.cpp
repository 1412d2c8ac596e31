#include "form/outline.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "base/text.hpp"
#include "form/form_kinds.hpp"

namespace evencount::form {
namespace {

using Points = std::vector<Point>;

Problem out_of_range(std::string found, std::string expected) {
  return {ProblemCode::out_of_range, "outline", std::move(found), std::move(expected)};
}

std::string shown_mm(double mm) {
  return plain_number(mm, 2) + " mm";
}

double distance_to_edge_mm(Point at, Point from, Point to) {
  const Point along = to - from;
  const double share = std::clamp(dot(at - from, along) / dot(along, along), 0.0, 1.0);
  return distance(at, from + share * along);
}

double distance_to_loop_mm(Point at, const Points& loop) {
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < loop.size(); ++i)
    least = std::min(least, distance_to_edge_mm(at, loop[i], loop[(i + 1) % loop.size()]));
  return least;
}

// So many points along a closed polygon, evenly spread, the first at its first corner.
Points evenly_spread(const Points& corners, int count) {
  double round_mm = 0;
  for (std::size_t i = 0; i < corners.size(); ++i)
    round_mm += distance(corners[i], corners[(i + 1) % corners.size()]);
  Points spread;
  double behind_mm = 0;
  std::size_t side = 0;
  for (int k = 0; k < count; ++k) {
    const double wanted_mm = round_mm * k / count;
    const auto length_mm = [&] { return distance(corners[side], corners[(side + 1) % corners.size()]); };
    while (side + 1 < corners.size() && behind_mm + length_mm() < wanted_mm) behind_mm += length_mm(), ++side;
    const double share = std::clamp((wanted_mm - behind_mm) / length_mm(), 0.0, 1.0);
    spread.push_back((1 - share) * corners[side] + share * corners[(side + 1) % corners.size()]);
  }
  return spread;
}

// Points of the closed uniform cubic B-spline of evenly spread points of a hull.
Points smoothed(const Points& hull) {
  constexpr int steps = 2;  // a spacing: keeps the polygon within a tenth of a spacing of the spline
  const Points control = evenly_spread(hull, smoothing_points);
  Points smooth;
  for (std::size_t i = 0; i < control.size(); ++i) {
    const auto at = [&](std::size_t k) { return control[(i + k) % control.size()]; };
    for (int k = 0; k < steps; ++k) {
      const double t = 1.0 * k / steps, u = 1 - t;
      smooth.push_back((u * u * u / 6) * at(0) + ((3 * t * t * t - 6 * t * t + 4) / 6) * at(1) +
                       ((-3 * t * t * t + 3 * t * t + 3 * t + 1) / 6) * at(2) + (t * t * t / 6) * at(3));
    }
  }
  return convex_hull(std::move(smooth));
}

Box box_of(const Points& points) {
  Box box{points.front(), points.front()};
  for (const Point p : points) {
    box.low = {std::min(box.low.x_mm, p.x_mm), std::min(box.low.y_mm, p.y_mm)};
    box.high = {std::max(box.high.x_mm, p.x_mm), std::max(box.high.y_mm, p.y_mm)};
  }
  return box;
}

// The smoothed corners about the middle of their box; empty when the points enclose nothing.
Points smooth_corners(const Points& points) {
  const Points hull = convex_hull(points);
  if (hull.size() < 3) return {};
  Points corners = smoothed(hull);
  if (corners.size() < 3) return {};
  const Box box = box_of(corners);
  const Point middle = 0.5 * (box.low + box.high);
  for (Point& p : corners) p = p - middle;
  return corners;
}

// A polygon as a curve that begins where it crosses the +x axis.
Result<ConvexCurve> curve_from_x_axis(const Points& corners) {
  const std::size_t count = corners.size();
  std::size_t first = 0;
  while (first < count && !(corners[first].y_mm <= 0 && corners[(first + 1) % count].y_mm > 0)) ++first;
  const Point low = corners[first % count], high = corners[(first + 1) % count];
  const double share = -low.y_mm / (high.y_mm - low.y_mm);
  Point begin{low.x_mm + share * (high.x_mm - low.x_mm), 0};
  const double at_corner = 1e-6 * norm(begin);  // a side cut shorter than this would have no sure direction
  if (distance(begin, low) < at_corner) begin = low;
  if (distance(begin, high) < at_corner) begin = high, ++first;
  std::vector<Piece> pieces;
  Point from = begin;
  for (std::size_t k = 1; k <= count; ++k) {
    const Point before = corners[(first + k - 1) % count], here = corners[(first + k) % count],
                next = corners[(first + k + 1) % count];
    pieces.push_back(Segment{from, here});
    const Point side = here - before, following = next - here;
    pieces.push_back(Arc{here, 0, std::atan2(side.y_mm, side.x_mm) - std::numbers::pi / 2,
                         std::atan2(cross(side, following), dot(side, following))});
    from = here;
  }
  if (distance(from, begin) > 0) pieces.push_back(Segment{from, begin});
  return ConvexCurve::from_pieces(std::move(pieces));
}

Result<Done> check_name(const std::string& name) {
  constexpr std::size_t longest = 60;
  const auto plain = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '_';
  };
  if (!name.empty() && name.size() <= longest && std::all_of(name.begin(), name.end(), plain)) return Done{};
  return Problem{ProblemCode::bad_text, "name of the outline", quote(name),
                 "1 to 60 letters, digits, '-' or '_'"};
}

Result<Done> check_points(std::span<const Point> points) {
  constexpr std::size_t fewest = 3;
  if (points.size() < fewest || points.size() > most_outline_points)
    return out_of_range(fmt::format("{} points", points.size()),
                        fmt::format("from {} to {}", fewest, most_outline_points));
  const double farthest_mm = 1e3 * largest_size.mm();  // from the origin of the measurement; NaN fails too
  for (std::size_t i = 0; i < points.size(); ++i)
    if (!(std::abs(points[i].x_mm) <= farthest_mm && std::abs(points[i].y_mm) <= farthest_mm))
      return out_of_range(fmt::format("point {} at ({}, {})", i + 1, points[i].x_mm, points[i].y_mm),
                          "coordinates in millimetres");
  return Done{};
}

struct Dent {
  std::size_t point = 0;
  double depth_mm = 0;
};

Dent deepest_between(std::span<const Point> points, const Points& hull) {
  Dent deepest;
  for (std::size_t i = 0; i < points.size(); ++i)
    if (const double depth = distance_to_loop_mm(points[i], hull); depth > deepest.depth_mm)
      deepest = {i, depth};
  return deepest;
}

}  // namespace

Points convex_hull(Points points) {
  constexpr double by_rounding = 1e-10;  // of the sides: a turn this small is none
  std::sort(points.begin(), points.end(),
            [](Point a, Point b) { return a.x_mm != b.x_mm ? a.x_mm < b.x_mm : a.y_mm < b.y_mm; });
  points.erase(std::unique(points.begin(), points.end()), points.end());
  if (points.size() < 3) return points;
  Points hull;
  const auto add = [&](Point p, std::size_t least) {
    while (hull.size() > least) {
      const Point side = hull.back() - hull[hull.size() - 2], next = p - hull.back();
      if (cross(side, next) > by_rounding * norm(side) * norm(next)) break;
      hull.pop_back();
    }
    hull.push_back(p);
  };
  for (const Point p : points) add(p, 1);
  const std::size_t below = hull.size();
  for (auto p = points.rbegin() + 1; p != points.rend(); ++p) add(*p, below);
  hull.pop_back();
  return hull;
}

Result<ConvexCurve> section_of(const Outline& outline) {
  if (const auto checked = check_points(outline.points); !checked) return checked.problem();
  const Points corners = smooth_corners(outline.points);
  if (corners.empty()) return out_of_range("points in a line", "points round a form");
  return curve_from_x_axis(corners);
}

Result<Form> form_from_outline(std::string name, std::span<const Point> points_mm,
                               std::optional<Length> length_along_holes, Dents dents) {
  if (const auto checked = check_name(name); !checked) return checked.problem();
  if (const auto checked = check_points(points_mm); !checked) return checked.problem();
  const Points points(points_mm.begin(), points_mm.end());
  const Points hull = convex_hull(points);
  const Points smooth = hull.size() < 3 ? Points{} : smoothed(hull);
  if (smooth.size() < 3) return out_of_range("points in a line", "points round a form");
  const Box around = box_of(hull), box = box_of(smooth);
  const Dent dent = deepest_between(points, hull);
  const Point extent = around.high - around.low;
  const double allowed_mm =
      std::max(deepest_dent.mm(), deepest_dent_share * std::max(extent.x_mm, extent.y_mm));
  if (dents == Dents::refuse && dent.depth_mm > allowed_mm) {
    const Point at = points[dent.point];
    return Problem{ProblemCode::not_convex, fmt::format("outline at point {}", dent.point + 1),
                   fmt::format("a dent of {} at ({}, {}), which beads would bridge", shown_mm(dent.depth_mm),
                               plain_number(at.x_mm), plain_number(at.y_mm)),
                   fmt::format("dents of at most {}", shown_mm(allowed_mm))};
  }
  double error_mm = 0;
  for (const Point corner : hull) error_mm = std::max(error_mm, distance_to_loop_mm(corner, smooth));
  Form form{FormKind::outline, millimetres(box.high.x_mm - box.low.x_mm),
            millimetres(box.high.y_mm - box.low.y_mm)};
  if (length_along_holes) form.length_along_holes = kept(*length_along_holes);
  form.outline = Outline{std::move(name), points, millimetres(dent.depth_mm), millimetres(error_mm)};
  if (const auto checked = check(form); !checked) return checked.problem();
  return form;
}

}  // namespace evencount::form
