#include "page/painter.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <new>
#include <numbers>

#include "page/sign_writer.hpp"

namespace evencount::page {
namespace {

using namespace drawing;

constexpr double pt(double mm) {
  return mm / mm_per_pt;
}

/// Four bytes a pixel, as cairo keeps an opaque picture.
void fill(cairo_surface_t* image, const Pixels& pixels) {
  cairo_surface_flush(image);
  unsigned char* const data = cairo_image_surface_get_data(image);
  const int stride = cairo_image_surface_get_stride(image);
  auto from = pixels.rgb.begin();
  for (int y = 0; y < pixels.height; ++y) {
    auto* const row = reinterpret_cast<std::uint32_t*>(data + static_cast<std::ptrdiff_t>(stride) * y);
    for (int x = 0; x < pixels.width; ++x, from += 3)
      row[x] = static_cast<std::uint32_t>(from[0]) << 16U | static_cast<std::uint32_t>(from[1]) << 8U | from[2];
  }
  cairo_surface_mark_dirty(image);
}

class Painter {
 public:
  Painter(cairo_t* canvas, const Typesetter& typesetter)
      : canvas_(canvas),
        typesetter_(typesetter),
        is_pdf_(cairo_surface_get_type(cairo_get_target(canvas)) == CAIRO_SURFACE_TYPE_PDF),
        signs_(canvas, typesetter) {}

  /// Shows what is still held back: rectangles of one look and signs are painted many at a time.
  void settle() {
    signs_.flush();
    if (boxes_ == 0) return;
    boxes_ = 0;
    ink(box_fill_, box_stroke_);
  }

  Result<Done> operator()(const Rectangle& mark) {
    constexpr int most_boxes = 500;  // in one path, so that none grows without end
    signs_.flush();
    if (boxes_ == most_boxes || mark.fill != box_fill_ || mark.stroke != box_stroke_) settle();
    if (boxes_++ == 0) {
      cairo_new_path(canvas_);
      box_fill_ = mark.fill, box_stroke_ = mark.stroke;
    }
    outline(mark);
    return Done{};
  }

  Result<Done> operator()(const Path& mark) {
    settle();
    cairo_new_path(canvas_);
    for (const Point point : mark.points) cairo_line_to(canvas_, pt(point.x_mm), pt(point.y_mm));
    if (mark.closed) cairo_close_path(canvas_);
    ink(mark.fill, mark.stroke);
    return Done{};
  }

  Result<Done> operator()(const Circle& mark) {
    settle();
    cairo_new_path(canvas_);
    cairo_arc(canvas_, pt(mark.centre.x_mm), pt(mark.centre.y_mm), pt(mark.radius_mm), 0,
              2 * std::numbers::pi);
    cairo_close_path(canvas_);
    ink(mark.fill, mark.stroke);
    return Done{};
  }

  Result<Done> operator()(const Text& mark) {
    if (mark.text.empty()) return Done{};
    if (is_pdf_ && mark.in_picture) {
      if (boxes_ > 0) settle();
      return signs_.add(mark);
    }
    settle();
    use(mark.ink);
    return mark.in_picture ? sign(mark) : words(mark);
  }

  Result<Done> operator()(const Picture& mark) {
    settle();
    const Surface image(cairo_image_surface_create(CAIRO_FORMAT_RGB24, mark.pixels->width, mark.pixels->height));
    if (cairo_surface_status(image.get()) != CAIRO_STATUS_SUCCESS)
      return Problem{ProblemCode::out_of_range, "picture",
                     fmt::format("{} by {} pixels", mark.pixels->width, mark.pixels->height),
                     "1 to 32767 pixels each way"};
    fill(image.get(), *mark.pixels);
    cairo_save(canvas_);
    cairo_translate(canvas_, pt(mark.corner.x_mm), pt(mark.corner.y_mm));
    cairo_scale(canvas_, pt(mark.width_mm) / mark.pixels->width, pt(mark.height_mm) / mark.pixels->height);
    cairo_set_source_surface(canvas_, image.get(), 0, 0);
    cairo_rectangle(canvas_, 0, 0, mark.pixels->width, mark.pixels->height);
    cairo_fill(canvas_);
    cairo_restore(canvas_);
    return Done{};
  }

 private:
  void use(colour::Rgb ink) {
    cairo_set_source_rgb(canvas_, ink.red / 255.0, ink.green / 255.0, ink.blue / 255.0);
  }

  /// Added to the path.
  void outline(const Rectangle& mark) {
    const double x = pt(mark.corner.x_mm), y = pt(mark.corner.y_mm);
    const double width = pt(mark.width_mm), height = pt(mark.height_mm);
    const double radius = std::min({pt(mark.radius_mm), width / 2, height / 2});
    if (radius <= 0) {
      cairo_rectangle(canvas_, x, y, width, height);
      return;
    }
    constexpr double quarter = std::numbers::pi / 2;
    cairo_new_sub_path(canvas_);
    cairo_arc(canvas_, x + width - radius, y + radius, radius, -quarter, 0);
    cairo_arc(canvas_, x + width - radius, y + height - radius, radius, 0, quarter);
    cairo_arc(canvas_, x + radius, y + height - radius, radius, quarter, 2 * quarter);
    cairo_arc(canvas_, x + radius, y + radius, radius, 2 * quarter, 3 * quarter);
    cairo_close_path(canvas_);
  }

