#include <fmt/format.h>

#include <iterator>

#include "base/text.hpp"
#include "project/json_fields.hpp"
#include "project/patch.hpp"

namespace evencount::project {
namespace {

using json::Fields;
using json::Node;
using json::Place;
using json::Report;

constexpr int empty_cell = -1;

int number_of(chart::Bead bead) {
  return bead == chart::no_bead ? empty_cell : bead;
}

void append_text(std::string& text, std::string_view value) {
  text += json::to_compact_text(Node(std::string(value)));
}

/// A comma between things.
void part(std::string& text) {
  if (text.back() != '[' && text.back() != '{') text += ',';
}

void append_band(std::string& text, const WholeBand& band) {
  // The outline is an object with members: its own closing brace makes room for the cells.
  text.append(band.outline, 0, band.outline.size() - 1);
  text += ",\"cells\":[";
  const auto cells = band.chart.cells();
  for (std::size_t i = 0, end = 0; i < cells.size(); i = end) {
    while (end < cells.size() && cells[end] == cells[i]) ++end;
    fmt::format_to(std::back_inserter(text), "{}{},{}", i == 0 ? "" : ",", end - i, number_of(cells[i]));
  }
  text += "]}";
}

void append_bands(std::string& text, const std::vector<WholeBand>& bands) {
  text += '[';
  for (const WholeBand& band : bands) part(text), append_band(text, band);
  text += ']';
}

void append(std::string& text, const BandsChange& change) {
  fmt::format_to(std::back_inserter(text), "{{\"at\":{},\"of\":{},\"before\":", change.at, change.of);
  append_bands(text, change.before);
  text += ",\"after\":";
  append_bands(text, change.after);
  text += '}';
}

void append(std::string& text, const BandCells& cells) {
  fmt::format_to(std::back_inserter(text), "{{\"band\":{},\"runs\":[", cells.band);
  bool first = true;
  for (const CellRun& run : cells.runs) {
    fmt::format_to(std::back_inserter(text), "{}{},{},{},{}", first ? "" : ",", run.first, run.count,
                   number_of(run.before), number_of(run.after));
    first = false;
  }
  text += "]}";
}

void append(std::string& text, const ValueChange& change) {
  text += "{\"at\":";
  append_text(text, change.pointer);
  if (change.before) text += ",\"before\":" + *change.before;
  if (change.after) text += ",\"after\":" + *change.after;
  text += '}';
}

template <typename List>
void append_list(std::string& text, std::string_view name, const List& list) {
  if (list.empty()) return;
  part(text);
  fmt::format_to(std::back_inserter(text), "\"{}\":[", name);
  for (const auto& item : list) part(text), append(text, item);
  text += ']';
}

/// A list of whole numbers from -1 to the largest chart's cells.
std::vector<int> read_numbers(const Node& node, const Place& place, std::size_t group, Report& report) {
  std::vector<int> numbers;
  const auto* list = node.as<json::Array>();
  if (!list || list->size() % group != 0) {
    report.add(ProblemCode::wrong_type, place, json::describe(node),
               fmt::format("a list of numbers, {} and {}", group, group));
    return numbers;
  }
  for (std::size_t i = 0; i < list->size() && !report.failed(); ++i) {
    const auto* number = (*list)[i].as<json::Number>();
    const auto value = number ? parse_integer(number->digits) : std::nullopt;
    if (!value || *value < empty_cell || *value > chart::most_cells)
      report.add(ProblemCode::out_of_range, place.item(i), json::describe((*list)[i]),
                 fmt::format("a number from -1 to {}", chart::most_cells));
    numbers.push_back(value ? static_cast<int>(*value) : 0);
  }
  return numbers;
}

/// Nothing for a number that is no position in a legend.
std::optional<chart::Bead> bead_of(int number) {
  if (number == empty_cell) return chart::no_bead;
  if (number < 0 || number >= most_legend_entries) return std::nullopt;
  return static_cast<chart::Bead>(number);
}

WholeBand read_whole_band(const Node& node, const Place& place, Report& report) {
  Fields fields(node, place, report);
  const int columns = static_cast<int>(fields.whole("columns", 1, chart::most_columns));
  const int edge = static_cast<int>(fields.whole("edge", 1, chart::most_edge));
  const Node* cells = fields.require("cells");
  if (report.failed()) return {};
  auto chart = chart::Chart::make(columns, edge, chart::no_bead);
  const std::vector<int> numbers = read_numbers(*cells, fields.place_of("cells"), 2, report);
  const Problem bad{ProblemCode::wrong_size, "", "cells that do not fill the chart",
                    "one run after the other, up to the last cell"};
  int at = 0;
  for (std::size_t i = 0; i < numbers.size() && chart && !report.failed(); i += 2) {
    const auto bead = bead_of(numbers[i + 1]);
    if (!bead || numbers[i] < 1 || numbers[i] > columns * edge - at) {
      report.add(bad, fields.place_of("cells"));
      break;
    }
    for (const int end = at + numbers[i]; at < end; ++at) chart->set({at % columns, at / columns}, *bead);
  }
  if (!chart || at != columns * edge) report.add(bad, fields.place_of("cells"));
  if (report.failed()) return {};
  json::Object outline;
  for (const json::Member& member : *node.as<json::Object>())
    if (member.first != "cells") outline.push_back(member);
  return {json::to_compact_text(Node(std::move(outline))), std::move(*chart)};
}

BandCells read_cells(const Node& node, const Place& place, Report& report) {
  Fields fields(node, place, report);
  BandCells cells;
  cells.band = static_cast<int>(fields.whole("band", 0, most_bands - 1));
  const Node* runs = fields.require("runs");
  if (report.failed()) return cells;
  const std::vector<int> numbers = read_numbers(*runs, fields.place_of("runs"), 4, report);
  int free_from = 0;
  for (std::size_t i = 0; i < numbers.size() && !report.failed(); i += 4) {
    const auto before = bead_of(numbers[i + 2]), after = bead_of(numbers[i + 3]);
    const CellRun run{numbers[i], numbers[i + 1], before.value_or(0), after.value_or(0)};
    if (!before || !after || run.first < free_from || run.count < 1)
      report.add(ProblemCode::out_of_range, fields.place_of("runs").item(i), "a run that can't be",
                 "runs one after the other");
    free_from = run.first + run.count;
    cells.runs.push_back(run);
  }
  return cells;
}

BandsChange read_bands(const Node& node, const Place& place, Report& report) {
  Fields fields(node, place, report);
  BandsChange change;
  change.at = static_cast<int>(fields.whole("at", 0, most_bands));
  change.of = static_cast<int>(fields.whole("of", 0, most_bands));
  const auto read_into = [&](std::vector<WholeBand>& bands) {
    return [&](const Node& item, const Place& at) { bands.push_back(read_whole_band(item, at, report)); };
  };
  fields.each("before", most_bands, true, read_into(change.before));
  fields.each("after", most_bands, true, read_into(change.after));
  return change;
}

ValueChange read_value(const Node& node, const Place& place, Report& report) {
  Fields fields(node, place, report);
  ValueChange change;
  const Node* at = fields.require("at");
  if (const auto* pointer = at ? at->as<std::string>() : nullptr) change.pointer = *pointer;
  if (const Node* before = fields.find("before")) change.before = json::to_compact_text(*before);
  if (const Node* after = fields.find("after")) change.after = json::to_compact_text(*after);
  return change;
}

}  // namespace

std::string to_json(const Patch& patch) {
  std::string text = "{";
  append_list(text, "bands", patch.bands);
  append_list(text, "cells", patch.cells);
  append_list(text, "values", patch.values);
  return text + "}";
}

Result<Patch> parse_patch(std::string_view text) {
  constexpr std::size_t most_changes = 10'000'000;
  const auto document = json::parse(text);
  if (!document) return document.problem();
  Report report;
  const Place root;
  Fields fields(*document, root, report);
  Patch patch;
  fields.each("bands", most_bands, false, [&](const Node& node, const Place& place) {
    patch.bands.push_back(read_bands(node, place, report));
  });
  fields.each("cells", most_bands, false, [&](const Node& node, const Place& place) {
    patch.cells.push_back(read_cells(node, place, report));
  });
  fields.each("values", most_changes, false, [&](const Node& node, const Place& place) {
    patch.values.push_back(read_value(node, place, report));
  });
  if (report.failed()) return report.problem();
  return patch;
}

}  // namespace evencount::project
