#include <cairo-svg.h>
#include <fmt/format.h>

#include "page/along_markup.hpp"
#include "page/output.hpp"
#include "page/painter.hpp"

namespace evencount::page {
namespace {

/// Cairo numbers its surfaces from the start of the process, and the numbers end up in ids. Texts are outlines in
/// its SVG, so these words are never a person's own.
std::string without_counters(const std::string& svg) {
  constexpr std::string_view word = "surface";
  std::string result;
  result.reserve(svg.size());
  for (std::size_t i = 0; i < svg.size();) {
    if (svg.compare(i, word.size(), word) != 0) {
      result += svg[i++];
      continue;
    }
    result += word;
    i += word.size();
    while (i < svg.size() && svg[i] >= '0' && svg[i] <= '9') ++i;
  }
  return result;
}

/// The picture described and sized for the web: its root element says what it is.
std::string for_web(std::string svg, const drawing::Drawing& drawing, const PictureForWeb& web) {
  const std::size_t root = svg.find("<svg "), end = svg.find('>', root);
  if (root == std::string::npos || end == std::string::npos) return svg;
  if (!web.description.empty()) {
    svg.insert(end + 1, "\n<title>" + shown(web.description) + "</title>");
    svg.insert(root + 5, "role=\"img\" ");
  }
  if (!web.pixels) return svg;
  const double height = *web.pixels * (drawing.height / drawing.width);
  const auto replace = [&](std::string_view name, double pixels) {
    const std::string before = fmt::format(" {}=\"", name);
    const std::size_t at = svg.find(before, root);
    if (at == std::string::npos || at > svg.find('>', root)) return;
    const std::size_t from = at + before.size();
    svg.replace(from, svg.find('"', from) - from, fmt::format("{:.0f}", pixels));
  };
  replace("width", *web.pixels);
  replace("height", height);
  return svg;
}

}  // namespace

Result<std::string> to_svg(const drawing::Drawing& drawing, const PictureForWeb& web) {
  const auto typesetter = Typesetter::open();
  if (!typesetter) return typesetter.problem();
  std::string bytes;
  {
    const Surface surface(cairo_svg_surface_create_for_stream(
        append_bytes, &bytes, drawing.width.mm() / mm_per_pt, drawing.height.mm() / mm_per_pt));
    const Canvas canvas(cairo_create(surface.get()));
    if (auto done = paint(canvas.get(), drawing, *typesetter); !done) return done.problem();
    cairo_surface_finish(surface.get());
    if (const auto status = cairo_surface_status(surface.get()); status != CAIRO_STATUS_SUCCESS)
      return Problem{ProblemCode::system_failure, "SVG", cairo_status_to_string(status), ""};
  }
  return for_web(without_counters(bytes), drawing, web);
}

}  // namespace evencount::page
