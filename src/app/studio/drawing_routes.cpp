#include "app/studio/band_view.hpp"
#include "app/verbs/show_as_seen.hpp"
#include "base/text.hpp"
#include "drawing/band_drawing.hpp"
#include "drawing/section_drawing.hpp"
#include "page/output.hpp"
#include "page/step_sheet.hpp"
#include "project/band_size.hpp"

namespace evencount::app::studio {
namespace {

/// A thumbnail shows the beginning of a long band.
constexpr int thumbnail_steps = 60;

Result<drawing::Drawing> section(const project::Project& project, const project::Band& band) {
  if (!band.form || !weave::closes_round_edge(band.closure))
    return Problem{ProblemCode::missing_field, "form", "a band that is not closed round a form",
                   "one that is"};
  form::FitRequest request = project::fit_request(project, band);
  request.columns = band.chart.columns();
  const auto fit = form::fit(request);
  if (!fit) return fit.problem();
  return drawing::section_drawing(*fit, request.bead);
}

Result<drawing::Drawing> chart(const Call& call, const project::Project& project, const project::Band& band,
                               const weave::Plan& plan) {
  const auto cell = parse_length(call.query("cell", "4mm"));
  if (!cell) return cell.problem().within("cell");
  const auto signs = drawing::parse_signs(call.query("signs", "none"));
  if (!signs) return signs.problem();
  return drawing::chart_drawing(project, band, plan, {.signs = *signs, .cell_width = *cell});
}

Result<drawing::Drawing> drawing_of(const Call& call, const project::Project& project,
                                    const project::Band& band) {
  const std::string& what = call.names.at(2);
  if (what == "section") return section(project, band);
  const auto plan = project::plan_of(band);
  if (!plan) return plan.problem();
  if (what == "band") return drawing::band_drawing(project, band, *plan);
  if (what == "steps") return page::step_sheet(project, band);
  if (what == "chart") return chart(call, project, band, *plan);
  return Problem{ProblemCode::not_found, "drawing", quote(what), "chart, band, steps or section"};
}

Response draw(Studio& studio, const Call& call) {
  const auto view = band_view(studio, call);
  if (!view) return problem_response(view.problem());
  project::Project project = view->project();
  if (const auto seen = show_as_seen(project, call.query("seen")); !seen)
    return problem_response(seen.problem());
  return of_revision(svg_response(drawing_of(call, project, view->band())), view->state.revision);
}

/// The first band, in its colours.
Response thumbnail_of(const project::Project& project) {
  if (project.bands.empty())
    return problem_response(
        {ProblemCode::not_found, "thumbnail", "a project without bands", "a band to show"});
  const project::Band& band = project.bands.front();
  const auto plan = project::plan_of(band);
  if (!plan) return problem_response(plan.problem());
  return svg_response(drawing::band_drawing(project, band, *plan, {.most_steps = thumbnail_steps}));
}

Response thumbnail(Studio& studio, const Call& call) {
  return with_session(studio, call, [&](Session& session) {
    const State state = session.state();
    return of_revision(thumbnail_of(*state.project), state.revision);
  });
}

Response example_thumbnail(Studio& studio, const Call& call) {
  const auto example = studio.library.example(call.names[0]);
  return example ? thumbnail_of(*example) : problem_response(example.problem());
}

constexpr Route routes[] = {
    {"GET", "/api/projects/{project}/thumbnail", no_body, thumbnail},
    {"GET", "/api/examples/{example}/thumbnail", no_body, example_thumbnail},
    {"GET", "/api/projects/{project}/bands/{band}/drawings/{drawing}", no_body, draw},
};

}  // namespace

Response svg_response(const Result<drawing::Drawing>& drawing) {
  if (!drawing) return problem_response(drawing.problem());
  auto svg = page::to_svg(*drawing);
  if (!svg) return problem_response(svg.problem());
  Response response;
  response.type = "image/svg+xml";
  response.body = std::move(*svg);
  return response;
}

std::span<const Route> drawing_routes() {
  return routes;
}

}  // namespace evencount::app::studio
