#pragma once
/// Marks onto a cairo context: the one routine behind PDF, SVG and PNG. Private to this room.

#include <cairo.h>

#include "page/typesetter.hpp"

namespace evencount::page {

struct SurfaceEnd {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
};
struct ContextEnd {
  void operator()(cairo_t* context) const { cairo_destroy(context); }
};
using Surface = std::unique_ptr<cairo_surface_t, SurfaceEnd>;
using Canvas = std::unique_ptr<cairo_t, ContextEnd>;

/// Of one sheet. Cairo keeps a vector sheet in memory until it is done: 100,000 beads as they look, some 400,000 marks, take 630 MB, measured.
inline constexpr std::size_t most_marks = 500'000;

/// A writing function for cairo's stream surfaces; `target` is a std::string*.
cairo_status_t append_bytes(void* target, const unsigned char* data, unsigned int size);

/// Paints on a context whose unit is a point; where the surface is a PDF's, `regions` of its marks become tags.
/// Errors: missing_glyph, missing_font, out_of_range (more than most_marks; a picture of more than 32,767 pixels each way),
/// system_failure.
[[nodiscard]] Result<Done> paint(cairo_t* canvas, const drawing::Drawing& drawing, const Typesetter& typesetter,
                                 std::span<const drawing::Region> regions = {});

/// The same for the pages of one file, one after another: signs that are known are kept from page to page.
class PagesPainter {
 public:
  /// The canvas and the typesetter must outlive it.
  PagesPainter(cairo_t* canvas, const Typesetter& typesetter);
  ~PagesPainter();
  PagesPainter(const PagesPainter&) = delete;
  PagesPainter& operator=(const PagesPainter&) = delete;

  /// Errors: those of `paint`.
  [[nodiscard]] Result<Done> paint(const drawing::Drawing& page, std::span<const drawing::Region> regions);

 private:
  struct Kept;
  std::unique_ptr<Kept> kept_;
};

}  // namespace evencount::page
