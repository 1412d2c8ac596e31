#include "project/read_band.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"
#include "chart/runs.hpp"
#include "weave/technique.hpp"

namespace evencount::project {
namespace {

using json::Fields;
using json::Node;
using json::Place;
using json::Report;

/// A text that another room turns into a value; the value's default when it is left out.
template <typename Value>
Value read_choice(Fields& fields, std::string_view name, Value otherwise,
                  Result<Value> (*parse)(std::string_view), Report& report) {
  if (!fields.has(name)) return otherwise;
  const auto value = parse(fields.text(name));
  if (value) return *value;
  report.add(value.problem(), fields.place_of(name));
  return otherwise;
}

void read_step(const Node& node, const Place& place, int step, std::string_view band_name,
               const std::vector<std::string>& letters, chart::Chart& chart, Report& report) {
  const std::string line = read_text(node, place, report);
  if (report.failed()) return;
  const auto beads = chart::parse_runs(line, letters, chart.columns());
  if (!beads) {
    Problem problem = beads.problem();
    problem.found += fmt::format(" in step {} of band {}", step, quote(band_name));
    if (problem.code == ProblemCode::unknown_name) problem.expected = json::one_of(letters);
    return report.add(problem, place);
  }
  for (int column = 0; column < chart.columns(); ++column) chart.set({column, step}, (*beads)[column]);
}

struct ChartSize {
  int columns = 0, edge = 0;
};

/// The chart that the context has for this band.
chart::Chart take_chart(Fields& fields, ChartSize size, BandContext& context, Report& report) {
  if (fields.has("cells")) report.add(ProblemCode::wrong_type, fields.place_of("cells"), "cells", "a band without its cells");
  if (report.failed()) return {};
  if (context.next_chart >= context.charts->size()) {
    report.add(ProblemCode::wrong_size, fields.place_of("cells"), "a band without a chart", "a chart for each band");
    return {};
  }
  chart::Chart chart = std::move((*context.charts)[context.next_chart++]);
  if (chart.columns() != size.columns || chart.edge() != size.edge)
    report.add(ProblemCode::wrong_size, fields.place_of("columns"), fmt::format("{} x {} cells", chart.columns(), chart.edge()),
               fmt::format("{} x {}", size.columns, size.edge));
  const auto cells = chart.cells();
  context.cells_left -= static_cast<int>(cells.size());
  if (context.cells_left < 0)
    report.add(ProblemCode::out_of_range, fields.place_of("edge"), "too many cells", fmt::format("at most {} cells in all bands", most_cells_in_all));
  const auto beads = static_cast<chart::Bead>(context.letters.size());
  if (std::any_of(cells.begin(), cells.end(), [&](chart::Bead bead) { return bead != chart::no_bead && bead >= beads; }))
    report.add(ProblemCode::unknown_name, fields.place_of("cells"), "a bead that the legend has not", json::one_of(context.letters));
  return chart;
}

chart::Chart read_chart(Fields& fields, std::string_view band_name, BandContext& context, Report& report) {
  const auto columns = static_cast<int>(fields.whole("columns", 1, chart::most_columns));
  const auto edge = static_cast<int>(fields.whole("edge", 1, chart::most_edge));
  if (context.charts) return take_chart(fields, {columns, edge}, context, report);
  const Node* cells = fields.require("cells");
  if (report.failed()) return {};
  const Place place = fields.place_of("cells");
  const auto* steps = cells->as<json::Array>();
  if (!steps) {
    report.add(ProblemCode::wrong_type, place, json::describe(*cells), "a list of texts, one for each step");
    return {};
  }
  if (columns * edge > context.cells_left) {
    report.add(ProblemCode::out_of_range, fields.place_of("edge"),
               fmt::format("{} x {} cells in band {}", columns, edge, quote(band_name)),
               fmt::format("at most {} cells in all bands", most_cells_in_all));
    return {};
  }
  auto chart = chart::Chart::make(columns, edge);
  if (!chart) {
    report.add(ProblemCode::out_of_range, fields.place_of("edge"), chart.problem().found,
               chart.problem().expected);
    return {};
  }
  context.cells_left -= columns * edge;
  if (steps->size() != static_cast<std::size_t>(edge)) {
    report.add(ProblemCode::wrong_size, place,
               fmt::format("{} steps in band {}", steps->size(), quote(band_name)),
               fmt::format("{} (one for each bead along the edge)", edge));
    return {};
  }
  for (int step = 0; step < edge && !report.failed(); ++step)
    read_step((*steps)[step], place.item(step), step, band_name, context.letters, *chart, report);
  return std::move(*chart);
}

std::vector<std::string> technique_ids() {
  std::vector<std::string> ids;
  for (const weave::Technique& technique : weave::techniques()) ids.emplace_back(technique.id);
  return ids;
}

}  // namespace

bead::Gauge read_gauge(const json::Node& node, const json::Place& place, UnknownFields& unknown,
                       json::Report& report) {
  constexpr double least_mm = 0.2, most_mm = 50;  // as bead::parse_gauge
  json::Fields fields(node, place, report);
  bead::Gauge gauge;
  gauge.column = millimetres(fields.number("column_mm", least_mm, most_mm));
  gauge.edge = millimetres(fields.number("edge_mm", least_mm, most_mm));
  gauge.source = fields.text_or("source", "");
  if (fields.has("uncertainty")) gauge.uncertainty = fields.number("uncertainty", 0, 1);
  unknown = fields.unknown();
  return gauge;
}

std::string read_reference(Fields& fields, std::string_view name, const std::vector<std::string>& known,
                           Report& report) {
  std::string id = fields.text(name);
  if (report.failed() || std::find(known.begin(), known.end(), id) != known.end()) return id;
  report.add(ProblemCode::unknown_name, fields.place_of(name), quote(id), json::one_of(known));
  return {};
}

Band read_band(const Node& node, const Place& place, BandContext& context, Report& report) {
  Fields fields(node, place, report);
  Band band;
  band.name = fields.text("name");
  band.technique = read_reference(fields, "technique", technique_ids(), report);
  band.bead = read_reference(fields, "bead", context.beads, report);
  if (fields.has("form")) band.form = read_reference(fields, "form", context.forms, report);
  band.use = read_choice(fields, "use", band.use, &form::parse_use, report);
  band.closure = read_choice(fields, "closure", band.closure, &weave::parse_closure, report);
  band.begin_at = static_cast<int>(fields.whole_or("begin_at", 0, 2 * chart::most_edge, 0));
  if (const Node* gauge = fields.find("gauge"))
    band.gauge = read_gauge(*gauge, fields.place_of("gauge"), band.gauge_unknown, report);
  band.copies = static_cast<int>(fields.whole_or("copies", 1, most_copies, band.copies));
  band.note = fields.text_or("note", "");
  band.series_mark = fields.text_or("series_mark", "");
  band.chart = read_chart(fields, band.name, context, report);
  band.unknown = fields.unknown();
  return band;
}

}  // namespace evencount::project
