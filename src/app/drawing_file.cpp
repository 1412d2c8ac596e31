#include "app/drawing_file.hpp"

#include <fmt/ostream.h>

#include <filesystem>

#include "app/files.hpp"
#include "base/text.hpp"
#include "page/output.hpp"

namespace evencount::app {
namespace {

constexpr double usual_dots_per_inch = 150;

Result<std::string> bytes_of(const drawing::Drawing& drawing, const std::string& title,
                             const std::string& path, std::optional<double> dots_per_inch,
                             const page::PictureForWeb& web) {
  const std::string extension = lower_ascii(std::filesystem::path(path).extension().string());
  if (extension == ".svg") return page::to_svg(drawing, web);
  if (extension == ".png") return page::to_png(drawing, dots_per_inch.value_or(usual_dots_per_inch), web);
  if (extension == ".pdf") return page::to_pdf({drawing}, {.title = title});
  return Problem{ProblemCode::bad_usage, "output", quote(path),
                 "a name that ends in .svg, .png or .pdf"};
}

}  // namespace

int write_drawing(const drawing::Drawing& drawing, const std::string& title, const std::string& path,
                  std::optional<double> dots_per_inch, const Console& console, const page::PictureForWeb& web) {
  const auto bytes = bytes_of(drawing, title, path, dots_per_inch, web);
  if (!bytes) return console.fail(bytes.problem());
  if (const auto written = write_file(path, *bytes); !written) return console.fail(written.problem());
  fmt::print(console.err, "wrote {} ({} x {} mm)\n", path, fixed_number(drawing.width.mm(), 1),
             fixed_number(drawing.height.mm(), 1));
  return exit_done;
}

}  // namespace evencount::app
