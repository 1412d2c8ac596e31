#include "app/studio/band_view.hpp"
#include "app/studio/strand_json.hpp"
#include "app/verbs/string_report.hpp"
#include "base/text.hpp"
#include "drawing/strand_drawing.hpp"
#include "page/output.hpp"

namespace evencount::app::studio {
namespace {

/// The project's strand in the sizes asked for. Errors: missing_field (it has none), those of the strand room.
Result<project::StrungSizes> strung(const Call& call, const project::Project& project) {
  if (!project.strand)
    return Problem{ProblemCode::missing_field, "strand", "a project that isn't strung",
                   "a layout of the strand"};
  const auto strung = project::strung_of(project);
  if (!strung) return strung.problem();
  StringArguments arguments;
  arguments.size = call.query("size"), arguments.measure = call.query("measure");
  const auto wearers = wearers_asked(*project.strand, arguments);
  if (!wearers) return wearers.problem();
  return project::strung_sizes(project, *strung, *wearers, call.query("polygon") == "true");
}

Response read_strand(Studio& studio, const Call& call) {
  return with_session(studio, call, [&](Session& session) {
    const State state = session.state();
    const auto sizes = strung(call, *state.project);
    return of_revision(
        sizes ? json_response(string_json(state.project->title, *sizes)) : problem_response(sizes.problem()),
        state.revision);
  });
}

Result<drawing::Drawing> drawing_of(const Call& call, const project::Project& project) {
  const std::string& what = call.names.at(1);
  if (what != "flat" && what != "worn")
    return Problem{ProblemCode::not_found, "drawing", quote(what), "flat or worn"};
  const auto sizes = strung(call, project);
  if (!sizes) return sizes.problem();
  const project::StrungSize& size = sizes->sizes.front();
  if (what == "flat") return drawing::strand_flat(project, sizes->strung, size.fit, size.curve);
  return drawing::strand_worn(project, sizes->strung, size.fit);
}

Response draw_strand(Studio& studio, const Call& call) {
  return with_session(studio, call, [&](Session& session) {
    const State state = session.state();
    const auto drawing = drawing_of(call, *state.project);
    return of_revision(svg_response(drawing), state.revision);
  });
}

Response read_layout(Studio& studio, const Call& call) {
  return with_session(studio, call, [&](Session& session) {
    const State state = session.state();
    return of_revision(json_response(layout_json(*state.project)), state.revision);
  });
}

Result<Json> placements(const Call& call, const project::Project& project) {
  const std::string lie = call.query("lie", "worn");
  if (lie != "flat" && lie != "worn")
    return Problem{ProblemCode::unknown_name, "lie", quote(lie), "flat or worn"};
  const auto sizes = strung(call, project);
  if (!sizes) return sizes.problem();
  const project::StrungSize& size = sizes->sizes.front();
  if (lie == "flat")
    return placements_json(project, *sizes, size, strand::placed_flat(sizes->strung, size.fit, size.curve));
  const auto placed = strand::placed_worn(sizes->strung, size.fit, size.curve, sizes->lean);
  if (!placed) return placed.problem();
  return placements_json(project, *sizes, size, *placed);
}

Response read_placements(Studio& studio, const Call& call) {
  return with_session(studio, call, [&](Session& session) {
    const State state = session.state();
    const auto json = placements(call, *state.project);
    return of_revision(json ? json_response(*json) : problem_response(json.problem()), state.revision);
  });
}

constexpr Route routes[] = {
    {"GET", "/api/projects/{project}/strand", no_body, read_strand},
    {"GET", "/api/projects/{project}/strand/layout", no_body, read_layout},
    {"GET", "/api/projects/{project}/strand/placements", no_body, read_placements},
    {"GET", "/api/projects/{project}/strand/drawings/{drawing}", no_body, draw_strand},
};

}  // namespace

std::span<const Route> strand_routes() {
  return routes;
}

}  // namespace evencount::app::studio