  void ink(const std::optional<colour::Rgb>& fill, const std::optional<Stroke>& stroke) {
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

  /// A sign as a shape, but for PDFs. A chart has few of them, each many times over, so their outlines are kept.
  Result<Done> sign(const Text& mark) {
    SignKey key = key_of(mark);
    auto found = outlines_.find(key);
    if (found == outlines_.end()) {
      const auto set = set_sign(mark, typesetter_);
      if (!set) return set.problem();
      const double baseline = static_cast<double>(pango_layout_get_baseline(set->layout.get())) / PANGO_SCALE;
      cairo_new_path(canvas_);
      cairo_move_to(canvas_, set->left_pt, -baseline);
      pango_cairo_layout_path(canvas_, set->layout.get());
      found = outlines_.emplace(std::move(key), Outline(cairo_copy_path(canvas_))).first;
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
  bool is_pdf_;
  std::map<SignKey, Outline> outlines_;
  SignWriter signs_;
  int boxes_ = 0;  ///< in the path, not yet painted
  std::optional<colour::Rgb> box_fill_;
  std::optional<Stroke> box_stroke_;
};

}  // namespace

cairo_status_t append_bytes(void* target, const unsigned char* data, unsigned int size) {
  try {
    static_cast<std::string*>(target)->append(reinterpret_cast<const char*>(data), size);
  } catch (const std::bad_alloc&) {  // no exception may pass through cairo
    return CAIRO_STATUS_NO_MEMORY;
  }
  return CAIRO_STATUS_SUCCESS;
}

namespace {

/// Regions as tags: ISO 32000-1, 14.8.4, in cairo's spelling.
class Tags {
 public:
  Tags(cairo_t* canvas, std::span<const Region> regions) : canvas_(canvas), regions_(regions) {}

  /// Whether something begins or ends before the mark at `place`.
  [[nodiscard]] bool due(std::size_t place) const {
    return (!open_.empty() && regions_[open_.back()].end_mark <= place) ||
           (next_ < regions_.size() && regions_[next_].first_mark <= place);
  }
  /// Before the mark at `place` is painted, or at the end.
  void reach(std::size_t place) {
    while (!open_.empty() && regions_[open_.back()].end_mark <= place) {
      cairo_tag_end(canvas_, name_of(regions_[open_.back()].part));
      open_.pop_back();
    }
    for (; next_ < regions_.size() && regions_[next_].first_mark <= place; ++next_) {
      const Region& region = regions_[next_];
      if (region.end_mark <= place) continue;
      cairo_tag_begin(canvas_, name_of(region.part), attributes_of(region).c_str());
      open_.push_back(next_);
    }
  }

 private:
  static const char* name_of(Part part) {
    switch (part) {
      case Part::title: return "H1";
      case Part::heading: return "H2";
      case Part::subheading: return "H3";
      case Part::paragraph: return "P";
      case Part::figure: return "Figure";
      case Part::link: return CAIRO_TAG_LINK;
      case Part::place: return CAIRO_TAG_DEST;
    }
    return "P";
  }
  static std::string attributes_of(const Region& region) {
    if (region.part == Part::link) return "dest='" + region.text + "'";
    if (region.part == Part::place) return "name='" + region.text + "'";
    return {};
  }

  cairo_t* canvas_;
  std::span<const Region> regions_;
  std::vector<std::size_t> open_;
  std::size_t next_ = 0;
};

}  // namespace

struct PagesPainter::Kept {
  cairo_t* canvas;
  Painter painter;
};

PagesPainter::PagesPainter(cairo_t* canvas, const Typesetter& typesetter)
    : kept_(new Kept{canvas, Painter(canvas, typesetter)}) {}

PagesPainter::~PagesPainter() = default;

Result<Done> PagesPainter::paint(const Drawing& page, std::span<const Region> regions) {
  if (page.marks.size() > most_marks)
    return Problem{ProblemCode::out_of_range, "drawing", fmt::format("{} marks", page.marks.size()),
                   fmt::format("at most {} on one sheet: a part of the band, or a chart without signs", most_marks)};
  cairo_t* const canvas = kept_->canvas;
  cairo_set_line_join(canvas, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_cap(canvas, CAIRO_LINE_CAP_BUTT);
  Tags tags(canvas, regions);
  for (std::size_t i = 0; i < page.marks.size(); ++i) {
    if (tags.due(i)) kept_->painter.settle();
    tags.reach(i);
    if (auto done = std::visit([&](const auto& one) { return kept_->painter(one); }, page.marks[i]); !done) return done;
  }
  kept_->painter.settle();
  tags.reach(page.marks.size());
  if (cairo_status(canvas) != CAIRO_STATUS_SUCCESS)
    return Problem{ProblemCode::system_failure, "drawing", cairo_status_to_string(cairo_status(canvas)), ""};
  return Done{};
}

Result<Done> paint(cairo_t* canvas, const Drawing& drawing, const Typesetter& typesetter,
                   std::span<const Region> regions) {
  return PagesPainter(canvas, typesetter).paint(drawing, regions);
}

}  // namespace evencount::page
