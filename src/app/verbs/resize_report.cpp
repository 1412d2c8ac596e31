#include "app/verbs/resize_report.hpp"

#include <fmt/ostream.h>

#include <algorithm>

#include "base/text.hpp"

namespace evencount::app {
namespace {

using project::BandMeasure;
using project::BandResize;
using project::Carry;
using project::CarryChange;
using project::ChangeReason;

std::string letter_of(const std::vector<std::string>& letters, chart::Bead bead) {
  return bead < letters.size() ? letters[bead] : "none";
}

auto count_of(const project::Carried& carried, ChangeReason reason) {
  return std::ranges::count(carried.changes, reason, &CarryChange::reason);
}

std::ptrdiff_t beads_in(const chart::Chart& chart) {
  return std::ranges::count_if(chart.cells(), [](chart::Bead bead) { return bead != chart::no_bead; });
}

Json to_json(const BandMeasure& measure) {
  return {{"bead", measure.bead},
          {"form", measure.form ? Json(*measure.form) : Json(nullptr)},
          {"columns", measure.columns},
          {"edge", measure.edge},
          {"width_mm", rounded(measure.width.mm(), 2)},
          {"length_mm", rounded(measure.length.mm(), 2)},
          {"gauge",
           {{"column_mm", rounded(measure.gauge.column.mm(), 3)},
            {"edge_mm", rounded(measure.gauge.edge.mm(), 3)},
            {"source", measure.gauge.source}}}};
}

Json candidates_to_json(const BandResize& band) {
  Json list = Json::array();
  for (const form::FitCandidate& candidate : band.fit->candidates)
    list.push_back({{"edge", candidate.edge},
                    {"strain", rounded(candidate.strain, 4)},
                    {"verdict", form::verdict_name(candidate.verdict)},
                    {"taken", candidate.edge == band.after.edge}});
  return list;
}

Json to_json(const project::Carried& carried, const std::vector<std::string>& letters) {
  Json changes = Json::array(), lost = Json::array();
  for (const CarryChange& change : carried.changes)
    changes.push_back({{"column", change.cell.column},
                       {"step", change.cell.step},
                       {"before", change.before == chart::no_bead ? Json(nullptr)
                                                                  : Json(letter_of(letters, change.before))},
                       {"after", letter_of(letters, change.after)},
                       {"reason", project::reason_name(change.reason)}});
  for (const project::LostTrail& trail : carried.lost)
    lost.push_back({{"letter", letter_of(letters, trail.bead)},
                    {"column", trail.first.column},
                    {"step", trail.first.step},
                    {"beads", trail.beads}});
  return {{"method", project::carry_name(carried.method)},
          {"period_across", carried.period_across},
          {"period_along", carried.period_along},
          {"beads", beads_in(carried.chart)},
          {"changed",
           {{"area", count_of(carried, ChangeReason::area)},
            {"line", count_of(carried, ChangeReason::line)},
            {"fresh", count_of(carried, ChangeReason::fresh)}}},
          {"left_out", carried.left_out},
          {"lost", std::move(lost)},
          {"changes", std::move(changes)}};
}

Json to_json(const BandResize& band, const std::vector<std::string>& letters) {
  return {{"name", band.name},
          {"before", to_json(band.before)},
          {"after", to_json(band.after)},
          {"verdict", band.fit ? Json(form::verdict_name(band.fit->verdict)) : Json(nullptr)},
          {"candidates", band.fit ? candidates_to_json(band) : Json::array()},
          {"proportion", rounded(band.proportion, 3)},
          {"gauge_dropped", band.gauge_dropped},
          {"carry", to_json(band.carried, letters)}};
}

std::string described(const BandMeasure& measure) {
  return fmt::format("{} columns, {} along the edge, {} × {} mm in {}{}", measure.columns, measure.edge,
                     fixed_number(measure.width.mm(), 1), fixed_number(measure.length.mm(), 1), measure.bead,
                     measure.form ? " on " + *measure.form : "");
}

void print_fit(const BandResize& band, std::ostream& out) {
  for (const form::FitCandidate& candidate : band.fit->candidates)
    fmt::print(out, "  {} {:>4} along the edge, strain {:+.1f} %: {}\n",
               candidate.edge == band.after.edge ? "takes" : "  not", candidate.edge, 100 * candidate.strain,
               form::verdict_text(candidate.verdict, band.fit->use));
}

std::string method_text(const BandResize& band) {
  const project::Carried& carried = band.carried;
  if (band.before.columns == band.after.columns && band.before.edge == band.after.edge) return "as it was";
  if (carried.method != Carry::repeat) return std::string(project::carry_name(carried.method));
  const auto direction = [](int period, std::string_view what) {
    return period == 0 ? fmt::format("{} evenly", what) : fmt::format("{} in {}s", what, period);
  };
  return fmt::format("repeat, {} and {}", direction(carried.period_across, "columns"),
                     direction(carried.period_along, "steps"));
}

/// Changes of one step that follow each other and say the same: "3-5 A to B".
void print_changes(const project::Carried& carried, const std::vector<std::string>& letters,
                   std::ostream& out) {
  const auto& changes = carried.changes;
  const auto goes_on = [&](std::size_t i) {
    return i < changes.size() && changes[i].cell.step == changes[i - 1].cell.step &&
           changes[i].cell.column == changes[i - 1].cell.column + 1 &&
           changes[i].before == changes[i - 1].before && changes[i].after == changes[i - 1].after &&
           changes[i].reason == changes[i - 1].reason;
  };
  for (std::size_t i = 0; i < changes.size();) {
    std::size_t end = i + 1;
    while (goes_on(end)) ++end;
    const CarryChange &first = changes[i], &last = changes[end - 1];
    if (i == 0 || changes[i - 1].cell.step != first.cell.step)
      fmt::print(out, "{}    step {}:", i == 0 ? "" : "\n", first.cell.step);
    else
      fmt::print(out, ",");
    const std::string columns = end == i + 1 ? fmt::format("{}", first.cell.column)
                                             : fmt::format("{}-{}", first.cell.column, last.cell.column);
    fmt::print(out, " {} {} ({})", columns,
               first.before == chart::no_bead
                   ? letter_of(letters, first.after)
                   : letter_of(letters, first.before) + " to " + letter_of(letters, first.after),
               project::reason_name(first.reason));
    i = end;
  }
  if (!changes.empty()) fmt::print(out, "\n");
}

void print_band(const BandResize& band, const std::vector<std::string>& letters, bool brief,
                std::ostream& out) {
  const project::Carried& carried = band.carried;
  fmt::print(out, "\n{}\n  was {}\n  is  {}\n", band.name, described(band.before), described(band.after));
  if (band.fit) print_fit(band, out);
  if (band.gauge_dropped)
    fmt::print(out, "  its measured gauge was of the old bead and is left out: {}\n",
               band.after.gauge.source);
  if (std::abs(band.proportion - 1) >= 0.005)
    fmt::print(out, "  the drawing is {} % {} for its length\n",
               fixed_number(100 * std::abs(band.proportion - 1), 1),
               band.proportion > 1 ? "wider" : "narrower");
  fmt::print(out, "  {}: {} beads, {} changed by area, {} by lines, {} new; {} old ones left out\n",
             method_text(band), beads_in(carried.chart), count_of(carried, ChangeReason::area),
             count_of(carried, ChangeReason::line), count_of(carried, ChangeReason::fresh), carried.left_out);
  for (const project::LostTrail& trail : carried.lost)
    fmt::print(out, "  lost: {} {} of {} from column {}, step {}\n", trail.beads,
               trail.beads == 1 ? "bead" : "beads", letter_of(letters, trail.bead), trail.first.column,
               trail.first.step);
  if (!brief) print_changes(carried, letters, out);
}

}  // namespace

Json to_json(const project::Resized& resized) {
  const std::vector<std::string> letters = project::letters_of(resized.project);
  Json bands = Json::array();
  for (const BandResize& band : resized.bands) bands.push_back(to_json(band, letters));
  return {{"bands", std::move(bands)}, {"untouched", resized.untouched}, {"notes", resized.notes}};
}

void print_resized(const project::Resized& resized, bool brief, std::ostream& out) {
  const std::vector<std::string> letters = project::letters_of(resized.project);
  for (const BandResize& band : resized.bands) print_band(band, letters, brief, out);
  if (!resized.untouched.empty()) fmt::print(out, "\nAs they were: {}\n", fmt::join(resized.untouched, ", "));
  if (!resized.notes.empty()) fmt::print(out, "\nBesides\n");
  for (const std::string& note : resized.notes) fmt::print(out, "  {}\n", note);
}

}  // namespace evencount::app
