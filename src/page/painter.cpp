#include "page/painter.hpp"

#include <algorithm>
#include <map>
#include <numbers>
#include <tuple>

namespace evencount::page {
namespace {

using namespace drawing;

constexpr double pt(double mm) {
  return mm / mm_per_pt;
}

class Painter {
 public:
  Painter(cairo_t* canvas, const Typesetter& typesetter) : canvas_(canvas), typesetter_(typesetter) {}

  Result<Done> operator()(const Rectangle& mark) {
    outline(mark);
    return ink(mark.fill, mark.stroke);
  }

  Result<Done> operator()(const Path& mark) {
    cairo_new_path(canvas_);
    for (const Point point : mark.points) cairo_line_to(canvas_, pt(point.x_mm), pt(point.y_mm));
    if (mark.closed) cairo_close_path(canvas_);
    return ink(mark.fill, mark.stroke);
  }

  Result<Done> operator()(const Circle& mark) {
    cairo_new_path(canvas_);
    cairo_arc(canvas_, pt(mark.centre.x_mm), pt(mark.centre.y_mm), pt(mark.radius_mm), 0,
              2 * std::numbers::pi);
    cairo_close_path(canvas_);
    return ink(mark.fill, mark.stroke);
  }

  Result<Done> operator()(const Text& mark) {
    if (mark.text.empty()) return Done{};
    use(mark.ink);
    return mark.in_picture ? sign(mark) : words(mark);
  }

 private:
  void use(colour::Rgb ink) {
    cairo_set_source_rgb(canvas_, ink.red / 255.0, ink.green / 255.0, ink.blue / 255.0);
  }

  void outline(const Rectangle& mark) {
    cairo_new_path(canvas_);
    const double x = pt(mark.corner.x_mm), y = pt(mark.corner.y_mm);
    const double width = pt(mark.width_mm), height = pt(mark.height_mm);
    const double radius = std::min({pt(mark.radius_mm), width / 2, height / 2});
    if (radius <= 0) {
      cairo_rectangle(canvas_, x, y, width, height);
      return;
    }
    constexpr double quarter = std::numbers::pi / 2;
    cairo_arc(canvas_, x + width - radius, y + radius, radius, -quarter, 0);
    cairo_arc(canvas_, x + width - radius, y + height - radius, radius, 0, quarter);
    cairo_arc(canvas_, x + radius, y + height - radius, radius, quarter, 2 * quarter);
    cairo_arc(canvas_, x + radius, y + radius, radius, 2 * quarter, 3 * quarter);
    cairo_close_path(canvas_);
  }

  Result<Done> ink(const std::optional<colour::Rgb>& fill, const std::optional<Stroke>& stroke) {
    if (fill) {
      use(*fill);
      cairo_fill_preserve(canvas_);
    }
    if (stroke) {
      use(stroke->ink);
      const double width = pt(stroke->width_mm);
      const double dash = 3 * width;
      cairo_set_line_width(canvas_, width);
      cairo_set_dash(canvas_, &dash, stroke->dashed ? 1 : 0, 0);
      cairo_stroke_preserve(canvas_);
    }
    cairo_new_path(canvas_);
    return Done{};
  }

  Result<Done> words(const Text& mark) {
    const Face face{mark.role, mark.size_pt};
    const LayoutPointer layout = typesetter_.layout(face, mark.text);
    if (pango_layout_get_unknown_glyphs_count(layout.get()) > 0) return typesetter_.check(face, mark.text);
    const Point start = typesetter_.origin(mark);
    const double baseline = static_cast<double>(pango_layout_get_baseline(layout.get())) / PANGO_SCALE;
    cairo_new_path(canvas_);
    cairo_move_to(canvas_, pt(start.x_mm), pt(start.y_mm) - baseline);
    pango_cairo_show_layout(canvas_, layout.get());
    return Done{};
  }

  /// A sign as a shape. A chart has few of them, each many times over, so their outlines are kept.
  Result<Done> sign(const Text& mark) {
    const auto key = std::tuple(mark.role, mark.size_pt, mark.align, mark.text);
    auto found = outlines_.find(key);
    if (found == outlines_.end()) {
      const Face face{mark.role, mark.size_pt};
      if (auto ok = typesetter_.check(face, mark.text); !ok) return ok;
      const LayoutPointer layout = typesetter_.layout(face, mark.text);
      const double baseline = static_cast<double>(pango_layout_get_baseline(layout.get())) / PANGO_SCALE;
      Text at_origin = mark;
      at_origin.at = {};
      cairo_new_path(canvas_);
      cairo_move_to(canvas_, pt(typesetter_.origin(at_origin).x_mm), -baseline);
      pango_cairo_layout_path(canvas_, layout.get());
      found = outlines_.emplace(key, Outline(cairo_copy_path(canvas_))).first;
    }
    cairo_save(canvas_);
    cairo_translate(canvas_, pt(mark.at.x_mm), pt(mark.at.y_mm));
    cairo_new_path(canvas_);
    cairo_append_path(canvas_, found->second.get());
    cairo_restore(canvas_);
    cairo_fill(canvas_);
    return Done{};
  }

  struct OutlineEnd {
    void operator()(cairo_path_t* path) const { cairo_path_destroy(path); }
  };
  using Outline = std::unique_ptr<cairo_path_t, OutlineEnd>;

  cairo_t* canvas_;
  const Typesetter& typesetter_;
  std::map<std::tuple<TextRole, double, Align, std::string>, Outline> outlines_;
};

}  // namespace

cairo_status_t append_bytes(void* target, const unsigned char* data, unsigned int size) {
  static_cast<std::string*>(target)->append(reinterpret_cast<const char*>(data), size);
  return CAIRO_STATUS_SUCCESS;
}

Result<Done> paint(cairo_t* canvas, const Drawing& drawing, const Typesetter& typesetter) {
  cairo_set_line_join(canvas, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_cap(canvas, CAIRO_LINE_CAP_BUTT);
  Painter painter(canvas, typesetter);
  for (const Mark& mark : drawing.marks)
    if (auto done = std::visit([&](const auto& one) { return painter(one); }, mark); !done) return done;
  if (cairo_status(canvas) != CAIRO_STATUS_SUCCESS)
    return Problem{ProblemCode::system_failure, "drawing", cairo_status_to_string(cairo_status(canvas)), ""};
  return Done{};
}

}  // namespace evencount::page
