#include "drawing/symbols.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <bitset>
#include <cmath>

namespace evencount::drawing {
namespace {

constexpr int dots = 24;
using Dots = std::bitset<dots * dots>;

double from_segment(Point p, Point a, Point b) {
  const double dx = b.x_mm - a.x_mm, dy = b.y_mm - a.y_mm, square = dx * dx + dy * dy;
  const double t = square == 0 ? 0 : std::clamp(((p.x_mm - a.x_mm) * dx + (p.y_mm - a.y_mm) * dy) / square, 0.0, 1.0);
  return std::hypot(p.x_mm - a.x_mm - t * dx, p.y_mm - a.y_mm - t * dy);
}

bool inside(Point p, const std::vector<Point>& corners) {
  bool in = false;
  for (std::size_t i = 0, j = corners.size() - 1; i < corners.size(); j = i++) {
    const Point &a = corners[i], &b = corners[j];
    if ((a.y_mm > p.y_mm) != (b.y_mm > p.y_mm) &&
        p.x_mm < (b.x_mm - a.x_mm) * (p.y_mm - a.y_mm) / (b.y_mm - a.y_mm) + a.x_mm)
      in = !in;
  }
  return in;
}

bool inks(const Mark& mark, Point p) {
  if (const auto* circle = std::get_if<Circle>(&mark)) {
    const double from = std::hypot(p.x_mm - circle->centre.x_mm, p.y_mm - circle->centre.y_mm);
    return circle->fill ? from <= circle->radius_mm
                        : std::abs(from - circle->radius_mm) <= circle->stroke->width_mm / 2;
  }
  const auto& path = std::get<Path>(mark);
  if (path.fill) return inside(p, path.points);
  for (std::size_t i = 0; i + 1 < path.points.size() + (path.closed ? 1 : 0); ++i)
    if (from_segment(p, path.points[i], path.points[(i + 1) % path.points.size()]) <= path.stroke->width_mm / 2) return true;
  return false;
}

Dots printed(int symbol, double shift) {
  Dots result;
  const auto marks = symbol_marks(symbol, {0, 0}, 2);
  for (int y = 0; y < dots; ++y)
    for (int x = 0; x < dots; ++x) {
      const Point p{(2.0 * x + 1 + shift) / dots - 1, (2.0 * y + 1 + shift) / dots - 1};
      for (const Mark& mark : marks)
        if (inks(mark, p)) result.set(static_cast<std::size_t>(y * dots + x));
    }
  return result;
}

TEST(Symbols, AnyTwoCanBeToldApart) {
  for (const double shift : {-0.4, 0.0, 0.4})
    for (int a = 0; a < symbol_count; ++a)
      for (int b = a + 1; b < symbol_count; ++b) {
        const auto differ = (printed(a, shift) ^ printed(b, shift)).count();
        EXPECT_GE(static_cast<double>(differ), 0.08 * dots * dots) << a << " and " << b;
      }
}

TEST(Symbols, StayInTheirSquare) {
  for (int symbol = 0; symbol < symbol_count; ++symbol) {
    const Drawing drawing{millimetres(4), millimetres(4), symbol_marks(symbol, {2, 2}, 3)};
    const Bounds box = bounds_of(drawing);
    EXPECT_GE(std::min(box.left_mm, box.top_mm), 0.4999) << symbol;
    EXPECT_LE(std::max(box.right_mm, box.bottom_mm), 3.5001) << symbol;
  }
}

}  // namespace
}  // namespace evencount::drawing
