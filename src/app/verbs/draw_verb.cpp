#include <fmt/ostream.h>

#include "app/drawing_file.hpp"
#include "app/project_file.hpp"
#include "app/verbs.hpp"
#include "app/verbs/show_as_seen.hpp"
#include "base/text.hpp"
#include "drawing/band_drawing.hpp"
#include "page/alternative.hpp"
#include "page/piece_picture.hpp"
#include "page/step_sheet.hpp"

namespace evencount::app {
namespace {

struct Described {
  drawing::Drawing drawing;
  std::string description;  ///< empty for step diagrams, whose sentences stand in them
};

Result<Described> drawing_of(const project::Project& project, const project::Band& band,
                             const DrawArguments& arguments, const language::Language& language) {
  const auto plan = project::plan_of(band);
  if (!plan) return plan.problem();
  const auto described = [](Result<drawing::Drawing> drawing, std::string description) -> Result<Described> {
    if (!drawing) return drawing.problem();
    return Described{std::move(*drawing), std::move(description)};
  };
  if (arguments.what == "band")
    return described(drawing::band_drawing(project, band, *plan),
                     page::alternative_of_band(project, band, *plan, language));
  if (arguments.what == "steps") return described(page::step_sheet(project, band, language), "");
  if (arguments.what == "piece") {
    const auto description = page::alternative_of_piece(project, language);
    if (!description) return description.problem();
    return described(page::piece_picture(project), *description);
  }
  if (arguments.what != "chart")
    return Problem{ProblemCode::bad_usage, "what to draw", quote(arguments.what),
                   "chart, band, piece or steps"};
  const auto cell = parse_length(arguments.cell);
  if (!cell) return cell.problem().within("cell");
  const auto signs = drawing::parse_signs(arguments.signs);
  if (!signs) return signs.problem();
  return described(drawing::chart_drawing(project, band, *plan, {.signs = *signs, .cell_width = *cell}),
                   page::alternative_of_chart(project, band, *plan, language));
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
  const auto language = language::find_language(arguments.language);
  if (!language) return console.fail(language.problem());
  if (const auto seen = show_as_seen(*project, arguments.seen); !seen) return console.fail(seen.problem());
  const auto drawn = drawing_of(*project, *band, arguments, **language);
  if (!drawn) return console.fail(drawn.problem());
  if (arguments.alt) fmt::print(console.out, "{}\n", drawn->description);
  return write_drawing(drawn->drawing, arguments.what == "piece" ? project->title : band->name, arguments.output,
                       arguments.dots_per_inch, console, {arguments.pixels, drawn->description});
}

}  // namespace evencount::app
