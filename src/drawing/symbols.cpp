#include "drawing/symbols.hpp"

#include <array>
#include <cassert>
#include <initializer_list>

namespace evencount::drawing {
namespace {

/// Puts marks into a square from (-1, -1) to (1, 1), y down.
class Pen {
 public:
  Pen(Point centre, double side_mm, colour::Rgb ink) : centre_(centre), half_mm_(side_mm / 2), ink_(ink) {}

  void dot(double radius, double x = 0, double y = 0) {
    marks_.push_back(Circle{.centre = at(x, y), .radius_mm = radius * half_mm_, .fill = ink_});
  }
  void ring(double radius) {
    marks_.push_back(Circle{.centre = centre_, .radius_mm = radius * half_mm_, .stroke = stroke()});
  }
  void shape(std::initializer_list<Point> corners) { marks_.push_back(path(corners, true, true)); }
  void outline(std::initializer_list<Point> corners) { marks_.push_back(path(corners, true, false)); }
  void line(std::initializer_list<Point> points) { marks_.push_back(path(points, false, false)); }
  std::vector<Mark> marks() && { return std::move(marks_); }

 private:
  static constexpr double line_width = 0.28;  // of half the side
  [[nodiscard]] Point at(double x, double y) const { return {centre_.x_mm + x * half_mm_, centre_.y_mm + y * half_mm_}; }
  [[nodiscard]] Stroke stroke() const { return {ink_, line_width * half_mm_}; }
  [[nodiscard]] Path path(std::initializer_list<Point> points, bool closed, bool filled) const {
    Path path{.closed = closed};
    for (const Point& point : points) path.points.push_back(at(point.x_mm, point.y_mm));
    if (filled)
      path.fill = ink_;
    else
      path.stroke = stroke();
    return path;
  }

  Point centre_;
  double half_mm_;
  colour::Rgb ink_;
  std::vector<Mark> marks_;
};

using Draw = void (*)(Pen& pen);

constexpr double far = 0.8, end = 0.85;  // where lines end, so that their width stays within the square

/// The plainest first: the ground of most bands is the legend's first bead, and most of the chart.
constexpr std::array<Draw, symbol_count> symbols{{
    [](Pen& p) { p.dot(0.3); },
    [](Pen& p) { p.dot(0.95); },
    [](Pen& p) { p.line({{-far, -far}, {far, far}}), p.line({{-far, far}, {far, -far}}); },
    [](Pen& p) { p.ring(far); },
    [](Pen& p) { p.shape({{0, -0.95}, {0.95, 0.8}, {-0.95, 0.8}}); },
    [](Pen& p) { p.line({{-end, 0}, {end, 0}}); },
    [](Pen& p) { p.shape({{-0.9, -0.9}, {0.9, -0.9}, {0.9, 0.9}, {-0.9, 0.9}}); },
    [](Pen& p) { p.line({{0, -end}, {0, end}}), p.line({{-end, 0}, {end, 0}}); },
    [](Pen& p) { p.outline({{-far, -far}, {far, -far}, {far, far}, {-far, far}}); },
    [](Pen& p) { p.shape({{0, -1}, {0.8, 0}, {0, 1}, {-0.8, 0}}); },
    [](Pen& p) { p.line({{-far, far}, {far, -far}}); },
    [](Pen& p) { p.line({{0, -end}, {0, end}}); },
    [](Pen& p) { p.ring(far), p.dot(0.34); },
    [](Pen& p) { p.shape({{-0.95, -0.8}, {0.95, -0.8}, {0, 0.95}}); },
    [](Pen& p) { p.line({{-far, -far}, {far, far}}); },
    [](Pen& p) { p.line({{-end, -0.5}, {end, -0.5}}), p.line({{-end, 0.5}, {end, 0.5}}); },
    [](Pen& p) { p.shape({{-0.9, -0.9}, {0, -0.9}, {0, 0.9}, {-0.9, 0.9}}); },
    [](Pen& p) { p.line({{-0.5, -end}, {-0.5, end}}), p.line({{0.5, -end}, {0.5, end}}); },
    [](Pen& p) { p.outline({{0, -0.72}, {0.72, 0.7}, {-0.72, 0.7}}); },
    [](Pen& p) { p.shape({{-0.9, 0}, {0.9, 0}, {0.9, 0.9}, {-0.9, 0.9}}); },
    [](Pen& p) { p.line({{-far, far}, {-far, -far}, {far, -far}}); },
    [](Pen& p) { p.line({{far, -far}, {far, far}, {-far, far}}); },
    [](Pen& p) { p.line({{-far, 0.6}, {0, -0.6}, {far, 0.6}}); },
    [](Pen& p) { p.line({{-far, -0.6}, {0, 0.6}, {far, -0.6}}); },
    [](Pen& p) {
      p.outline({{-far, -far}, {far, -far}, {far, far}, {-far, far}});
      p.line({{-far, -far}, {far, far}}), p.line({{-far, far}, {far, -far}});
    },
    [](Pen& p) { p.dot(0.32, -0.55, -0.55), p.dot(0.32, 0.55, -0.55), p.dot(0.32, -0.55, 0.55), p.dot(0.32, 0.55, 0.55); },
    [](Pen& p) { p.shape({{-0.9, -0.9}, {0.9, -0.9}, {-0.9, 0.9}}); },
    [](Pen& p) { p.line({{-far, -far}, {far, -far}}), p.line({{0, -far}, {0, end}}); },
    [](Pen& p) { p.shape({{0.9, -0.9}, {0.9, 0.9}, {-0.9, 0.9}}); },
    [](Pen& p) { p.line({{-far, -far}, {-far, far}, {far, far}}), p.dot(0.3, 0.4, -0.4); },
    [](Pen& p) { p.line({{-far, -far}, {-far, far}, {far, far}, {far, -far}}); },
    [](Pen& p) { p.shape({{-0.9, -0.9}, {0.9, 0.9}, {0.9, -0.9}, {-0.9, 0.9}}); },
}};

}  // namespace

std::vector<Mark> symbol_marks(int symbol, Point centre, double side_mm, colour::Rgb ink) {
  assert(symbol >= 0 && symbol < symbol_count);
  Pen pen(centre, side_mm, ink);
  symbols[static_cast<std::size_t>(symbol)](pen);
  return std::move(pen).marks();
}

}  // namespace evencount::drawing
