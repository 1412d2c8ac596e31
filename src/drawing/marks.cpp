#include "drawing/marks.hpp"

#include <algorithm>
#include <cassert>
#include <limits>

namespace evencount::drawing {
namespace {

/// Grows a box by marks, each widened by half its stroke.
class Box {
 public:
  void operator()(const Rectangle& mark) {
    const double half = half_stroke(mark.stroke);
    add(mark.corner, half);
    add({mark.corner.x_mm + mark.width_mm, mark.corner.y_mm + mark.height_mm}, half);
  }
  void operator()(const Path& mark) {
    for (const Point point : mark.points) add(point, half_stroke(mark.stroke));
  }
  void operator()(const Circle& mark) { add(mark.centre, mark.radius_mm + half_stroke(mark.stroke)); }
  void operator()(const Text&) {}
  void operator()(const Picture& mark) {
    add(mark.corner, 0);
    add({mark.corner.x_mm + mark.width_mm, mark.corner.y_mm + mark.height_mm}, 0);
  }

  [[nodiscard]] Bounds bounds() const { return any_ ? bounds_ : Bounds{}; }

 private:
  static double half_stroke(const std::optional<Stroke>& stroke) { return stroke ? stroke->width_mm / 2 : 0; }
  void add(Point point, double reach_mm) {
    any_ = true;
    bounds_.left_mm = std::min(bounds_.left_mm, point.x_mm - reach_mm);
    bounds_.top_mm = std::min(bounds_.top_mm, point.y_mm - reach_mm);
    bounds_.right_mm = std::max(bounds_.right_mm, point.x_mm + reach_mm);
    bounds_.bottom_mm = std::max(bounds_.bottom_mm, point.y_mm + reach_mm);
  }

  static constexpr double far = std::numeric_limits<double>::infinity();
  Bounds bounds_{far, far, -far, -far};
  bool any_ = false;
};

/// Moves and enlarges one mark.
struct Placer {
  Point at;
  double scale = 1;

  [[nodiscard]] Point moved(Point point) const {
    return {at.x_mm + scale * point.x_mm, at.y_mm + scale * point.y_mm};
  }
  void thicken(std::optional<Stroke>& stroke) const {
    if (stroke) stroke->width_mm *= scale;
  }
  void operator()(Rectangle& mark) const {
    mark.corner = moved(mark.corner);
    mark.width_mm *= scale;
    mark.height_mm *= scale;
    mark.radius_mm *= scale;
    thicken(mark.stroke);
  }
  void operator()(Path& mark) const {
    for (Point& point : mark.points) point = moved(point);
    thicken(mark.stroke);
  }
  void operator()(Circle& mark) const {
    mark.centre = moved(mark.centre);
    mark.radius_mm *= scale;
    thicken(mark.stroke);
  }
  void operator()(Text& mark) const {
    mark.at = moved(mark.at);
    mark.size_pt *= scale;
  }
  void operator()(Picture& mark) const {
    mark.corner = moved(mark.corner);
    mark.width_mm *= scale;
    mark.height_mm *= scale;
  }
};

Pixels turned_left(const Pixels& pixels) {
  Pixels turned{pixels.height, pixels.width, {}};
  turned.rgb.reserve(pixels.rgb.size());
  for (int x = pixels.width - 1; x >= 0; --x)
    for (int y = 0; y < pixels.height; ++y) {
      const auto from = pixels.rgb.begin() + 3 * (static_cast<std::ptrdiff_t>(y) * pixels.width + x);
      turned.rgb.insert(turned.rgb.end(), from, from + 3);
    }
  return turned;
}

/// Turns one mark a quarter to the left on a sheet that was `width_mm` wide.
struct LeftTurner {
  double width_mm = 0;

  [[nodiscard]] Point turned(Point point) const { return {point.y_mm, width_mm - point.x_mm}; }
  void operator()(Rectangle& mark) const {
    mark.corner = turned({mark.corner.x_mm + mark.width_mm, mark.corner.y_mm});
    std::swap(mark.width_mm, mark.height_mm);
  }
  void operator()(Path& mark) const {
    for (Point& point : mark.points) point = turned(point);
  }
  void operator()(Circle& mark) const { mark.centre = turned(mark.centre); }
  void operator()(Text& mark) const { mark.at = turned(mark.at); }
  void operator()(Picture& mark) const {
    mark.corner = turned({mark.corner.x_mm + mark.width_mm, mark.corner.y_mm});
    std::swap(mark.width_mm, mark.height_mm);
    mark.pixels = std::make_shared<const Pixels>(turned_left(*mark.pixels));
  }
};

}  // namespace

Bounds bounds_of(const Drawing& drawing) {
  Box box;
  for (const Mark& mark : drawing.marks) std::visit(box, mark);
  return box.bounds();
}

void place(Drawing& whole, const Drawing& part, Point at, double scale) {
  assert(scale > 0);
  whole.marks.reserve(whole.marks.size() + part.marks.size());
  for (Mark mark : part.marks) {
    std::visit(Placer{at, scale}, mark);
    whole.marks.push_back(std::move(mark));
  }
}

Drawing turned_left(const Drawing& drawing) {
  Drawing turned = drawing;
  std::swap(turned.width, turned.height);
  for (Mark& mark : turned.marks) std::visit(LeftTurner{drawing.width.mm()}, mark);
  return turned;
}

}  // namespace evencount::drawing
