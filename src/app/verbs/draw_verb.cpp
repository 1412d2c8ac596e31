#include "app/drawing_file.hpp"
#include "app/project_file.hpp"
#include "app/verbs.hpp"
#include "app/verbs/show_as_seen.hpp"
#include "base/text.hpp"
#include "drawing/band_drawing.hpp"
#include "page/step_sheet.hpp"

namespace evencount::app {
namespace {

Result<drawing::Drawing> drawing_of(const project::Project& project, const project::Band& band,
                                    const DrawArguments& arguments) {
  const auto plan = project::plan_of(band);
  if (!plan) return plan.problem();
  if (arguments.what == "band") return drawing::band_drawing(project, band, *plan);
  if (arguments.what == "steps") return page::step_sheet(project, band);
  if (arguments.what != "chart")
    return Problem{ProblemCode::bad_usage, "what to draw", evencount::quoted(arguments.what),
                   "chart, band or steps"};
  const auto cell = parse_length(arguments.cell);
  if (!cell) return cell.problem().within("cell");
  const auto signs = drawing::parse_signs(arguments.signs);
  if (!signs) return signs.problem();
  return drawing::chart_drawing(project, band, *plan, {.signs = *signs, .cell_width = *cell});
}

}  // namespace

int draw_verb(const DrawArguments& arguments, const Console& console) {
  auto project = load_project(arguments.project);
  if (!project) return console.fail(project.problem());
  if (project->bands.empty())
    return console.fail({ProblemCode::missing_field, arguments.project, "no bands", "a band to draw"});
  const auto band = arguments.band.empty() ? Result<project::Band>(project->bands.front())
                                           : project::find_band(*project, arguments.band);
  if (!band) return console.fail(band.problem().within(arguments.project));
  if (const auto seen = show_as_seen(*project, arguments.seen); !seen) return console.fail(seen.problem());
  const auto drawing = drawing_of(*project, *band, arguments);
  if (!drawing) return console.fail(drawing.problem());
  return write_drawing(*drawing, band->name, arguments.output, arguments.dots_per_inch, console);
}

}  // namespace evencount::app
