#include <fmt/ostream.h>

#include <filesystem>

#include "app/files.hpp"
#include "app/project_file.hpp"
#include "app/verbs.hpp"
#include "base/text.hpp"
#include "drawing/band_drawing.hpp"
#include "page/output.hpp"

namespace evencount::app {
namespace {

Result<drawing::Drawing> drawing_of(const project::Project& project, const project::Band& band,
                                    const DrawArguments& arguments) {
  const auto plan = project::plan_of(band);
  if (!plan) return plan.problem();
  if (arguments.what == "band") return drawing::band_drawing(project, band, *plan);
  if (arguments.what != "chart")
    return Problem{ProblemCode::bad_usage, "what to draw", evencount::quoted(arguments.what), "chart or band"};
  const auto cell = parse_length(arguments.cell);
  if (!cell) return cell.problem().within("cell");
  return drawing::chart_drawing(project, band, *plan, {.symbols = arguments.symbols, .cell_width = *cell});
}

Result<std::string> file_of(const drawing::Drawing& drawing, const std::string& title,
                            const DrawArguments& arguments) {
  const std::string extension = lower_ascii(std::filesystem::path(arguments.output).extension().string());
  if (extension == ".svg") return page::to_svg(drawing);
  if (extension == ".png") return page::to_png(drawing, arguments.dots_per_inch);
  if (extension == ".pdf") return page::to_pdf({drawing}, {.title = title});
  return Problem{ProblemCode::bad_usage, "output", evencount::quoted(arguments.output),
                 "a name that ends in .svg, .png or .pdf"};
}

}  // namespace

int draw_verb(const DrawArguments& arguments, const Console& console) {
  const auto project = load_project(arguments.project);
  if (!project) return console.fail(project.problem());
  if (project->bands.empty())
    return console.fail({ProblemCode::missing_field, arguments.project, "no bands", "a band to draw"});
  const auto band = arguments.band.empty() ? Result<project::Band>(project->bands.front())
                                           : project::find_band(*project, arguments.band);
  if (!band) return console.fail(band.problem().within(arguments.project));
  const auto drawing = drawing_of(*project, *band, arguments);
  if (!drawing) return console.fail(drawing.problem());
  const auto bytes = file_of(*drawing, band->name, arguments);
  if (!bytes) return console.fail(bytes.problem());
  if (const auto written = write_file(arguments.output, *bytes); !written)
    return console.fail(written.problem());
  fmt::print(console.err, "wrote {} ({} x {} mm)\n", arguments.output, fixed_number(drawing->width.mm(), 1),
             fixed_number(drawing->height.mm(), 1));
  return exit_done;
}

}  // namespace evencount::app
