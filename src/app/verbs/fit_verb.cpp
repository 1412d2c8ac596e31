#include <fmt/ostream.h>

#include "app/drawing_file.hpp"
#include "app/form_argument.hpp"
#include "app/verbs.hpp"
#include "app/verbs/fit_report.hpp"
#include "app/verbs/fit_request.hpp"
#include "app/verbs/make_fit.hpp"
#include "base/text.hpp"
#include "drawing/section_drawing.hpp"
#include "form/explain.hpp"
#include "form/ring_start.hpp"

namespace evencount::app {
namespace {

constexpr std::string_view stone_prefix = "stone:";
constexpr std::string_view usual_draw_in = "round-15";

int draw_section(const FitReport& report, const std::string& path, const Console& console) {
  const auto drawing = drawing::section_drawing(report.fit, report.bead);
  if (!drawing) return console.fail(drawing.problem());
  return write_drawing(*drawing, form::describe(report.fit.form), path, {}, console);
}

int fit_one(const FitArguments& arguments, const form::Form& form, const Console& console) {
  std::string warning;
  const auto report = make_fit(arguments, form, warning);
  if (!report) return console.fail(report.problem());
  if (!warning.empty()) fmt::print(console.err, "evencount: {}\n", warning);
  const form::Fit& fit = report->fit;
  if (!arguments.drawing.empty())
    if (const int status = draw_section(*report, arguments.drawing, console); status != exit_done)
      return status;
  if (!arguments.keep.empty())
    if (const auto kept = keep_gauge(arguments, report->bead, fit.gauge); !kept)
      return console.fail(kept.problem());
  if (arguments.json) {
    print(console.out, to_json(*report));
  } else if (arguments.explain) {
    const auto text = form::explain(fit, report->bead);
    if (!text) return console.fail(text.problem());
    console.out << *text;
  } else {
    print(*report, console.out);
  }
  return form::closes(fit.verdict) ? exit_done : exit_findings;
}

/// Every bead size; those that the form has no room for are named on the other stream.
int fit_table(const FitArguments& arguments, const form::Form& form, const Console& console) {
  std::vector<form::Fit> fits;
  for (const bead::Size& size : bead::sizes()) {
    std::string warning;
    const auto request = fit_request(arguments, form, size, warning);
    if (!request) return console.fail(request.problem());
    auto fit = form::fit(*request);
    if (fit)
      fits.push_back(std::move(*fit));
    else
      fmt::print(console.err, "{}: {}\n", size.id, message(fit.problem()));
  }
  if (arguments.json)
    print(console.out, to_json(fits));
  else
    print(fits, console.out);
  for (const form::Fit& fit : fits)
    if (form::closes(fit.verdict)) return exit_done;
  return exit_findings;
}

int fit_ring(const FitArguments& arguments, const form::Form& form, const Console& console) {
  const auto size = bead_argument(arguments);
  if (!size) return console.fail(size.problem());
  std::string warning;
  const auto gauge = gauge_argument(arguments, *size, warning);
  if (!gauge) return console.fail(gauge.problem());
  const auto ring = form::ring_start(form, *size, *gauge);
  if (!ring) return console.fail(ring.problem());
  if (arguments.json) {
    print(console.out, {{"form", form::to_notation(form)},
                        {"bead", size->id},
                        {"ring_beads", ring->beads},
                        {"strain", rounded(ring->strain, 5)}});
  } else {
    fmt::print(console.out,
               "{}: {} {}s strung round it, the holes running round the form ({:+.1f}% of strain)\n",
               form::describe(form), ring->beads, bead::trade_name(*size), 100 * ring->strain);
  }
  return exit_done;
}

int fit_bezel(const FitArguments& arguments, const Console& console) {
  const auto stone = form::parse_stone(arguments.form);
  if (!stone) return console.fail(stone.problem());
  const auto size = bead_argument(arguments);
  if (!size) return console.fail(size.problem());
  const auto small = bead::find_size(arguments.draw_in.empty() ? usual_draw_in : arguments.draw_in);
  if (!small) return console.fail(small.problem().within("draw-in"));
  const auto thread = thread_argument(arguments);
  if (!thread) return console.fail(thread.problem());
  std::string warning;
  const auto gauge = gauge_argument(arguments, *size, warning);
  if (!gauge) return console.fail(gauge.problem());
  form::BezelRequest request;
  request.stone = *stone;
  request.bead = *size;
  request.gauge = *gauge;
  request.draw_in = {{*small, bead::default_gauge(*small, *thread), 0}};
  const auto bezel = form::bezel(request);
  if (!bezel) return console.fail(bezel.problem());
  if (arguments.json)
    print(console.out, to_json(*bezel));
  else
    print(*bezel, *stone, console.out);
  return form::holds(*bezel) ? exit_done : exit_findings;
}

}  // namespace

int fit_verb(const FitArguments& arguments, const Console& console) {
  if (arguments.form.starts_with(stone_prefix)) return fit_bezel(arguments, console);
  const auto form =
      form_argument(arguments.form, arguments.bridge ? form::Dents::bridge : form::Dents::refuse);
  if (!form) return console.fail(form.problem());
  if (arguments.ring) return fit_ring(arguments, *form, console);
  if (arguments.table) return fit_table(arguments, *form, console);
  return fit_one(arguments, *form, console);
}

}  // namespace evencount::app
