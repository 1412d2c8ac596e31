#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"
#include "form/fit.hpp"
#include "proof/checks.hpp"

namespace evencount::proof {
namespace {

using project::Band;
using project::Project;

Result<form::Fit> fit_of(const Project& project, const Band& band) {
  form::FitRequest request;
  request.form = project::find_form(project, *band.form)->form;
  request.bead = *project::find_bead(project, band.bead);
  request.gauge = project::gauge_of(project, band);
  request.use = band.use;
  request.columns = band.chart.columns();
  if (band.closure == weave::Closure::sew) request.ends = form::Ends::sewn;
  return form::fit(request);
}

/// "25 (50 rows) would be snug": what to change the edge to.
std::string better_edge(const form::Fit& fit, int edge) {
  if (!form::closes(fit.verdict))
    return "No number of beads along the edge closes and stays on this form; another bead, thread or form is "
           "needed.";
  if (fit.edge == edge) return "No other number of beads along the edge fits better.";
  return fmt::format("{} along the edge ({} rows) fits: {}.", fit.edge, fit.rows,
                     form::verdict_text(fit.verdict, fit.use));
}

/// The verdict on the band as it is. Lengths beyond the listed candidates are worse than the last of them.
form::Verdict verdict_of(const form::Fit& fit, int edge) {
  int fewest = fit.candidates.front().edge;
  for (const form::FitCandidate& candidate : fit.candidates) {
    if (candidate.edge == edge) return candidate.verdict;
    fewest = std::min(fewest, candidate.edge);
  }
  return edge < fewest ? form::Verdict::too_tight : form::Verdict::too_loose;
}

std::optional<Severity> severity_of(form::Verdict verdict, form::Use use) {
  switch (verdict) {
    case form::Verdict::too_tight:
    case form::Verdict::too_loose:
      return Severity::error;
    case form::Verdict::tight:
      return Severity::warning;
    case form::Verdict::easy:  // what a sliding band should be
      if (use == form::Use::fixed) return Severity::warning;
      return std::nullopt;
    case form::Verdict::snug:
      return std::nullopt;
  }
  return std::nullopt;
}

}  // namespace

void check_fit(const Project& project, Findings& findings) {
  for (const Band& band : project.bands) {
    if (!band.form || !weave::closes_round_edge(band.closure) || !plan_if_any(project, band)) continue;
    const auto fit = fit_of(project, band);
    if (!fit) {
      findings.push_back({Severity::error, "fit", band_place(band),
                          fmt::format("It can't go round its form: {}.", message(fit.problem()))});
      continue;
    }
    const form::Verdict verdict = verdict_of(*fit, band.chart.edge());
    const auto severity = severity_of(verdict, band.use);
    if (!severity) continue;
    findings.push_back(
        {*severity, "fit", band_place(band),
         fmt::format("With {} beads along the edge it is {}. {}", band.chart.edge(),
                     form::verdict_text(verdict, band.use), better_edge(*fit, band.chart.edge()))});
  }
}

void check_width(const Project& project, Findings& findings) {
  for (const Band& band : project.bands) {
    if (!band.form || band.closure == weave::Closure::round || !is_sound(project, band)) continue;
    const auto length = project::find_form(project, *band.form)->form.length_along_holes;
    if (!length) continue;
    const Length width = band.chart.columns() * project::gauge_of(project, band).column;
    const Length reveal = (*length - width) / 2;
    if (reveal >= form::FitRequest{}.least_reveal) continue;
    const bool wider = width > *length;
    findings.push_back(
        {wider ? Severity::error : Severity::warning, "width", band_place(band),
         fmt::format(
             "It is {} mm wide and its form {} mm long, so {}. Take columns away or choose a longer form.",
             plain_number(width.mm()), plain_number(length->mm()),
             wider ? "it stands out at the ends" : "next to nothing of the form is left to see beside it")});
  }
}

}  // namespace evencount::proof
