#include <fmt/format.h>

#include <algorithm>

#include "app/reports.hpp"
#include "app/stock_source.hpp"
#include "app/studio/band_view.hpp"
#include "app/verbs/make_fit.hpp"
#include "app/verbs/supplies_answer.hpp"
#include "base/text.hpp"
#include "chart/edit.hpp"
#include "page/fonts.hpp"
#include "weave/technique.hpp"

namespace evencount::app::studio {
namespace {

constexpr std::int64_t most_kits = 100'000;

/// A page that shows the row in hand needs none of the other thousand.
Json lines_of_row(const Json& lines, std::int64_t row) {
  Json those = Json::array();
  for (const Json& line : lines)
    if (line["first_row"] <= row && row <= line["last_row"]) those.push_back(line);
  return those;
}

Response words(Studio& studio, const Call& call) {
  return of_band(studio, call, [&](const BandView& view) {
    const auto plan = project::plan_of(view.band());
    if (!plan) return problem_response(plan.problem());
    const bool fold = call.query("fold") == "true";
    const auto chart =
        wording::write_words(*plan, project::letters_of(view.project()), view.band().name, {fold, fold});
    Json json = words_json(view.band().name, chart, wording::closing_note(*plan));
    if (const auto row = call.whole("row", 0, chart::most_edge * 2LL, 0); !row)
      return problem_response(row.problem());
    else if (*row > 0)
      json["lines"] = lines_of_row(json["lines"], *row);
    json["heading"] = chart.heading;
    json["technique_note"] = wording::technique_note(*plan);
    json["turn_note"] = wording::turn_note(*plan);
    return json_response(json);
  });
}

/// The cells of a row in the order of stringing: column, step, column, step …
Json cells_of(const weave::Plan& plan, const weave::Row& row) {
  Json cells = Json::array();
  for (std::size_t i = row.first_stitch; i < row.end_stitch; ++i)
    if (const weave::Stitch& stitch = plan.stitches[i]; stitch.act == weave::Act::pick_up)
      cells.push_back(stitch.cell.column), cells.push_back(stitch.cell.step);
  return cells;
}

std::string_view travel_name(weave::Travel travel) {
  switch (travel) {
    case weave::Travel::left:
      return "left";
    case weave::Travel::right:
      return "right";
    case weave::Travel::forth:
      return "forth";
    case weave::Travel::back:
      return "back";
  }
  return "";
}

Response rows(Studio& studio, const Call& call) {
  return of_band(studio, call, [](const BandView& view) {
    const auto plan = project::plan_of(view.band());
    if (!plan) return problem_response(plan.problem());
    Json json = Json::array();
    for (const weave::Row& row : plan->rows)
      json.push_back({{"name", weave::row_name(row)},
                      {"first_row", row.first_number},
                      {"last_row", row.last_number},
                      {"picks_up", weave::has_beads(row.kind)},
                      {"travel", travel_name(row.travel)},
                      {"on_back", row.on_back},
                      {"cells", cells_of(*plan, row)}});
    return json_response({{"rows", std::move(json)}});
  });
}

Response thread(Studio& studio, const Call& call) {
  return of_band(studio, call, [](const BandView& view) {
    project::Project alone = view.project();
    alone.bands = {view.band()};
    const auto threads = project::band_threads(alone);
    if (!threads) return problem_response(threads.problem());
    return json_response(thread_json(threads->front()));
  });
}

/// What a fit is asked for the band, as the command line would.
Result<FitReport> fit_report(const BandView& view, std::string& warning) {
  const project::Band& band = view.band();
  const auto* form = band.form ? project::find_form(view.project(), *band.form) : nullptr;
  if (!form)
    return Problem{ProblemCode::missing_field, "form", "a band without a form",
                   "a band that goes round a form"};
  FitArguments arguments;
  arguments.bead = band.bead;
  arguments.use = form::use_name(band.use);
  arguments.columns = band.chart.columns();
  if (band.closure == weave::Closure::sew) arguments.stitch = "square";
  const bead::Gauge gauge = project::gauge_of(view.project(), band);
  arguments.gauge = fmt::format("{}x{}", gauge.column.mm(), gauge.edge.mm());
  return make_fit(arguments, form->form, warning);
}

Response band_fit(Studio& studio, const Call& call) {
  return of_band(studio, call, [](const BandView& view) {
    std::string warning;
    const auto report = fit_report(view, warning);
    return report ? json_response(to_json(*report)) : problem_response(report.problem());
  });
}

Result<form::Faces> faces_of(const BandView& view) {
  const project::Band& band = view.band();
  const auto* form = band.form ? project::find_form(view.project(), *band.form) : nullptr;
  if (!form || !weave::closes_round_edge(band.closure))
    return Problem{ProblemCode::missing_field, "form", "a band that is not closed round a form",
                   "one that is"};
  return form::faces(form->form, project::find_bead(view.project(), band.bead)->diameter, band.chart.edge());
}

Response faces(Studio& studio, const Call& call) {
  return of_band(studio, call, [](const BandView& view) {
    const auto faces = faces_of(view);
    if (!faces) return problem_response(faces.problem());
    Json json = faces_json(*faces);
    json["edge"] = faces->edge;
    Json seats = Json::array();
    for (const form::Seat& seat : faces->seats)
      seats.push_back({rounded(seat.centre.x_mm, 4), rounded(seat.centre.y_mm, 4),
                       rounded(seat.normal.x_mm, 5), rounded(seat.normal.y_mm, 5)});
    json["seats"] = std::move(seats);
    return json_response(json);
  });
}

Response shape(Studio& studio, const Call& call) {
  return of_band(studio, call, [](const BandView& view) {
    const auto technique = weave::find_technique(view.band().technique);
    if (!technique) return problem_response(technique.problem());
    const auto lattice = technique->lattice(view.band().chart.columns(), view.band().chart.edge());
    const bead::Gauge gauge = project::gauge_of(view.project(), view.band());
    Json symmetries = Json::array();
    for (const auto symmetry :
         chart::symmetries(view.band().chart, weave::grid_of(lattice, view.band().closure))) {
      std::string name(chart::symmetry_name(symmetry));
      std::replace(name.begin(), name.end(), ' ', '_');
      symmetries.push_back(std::move(name));
    }
    const auto plan = project::plan_of(view.band());
    return json_response({{"columns", lattice.columns},
                          {"edge", lattice.edge},
                          {"drop", lattice.drop},
                          {"holes", lattice.holes == weave::Holes::across  ? "across"
                                    : lattice.holes == weave::Holes::along ? "along"
                                                                           : "round_squares"},
                          {"round", lattice.round},
                          {"rise", lattice.rise},
                          {"gauge",
                           {{"column_mm", rounded(gauge.column.mm(), 4)},
                            {"edge_mm", rounded(gauge.edge.mm(), 4)},
                            {"source", gauge.source}}},
                          {"symmetries", std::move(symmetries)},
                          {"rows", plan ? Json(weave::row_count(*plan)) : Json(nullptr)},
                          {"problem", plan ? Json(nullptr) : Json(message(plan.problem()))}});
  });
}

/// As `supplies --price --json` for this project alone.
Result<SuppliesAnswer> supplies_of(const Call& call, const project::Project& project) {
  const auto kits = call.whole("kits", 1, most_kits, 1);
  if (!kits) return kits.problem();
  SuppliesArguments arguments;
  arguments.kits = static_cast<int>(*kits), arguments.size = call.query("size");
  arguments.price = true, arguments.pick = call.query("pick") == "true";
  if (const std::string swap = call.query("swap"); !swap.empty()) arguments.swaps = {swap};
  const auto stock = stock_items({.file = "", .own = call.query("stock") == "true"}, "");
  if (!stock) return of_own_stock(stock.problem());
  SuppliesAnswer answer;
  answer.projects = {project};
  answer.settings = project::settings_of(answer.projects);
  return work_out_supplies(std::move(answer), arguments, *stock);
}

Response supplies(Studio& studio, const Call& call) {
  return with_session(studio, call, [&](Session& session) {
    const State state = session.state();
    const auto answer = supplies_of(call, *state.project);
    return of_revision(answer ? json_response(supplies_json(*answer)) : problem_response(answer.problem()),
                       state.revision);
  });
}

/// The word charts of all bands, as `evencount words` prints them.
Response all_words(Studio& studio, const Call& call) {
  return with_session(studio, call, [&](Session& session) {
    const State state = session.state();
    const auto letters = project::letters_of(*state.project);
    Response response;
    response.type = "text/plain; charset=utf-8";
    for (const project::Band& band : state.project->bands) {
      const auto plan = project::plan_of(band);
      if (!plan) return problem_response(plan.problem());
      const bool fold = call.query("fold") == "true";
      response.body += (response.body.empty() ? "" : "\n") + words_text(*plan, letters, band.name, fold);
    }
    return of_revision(std::move(response), state.revision);
  });
}

Response check(Studio& studio, const Call& call) {
  return with_session(studio, call, [&](Session& session) {
    const Proofs::Proof proof =
        studio.proofs.of(call.names[0], session, [](const project::Project& project) {
          return json_response(proof_json(project, page::proof_for_print(project))).body;
        });
    Response response;
    response.body = proof.text;
    return of_revision(std::move(response), proof.revision);
  });
}

constexpr Route routes[] = {
    {"GET", "/api/projects/{project}/supplies", no_body, supplies},
    {"GET", "/api/projects/{project}/proof", no_body, check},
    {"GET", "/api/projects/{project}/words", no_body, all_words},
    {"GET", "/api/projects/{project}/bands/{band}/shape", no_body, shape},
    {"GET", "/api/projects/{project}/bands/{band}/words", no_body, words},
    {"GET", "/api/projects/{project}/bands/{band}/rows", no_body, rows},
    {"GET", "/api/projects/{project}/bands/{band}/thread", no_body, thread},
    {"GET", "/api/projects/{project}/bands/{band}/fit", no_body, band_fit},
    {"GET", "/api/projects/{project}/bands/{band}/faces", no_body, faces},
};

}  // namespace

Result<BandView> band_view(Studio& studio, const Call& call) {
  const auto session = studio.library.session(call.names.at(0));
  if (!session) return session.problem();
  BandView view{(*session)->state(), 0};
  const auto position = parse_integer(call.names.at(1));
  const auto count = static_cast<std::int64_t>(view.project().bands.size());
  if (!position || *position < 0 || *position >= count)
    return Problem{ProblemCode::not_found, "band", quote(call.names.at(1)),
                   fmt::format("a band's position, below {}", count)};
  view.position = static_cast<int>(*position);
  return view;
}

std::span<const Route> view_routes() {
  return routes;
}

}  // namespace evencount::app::studio
