#include <fmt/format.h>
#include <png.h>

#include <cmath>
#include <csetjmp>

#include "base/text.hpp"
#include "page/output.hpp"
#include "page/painter.hpp"

namespace evencount::page {
namespace {

void append_png(png_structp png, png_bytep data, std::size_t size) {
  static_cast<std::string*>(png_get_io_ptr(png))->append(reinterpret_cast<const char*>(data), size);
}

void flush_png(png_structp) {}

/// Rows of 24-bit RGB to a PNG. libpng reports errors by longjmp, so nothing here needs a destructor.
bool write_png(std::string* bytes, const std::uint8_t* rows, unsigned width, unsigned height,
               unsigned dots_per_metre, char* description) {
  png_structp png = png_create_write_struct(PNG_LIBPNG_VER_STRING, nullptr, nullptr, nullptr);
  if (!png) return false;
  png_infop info = png_create_info_struct(png);
  if (!info || setjmp(png_jmpbuf(png))) {
    png_destroy_write_struct(&png, &info);
    return false;
  }
  png_set_write_fn(png, bytes, append_png, flush_png);
  png_set_IHDR(png, info, width, height, 8, PNG_COLOR_TYPE_RGB, PNG_INTERLACE_NONE,
               PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
  png_set_sRGB(png, info, PNG_sRGB_INTENT_RELATIVE);
  png_set_pHYs(png, info, dots_per_metre, dots_per_metre, PNG_RESOLUTION_METER);
  char key[] = "Description", no_tag[] = "";
  png_text text{};
  text.compression = PNG_ITXT_COMPRESSION_NONE;
  text.key = key;
  text.text = description;
  text.lang = no_tag;
  text.lang_key = no_tag;
  if (description[0] != '\0') png_set_text(png, info, &text, 1);
  png_write_info(png, info);
  for (unsigned row = 0; row < height; ++row) png_write_row(png, rows + std::size_t{3} * width * row);
  png_write_end(png, info);
  png_destroy_write_struct(&png, &info);
  return true;
}

/// The pixels of an RGB24 surface as rows of bytes.
std::vector<std::uint8_t> pixel_rows(cairo_surface_t* surface) {
  cairo_surface_flush(surface);
  const int width = cairo_image_surface_get_width(surface), height = cairo_image_surface_get_height(surface);
  const int stride = cairo_image_surface_get_stride(surface);
  const unsigned char* data = cairo_image_surface_get_data(surface);
  std::vector<std::uint8_t> rows;
  rows.reserve(std::size_t{3} * width * height);
  for (int y = 0; y < height; ++y) {
    const auto* row = reinterpret_cast<const std::uint32_t*>(data + static_cast<std::ptrdiff_t>(stride) * y);
    for (int x = 0; x < width; ++x)
      for (const int shift : {16, 8, 0}) rows.push_back(static_cast<std::uint8_t>(row[x] >> shift));
  }
  return rows;
}

constexpr double longest_side = 32'767;  // cairo's limit for an image

Result<Done> check_size(double width, double height, double dots_per_inch) {
  if (dots_per_inch >= 10 && dots_per_inch <= 2400 && width * height <= 1e8 && width <= longest_side && height <= longest_side &&
      width >= 1 && height >= 1)
    return Done{};
  return Problem{ProblemCode::out_of_range, "PNG",
                 fmt::format("{:.0f} by {:.0f} pixels at {} dots per inch", width, height, plain_number(dots_per_inch)),
                 "10 to 2400 dots per inch and at most 100 million pixels"};
}

Result<std::string> png_of(const std::uint8_t* rows, unsigned width, unsigned height, double dots_per_inch,
                           std::string description) {
  std::string bytes;
  if (!write_png(&bytes, rows, width, height, static_cast<unsigned>(std::lround(dots_per_inch / 0.0254)),
                 description.data()))
    return Problem{ProblemCode::system_failure, "PNG", "libpng failed", ""};
  return bytes;
}

}  // namespace

Result<std::string> to_png(const drawing::Pixels& pixels, double dots_per_inch) {
  if (auto sound = check_size(pixels.width, pixels.height, dots_per_inch); !sound) return sound.problem();
  const auto bytes = std::size_t{3} * static_cast<std::size_t>(pixels.width) * static_cast<std::size_t>(pixels.height);
  if (pixels.rgb.size() != bytes)
    return Problem{ProblemCode::out_of_range, "PNG", fmt::format("{} bytes", pixels.rgb.size()), fmt::format("{} bytes", bytes)};
  return png_of(pixels.rgb.data(), static_cast<unsigned>(pixels.width), static_cast<unsigned>(pixels.height), dots_per_inch, "");
}

Result<std::string> to_png(const drawing::Drawing& drawing, double dots_per_inch, const PictureForWeb& web) {
  if (web.pixels) dots_per_inch = *web.pixels / drawing.width.inches();
  const double width = std::ceil(drawing.width.inches() * dots_per_inch - 1e-6);
  const double height = std::ceil(drawing.height.inches() * dots_per_inch - 1e-6);
  if (auto sound = check_size(width, height, dots_per_inch); !sound) return sound.problem();
  const auto typesetter = Typesetter::open();
  if (!typesetter) return typesetter.problem();
  const Surface surface(
      cairo_image_surface_create(CAIRO_FORMAT_RGB24, static_cast<int>(width), static_cast<int>(height)));
  {
    const Canvas canvas(cairo_create(surface.get()));
    cairo_set_source_rgb(canvas.get(), 1, 1, 1);
    cairo_paint(canvas.get());
    cairo_scale(canvas.get(), dots_per_inch / 72, dots_per_inch / 72);
    if (auto done = paint(canvas.get(), drawing, *typesetter); !done) return done.problem();
  }
  const auto rows = pixel_rows(surface.get());
  return png_of(rows.data(), static_cast<unsigned>(width), static_cast<unsigned>(height), dots_per_inch,
                web.description);
}

}  // namespace evencount::page
