#include "app/reports.hpp"
#include "app/studio/band_view.hpp"
#include "app/verbs/make_fit.hpp"
#include "base/text.hpp"
#include "drawing/section_drawing.hpp"
#include "form/explain.hpp"
#include "language/language.hpp"
#include "weave/technique.hpp"

namespace evencount::app::studio {
namespace {

Json bead_json(const bead::Size& size) {
  return {{"id", size.id},
          {"name", bead::trade_name(size)},
          {"kind", bead::kind_name(size.kind)},
          {"diameter_mm", rounded(size.diameter.mm(), 4)},
          {"length_mm", rounded(size.length.mm(), 4)},
          {"hole_mm", rounded(size.hole.mm(), 4)},
          {"rim_mm", rounded(bead::rim(size).mm(), 4)},
          {"beads_per_gram", rounded(size.beads_per_gram, 3)}};
}

Json technique_json(const weave::Technique& technique) {
  Json closures = Json::array();
  for (const weave::Closure closure : technique.closures) closures.push_back(weave::closure_name(closure));
  const weave::Lattice lattice = technique.lattice(12, 12);
  return {{"id", technique.id},
          {"name", technique.name},
          {"closures", std::move(closures)},
          {"note", technique.note ? language::english().text(technique.note) : std::string_view()},
          {"drop", lattice.drop},
          {"holes", lattice.holes == weave::Holes::across  ? "across"
                    : lattice.holes == weave::Holes::along ? "along"
                                                           : "round_squares"},
          {"round", lattice.round}};
}

/// A form's kind, how it is written, and an example to begin with.
struct FormExample {
  form::FormKind kind;
  std::string_view sizes, example;
};
constexpr FormExample form_examples[] = {
    {form::FormKind::lens, "width x thickness x length", "lens:17x5x9"},
    {form::FormKind::round, "diameter x length", "round:12x20"},
    {form::FormKind::oval, "width x height x length", "oval:18x13x5"},
    {form::FormKind::bar, "width x thickness x length", "bar:20x4x10"},
    {form::FormKind::dome, "width x height x length", "dome:20x6x10"},
    {form::FormKind::bangle, "outer diameter x width", "bangle:66x12"},
    {form::FormKind::ring, "inner circumference", "ring:54"},
    {form::FormKind::wrist, "circumference", "wrist:165"},
};

Response tables(Studio&, const Call&) {
  Json beads = Json::array(), threads = Json::array(), forms = Json::array(), techniques = Json::array(),
       finishes = Json::array();
  for (const bead::Size& size : bead::sizes()) beads.push_back(bead_json(size));
  for (const bead::Thread& thread : bead::threads())
    threads.push_back(
        {{"id", thread.id}, {"name", thread.name}, {"diameter_mm", rounded(thread.diameter.mm(), 4)}});
  for (const FormExample& form : form_examples)
    forms.push_back({{"kind", form::kind_name(form.kind)}, {"sizes", form.sizes}, {"example", form.example}});
  for (const weave::Technique& technique : weave::techniques())
    techniques.push_back(technique_json(technique));
  for (const bead::Finish finish : bead::finishes) finishes.push_back(bead::finish_name(finish));
  return json_response({{"beads", std::move(beads)},
                        {"threads", std::move(threads)},
                        {"forms", std::move(forms)},
                        {"techniques", std::move(techniques)},
                        {"finishes", std::move(finishes)}});
}

/// What is asked of a fit, from a query. No file is ever read: a form is a notation here.
Result<FitReport> fit_of(const Call& call, std::string& warning) {
  FitArguments arguments;
  arguments.form = call.query("form"), arguments.bead = call.query("bead"),
  arguments.thread = call.query("thread");
  arguments.gauge = call.query("gauge"), arguments.swatch = call.query("swatch"),
  arguments.use = call.query("use", "fixed");
  arguments.stitch = call.query("stitch", "peyote"), arguments.parity = call.query("parity"),
  arguments.reveal = call.query("reveal");
  arguments.cord = call.query("cord");
  if (const std::string finished = call.query("finished"); !finished.empty()) arguments.finished = {finished};
  if (call.request.head.query.contains("columns")) {
    const auto columns = call.whole("columns", 1, chart::most_columns);
    if (!columns) return columns.problem();
    arguments.columns = static_cast<int>(*columns);
  }
  const auto together = call.whole("together", 1, 100, 1);
  if (!together) return together.problem();
  arguments.together = static_cast<int>(*together);
  const auto form = form::parse_form(arguments.form);
  if (!form) return form.problem();
  return make_fit(arguments, *form, warning);
}

Response fit(Studio&, const Call& call) {
  std::string warning;
  const auto report = fit_of(call, warning);
  if (!report) return problem_response(report.problem());
  Json json = to_json(*report);
  const auto words = form::explain(report->fit, report->bead);
  json["words"] = words ? Json(*words) : Json(nullptr);
  json["warning"] = warning.empty() ? Json(nullptr) : Json(warning);
  return json_response(json);
}

Response fit_section(Studio&, const Call& call) {
  std::string warning;
  const auto report = fit_of(call, warning);
  if (!report) return problem_response(report.problem());
  return svg_response(drawing::section_drawing(report->fit, report->bead));
}

Response read_words(Studio&, const Call& call) {
  const auto bands = wording::read_words(call.request.body);
  if (!bands) return problem_response(bands.problem());
  Json json = Json::array();
  for (const wording::ReadBand& band : *bands) json.push_back(read_band_json(band));
  return json_response({{"bands", std::move(json)}});
}

constexpr Route routes[] = {
    {"GET", "/api/tables", no_body, tables},
    {"GET", "/api/fit", no_body, fit},
    {"GET", "/api/fit/section", no_body, fit_section},
    {"POST", "/api/read", small_body, read_words},
};

}  // namespace

std::span<const Route> table_routes() {
  return routes;
}

}  // namespace evencount::app::studio
