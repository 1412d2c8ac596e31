#include "app/verbs/fit_report.hpp"

#include <fmt/ostream.h>

#include <cmath>

#include "base/text.hpp"

namespace evencount::app {
namespace {

Json candidates_json(const form::Fit& fit) {
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
  return candidates;
}

Json fit_json(const form::Fit& fit) {
  return {{"form", form::to_notation(fit.form)},
          {"bead", fit.bead},
          {"gauge",
           {{"column_mm", rounded(fit.gauge.column.mm(), 4)},
            {"edge_mm", rounded(fit.gauge.edge.mm(), 4)},
            {"uncertainty", fit.gauge.uncertainty ? Json(rounded(*fit.gauge.uncertainty, 5)) : Json(nullptr)},
            {"source", fit.gauge.source}}},
          {"use", form::use_name(fit.use)},
          {"columns", fit.columns},
          {"edge", fit.edge},
          {"rows", fit.rows},
          {"beads", fit.beads},
          {"width_mm", rounded(fit.width.mm(), 3)},
          {"reveal_mm", fit.reveal ? Json(rounded(fit.reveal->mm(), 3)) : Json(nullptr)},
          {"verdict", form::verdict_name(fit.verdict)},
          {"candidates", candidates_json(fit)}};
}

Json keeping_json(const Keeping& keeping) {
  Json json = {{"holes", keeping.holes.count},
               {"hole_mm", rounded(keeping.holes.diameter.mm(), 3)},
               {"hole_spacing_mm", rounded(keeping.holes.spacing.mm(), 3)},
               {"holes_given", keeping.holes_given},
               {"widest_cord_mm", rounded(keeping.widest_cord.mm(), 3)}};
  if (keeping.stop) {
    Json sizes = Json::array();
    for (const bead::Size& size : keeping.stops) sizes.push_back(size.id);
    json["stop_bead"] = {{"smallest_mm", rounded(keeping.stop->smallest.mm(), 3)},
                         {"catches_mm", rounded(keeping.stop->catches.mm(), 3)},
                         {"holds_straight_mm", rounded(keeping.stop->holds_straight.mm(), 3)},
                         {"holds_bent_mm", rounded(keeping.stop->holds_bent.mm(), 3)},
                         {"sizes", std::move(sizes)}};
  }
  if (!keeping.fastenings.empty()) {
    Json ways = Json::array();
    for (const form::WayToFix& way : keeping.fastenings)
      ways.push_back({{"fastening", form::fastening_name(way.fastening)}, {"words", way.words}});
    json["fastenings"] = std::move(ways);
  }
  return json;
}

void print_faces(const form::Faces& faces, std::ostream& out) {
  if (faces.windows.empty()) return;
  fmt::print(out, "\nFaces (steps counted from the seam)\n");
  for (const form::Window& window : faces.windows) {
    fmt::print(out, "  {:<5}  steps {} to {}: {} beads tall", form::side_name(window.side), window.first_step,
               window.first_step + window.steps - 1, window.steps);
    if (const int slide = form::slide_to_front(faces, window); slide != 0)
      fmt::print(out, "; comes to the front when slid by {} beads", std::abs(slide));
    fmt::print(out, "\n");
  }
}

void print_keeping(const Keeping& keeping, const form::Fit& fit, std::ostream& out) {
  fmt::print(out, "\nStaying on\n");
  const std::string holes =
      keeping.holes.count == 2
          ? fmt::format("two holes of {} mm, {} mm apart", plain_number(keeping.holes.diameter.mm()),
                        plain_number(keeping.holes.spacing.mm()))
          : fmt::format("one hole of {} mm", plain_number(keeping.holes.diameter.mm()));
  fmt::print(out, "  {}{}; a cord of up to {} mm passes\n", holes,
             keeping.holes_given ? "" : " (as usual; give holes= and hole= if yours differ)",
             plain_number(keeping.widest_cord.mm()));
  if (keeping.stop) {
    std::string sizes;
    for (const bead::Size& size : keeping.stops)
      sizes += (sizes.empty() ? "" : ", ") + bead::trade_name(size);
    fmt::print(out, "  stop beads of {} mm or more next to each end keep this band on{}\n",
               plain_number(keeping.stop->smallest.mm(), 1),
               sizes.empty() ? "; no seed bead here is that large" : ": " + sizes);
    fmt::print(out, "  smaller ones, down to {} mm, only catch it: it can be pushed over them\n",
               plain_number(keeping.stop->catches.mm(), 1));
  } else if (keeping.fastenings.empty()) {
    fmt::print(out, "  a {} band stays by itself\n", form::verdict_name(fit.verdict));
  }
  for (const form::WayToFix& way : keeping.fastenings) fmt::print(out, "  {}\n", way.words);
}

}  // namespace

Json faces_json(const form::Faces& faces) {
  Json windows = Json::array(), seats = Json::array();
  for (const form::Window& window : faces.windows)
    windows.push_back({{"side", form::side_name(window.side)},
                       {"first_step", window.first_step},
                       {"steps", window.steps},
                       {"slide_to_front", form::slide_to_front(faces, window)}});
  for (const form::Seat& seat : faces.seats)
    seats.push_back(
        {{"side", form::side_name(seat.side)}, {"foreshortening", rounded(seat.foreshortening, 4)}});
  return {{"windows", std::move(windows)}, {"half_steps", std::move(seats)}};
}

Json to_json(const FitReport& report) {
  Json json = fit_json(report.fit);
  if (report.faces) json["faces"] = faces_json(*report.faces);
  if (report.keeping) json["staying_on"] = keeping_json(*report.keeping);
  return json;
}

void print(const FitReport& report, std::ostream& out) {
  const form::Fit& fit = report.fit;
  fmt::print(out, "{}, {} band of {}s\n", form::describe(fit.form), form::use_name(fit.use),
             bead::trade_name(report.bead));
  fmt::print(out, "gauge {} mm a column, {} mm along the edge ({})\n\n",
             plain_number(fit.gauge.column.mm(), 3), plain_number(fit.gauge.edge.mm(), 3), fit.gauge.source);
  fmt::print(out, "{} columns: {} mm wide", fit.columns, plain_number(fit.width.mm()));
  if (fit.reveal && fit.reveal->mm() >= 0)
    fmt::print(out, ", {} mm of the form left bare on each side", plain_number(fit.reveal->mm()));
  if (fit.reveal && fit.reveal->mm() < 0)
    fmt::print(out, ", {} mm over the form on each side", plain_number(-fit.reveal->mm()));
  fmt::print(out, "\n\n  along the edge   rows   strain    slack   closes   verdict\n");
  for (const form::FitCandidate& candidate : fit.candidates)
    fmt::print(out, "  {:>14}   {:>4}   {:>+5.1f}%  {:>+5.2f} mm   {:>4}%   {}\n", candidate.edge,
               candidate.rows, 100 * candidate.strain, candidate.slack.mm(),
               fixed_number(100 * candidate.chance, 0), form::verdict_text(candidate.verdict, fit.use));
  if (!form::closes(fit.verdict)) {
    fmt::print(out, "\nNo number of these beads closes well round this form for a {} band.\n",
               form::use_name(fit.use));
    return;
  }
  fmt::print(out, "\n{} along the edge: {} rows, {} beads.\n", fit.edge, fit.rows, fit.beads);
  if (report.faces) print_faces(*report.faces, out);
  if (report.keeping) print_keeping(*report.keeping, fit, out);
}

Json to_json(const std::vector<form::Fit>& fits) {
  Json rows = Json::array();
  for (const form::Fit& fit : fits) rows.push_back(fit_json(fit));
  return {{"fits", std::move(rows)}};
}

void print(const std::vector<form::Fit>& fits, std::ostream& out) {
  if (fits.empty()) return;
  fmt::print(out, "{}, {} band, default gauges\n\n", form::describe(fits.front().form),
             form::use_name(fits.front().use));
  fmt::print(out, "  bead           columns   width      bare     edge   rows  beads   strain  verdict\n");
  for (const form::Fit& fit : fits)
    fmt::print(out, "  {:<13}  {:>7}  {:>5} mm  {:>5} mm  {:>5}  {:>5}  {:>5}  {:>+5.1f}%  {}\n", fit.bead,
               fit.columns, fixed_number(fit.width.mm(), 1),
               fit.reveal ? fixed_number(fit.reveal->mm(), 2) : "-", fit.edge, fit.rows, fit.beads,
               100 * fit.candidates.front().strain, form::verdict_text(fit.verdict, fit.use));
}

}  // namespace evencount::app
