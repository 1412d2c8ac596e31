#include <fmt/ostream.h>

#include "app/json_text.hpp"
#include "app/verbs.hpp"
#include "base/text.hpp"
#include "bead/thread.hpp"
#include "form/fit.hpp"

namespace evencount::app {
namespace {

Result<form::FitRequest> request_from(const FitArguments& arguments) {
  auto shape = form::parse_form(arguments.form);
  if (!shape) return shape.problem();
  auto size = bead::find_size(arguments.bead);
  if (!size) return size.problem();
  auto thread = arguments.thread.empty() ? Result<bead::Thread>(bead::threads().front())
                                         : bead::find_thread(arguments.thread);
  if (!thread) return thread.problem();
  auto gauge = arguments.gauge.empty() ? Result<bead::Gauge>(bead::default_gauge(*size, *thread))
                                       : bead::parse_gauge(arguments.gauge);
  if (!gauge) return gauge.problem();
  auto use = form::parse_use(arguments.use);
  if (!use) return use.problem();
  form::FitRequest request;
  request.form = *shape;
  request.bead = *size;
  request.gauge = *gauge;
  request.use = *use;
  request.columns = arguments.columns;
  return request;
}

Json to_json(const form::Fit& fit) {
  Json candidates = Json::array();
  for (const form::FitCandidate& candidate : fit.candidates) {
    candidates.push_back({{"edge", candidate.edge},
                          {"rows", candidate.rows},
                          {"strain", rounded(candidate.strain, 5)},
                          {"slack_mm", rounded(candidate.slack.mm(), 3)},
                          {"chance", rounded(candidate.chance, 4)},
                          {"verdict", form::verdict_name(candidate.verdict)},
                          {"closes", form::closes(candidate.verdict)},
                          {"smallest_strain", rounded(candidate.smallest_strain, 5)},
                          {"largest_strain", rounded(candidate.largest_strain, 5)}});
  }
  return {{"form", form::to_notation(fit.form)},
          {"bead", fit.bead},
          {"gauge",
           {{"column_mm", rounded(fit.gauge.column.mm(), 4)},
            {"edge_mm", rounded(fit.gauge.edge.mm(), 4)},
            {"source", fit.gauge.source}}},
          {"use", form::use_name(fit.use)},
          {"columns", fit.columns},
          {"edge", fit.edge},
          {"rows", fit.rows},
          {"beads", fit.beads},
          {"width_mm", rounded(fit.width.mm(), 3)},
          {"reveal_mm", fit.reveal ? Json(rounded(fit.reveal->mm(), 3)) : Json(nullptr)},
          {"verdict", form::verdict_name(fit.verdict)},
          {"candidates", std::move(candidates)}};
}

void print_table(const form::Fit& fit, const bead::Size& size, std::ostream& out) {
  fmt::print(out, "{}, {} band of {}s\n", form::describe(fit.form), form::use_name(fit.use),
             bead::trade_name(size));
  fmt::print(out, "gauge {} mm a column, {} mm along the edge ({})\n\n",
             plain_number(fit.gauge.column.mm(), 3), plain_number(fit.gauge.edge.mm(), 3), fit.gauge.source);
  fmt::print(out, "{} columns: {} mm wide", fit.columns, plain_number(fit.width.mm()));
  if (fit.reveal)
    fmt::print(out, ", {} mm of the form left bare on each side", plain_number(fit.reveal->mm()));
  fmt::print(out, "\n\n  along the edge   rows   strain    slack   closes   verdict\n");
  for (const form::FitCandidate& candidate : fit.candidates) {
    fmt::print(out, "  {:>14}   {:>4}   {:>+5.1f}%  {:>+5.2f} mm   {:>4}%   {}\n", candidate.edge,
               candidate.rows, 100 * candidate.strain, candidate.slack.mm(),
               fixed_number(100 * candidate.chance, 0), form::verdict_text(candidate.verdict, fit.use));
  }
  if (form::closes(fit.verdict))
    fmt::print(out, "\n{} along the edge: {} rows, {} beads.\n", fit.edge, fit.rows, fit.beads);
  else
    fmt::print(out, "\nNo number of these beads closes well round this form for a {} band.\n",
               form::use_name(fit.use));
}

}  // namespace

int fit_verb(const FitArguments& arguments, const Console& console) {
  const auto request = request_from(arguments);
  if (!request) return console.fail(request.problem());
  const auto fit = form::fit(*request);
  if (!fit) return console.fail(fit.problem());
  if (arguments.json)
    print(console.out, to_json(*fit));
  else
    print_table(*fit, request->bead, console.out);
  return form::closes(fit->verdict) ? exit_done : exit_findings;
}

}  // namespace evencount::app
