#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"
#include "chart/letters.hpp"
#include "form/outline.hpp"
#include "project/json.hpp"
#include "project/json_fields.hpp"
#include "project/limits.hpp"
#include "project/outline.hpp"
#include "project/read_band.hpp"
#include "project/read_costing.hpp"

namespace evencount::project {
namespace {

using json::Fields;
using json::Node;
using json::Place;
using json::Report;

template <typename Entries>
std::vector<std::string> ids_of(const Entries& entries) {
  std::vector<std::string> ids;
  for (const auto& entry : entries) ids.push_back(entry.id);
  return ids;
}

template <typename Entries, typename Name>
void refuse_repeated(const Entries& entries, const std::string& name, Name name_of, const Place& place,
                     Report& report) {
  for (const auto& entry : entries)
    if (name_of(entry) == name)
      report.add(ProblemCode::duplicate_name, place, quote(name) + " a second time", "each one once");
}

/// An id of something that others refer to.
std::string read_id(Fields& fields, Report& report) {
  std::string id = fields.text("id");
  if (id.empty()) report.add(ProblemCode::bad_text, fields.place_of("id"), "an empty text", "a name");
  return id;
}

bead::Size read_bead(const Node& node, const Place& place, UnknownFields& unknown, Report& report) {
  Fields fields(node, place, report);
  bead::Size size;
  size.id = read_id(fields, report);
  bool only_id = true;
  for (const auto name :
       {"kind", "diameter_mm", "length_mm", "hole_mm", "beads_per_gram", "scatter", "lot_shift", "source"})
    only_id = !fields.has(name) && only_id;
  unknown = fields.unknown();
  if (only_id) {
    if (const auto known = bead::find_size(size.id)) return *known;
  }
  const auto kind = bead::parse_kind(fields.text("kind"));
  if (kind)
    size.kind = *kind;
  else
    report.add(kind.problem(), fields.place_of("kind"));
  size.diameter = millimetres(fields.number("diameter_mm", limits::least_bead_mm, limits::most_bead_mm));
  size.length = millimetres(fields.number("length_mm", limits::least_bead_mm, limits::most_bead_mm));
  size.hole = millimetres(fields.number("hole_mm", limits::least_bead_mm, limits::most_bead_mm));
  if (!report.failed() && size.hole >= size.diameter)
    report.add(ProblemCode::out_of_range, fields.place_of("hole_mm"),
               fmt::format("a hole of {} mm", size.hole.mm()),
               fmt::format("less than the diameter, {} mm", size.diameter.mm()));
  size.beads_per_gram =
      fields.number("beads_per_gram", limits::least_beads_per_gram, limits::most_beads_per_gram);
  size.scatter = fields.number_or("scatter", 0, 1, 0);
  size.lot_shift = fields.number_or("lot_shift", 0, 1, 0);
  size.source = fields.text_or("source", "");
  return size;
}

void read_thread(const Node& node, const Place& place, Project& project, Report& report) {
  Fields fields(node, place, report);
  weave::ThreadHabits& habits = project.thread_habits;
  habits.tail = millimetres(fields.number_or("tail_mm", 0, limits::most_tail_mm, habits.tail.mm()));
  habits.working_length =
      millimetres(fields.number_or("working_length_mm", limits::least_working_length_mm,
                                   limits::most_working_length_mm, habits.working_length.mm()));
  habits.reinforced_rows = static_cast<int>(fields.whole_or("reinforced_rows", 0, 100, habits.reinforced_rows));
  bead::Thread thread;
  thread.id = read_id(fields, report);
  bool only_id = true;
  for (const auto name : {"name", "diameter_mm", "source"}) only_id = !fields.has(name) && only_id;
  project.thread_unknown = fields.unknown();
  if (only_id) {
    if (const auto known = bead::find_thread(thread.id)) {
      project.thread = *known;
      return;
    }
  }
  thread.name = fields.text("name");
  thread.diameter =
      millimetres(fields.number("diameter_mm", limits::least_thread_mm, limits::most_thread_mm));
  thread.source = fields.text_or("source", "");
  project.thread = thread;
}

Pack read_pack(const Node& node, const Place& place, Report& report) {
  Fields fields(node, place, report);
  Pack pack;
  pack.mass = grams(fields.number("grams", limits::least_pack_grams, limits::most_pack_grams));
  const bool priced = fields.has("price_minor");
  if (priced || fields.has("currency")) {
    Money price;
    price.minor = fields.whole("price_minor", 0, limits::most_price_minor);
    price.currency = read_currency(fields, price.currency, report);
    pack.price = price;
  }
  pack.unknown = fields.unknown();
  return pack;
}

LegendEntry read_legend_entry(const Node& node, const Place& place, const Project& project, Report& report) {
  Fields fields(node, place, report);
  LegendEntry entry;
  entry.letter = fields.text("letter");
  if (!report.failed() && !chart::letter_position(entry.letter))
    report.add(ProblemCode::bad_text, fields.place_of("letter"), quote(entry.letter),
               "one to three capital letters, A to Z");
  refuse_repeated(
      project.legend, entry.letter, [](const LegendEntry& e) { return e.letter; }, fields.place_of("letter"),
      report);
  entry.name = fields.text("name");
  if (const auto colour = colour::parse_hex(fields.text("colour")))
    entry.colour = *colour;
  else
    report.add(colour.problem(), fields.place_of("colour"));
  if (fields.has("finish")) {
    if (const auto finish = bead::parse_finish(fields.text("finish")))
      entry.finish = *finish;
    else
      report.add(finish.problem(), fields.place_of("finish"));
  }
  entry.bead = read_reference(fields, "bead", ids_of(project.beads), report);
  if (const Node* pack = fields.find("pack")) entry.pack = read_pack(*pack, fields.place_of("pack"), report);
  entry.unknown = fields.unknown();
  return entry;
}

/// A point of a measured outline. Its unknown fields are not kept: it is two numbers.
form::Point read_point(const Node& node, const Place& place, Report& report) {
  Fields fields(node, place, report);
  return {fields.number("x_mm", -limits::most_outline_mm, limits::most_outline_mm),
          fields.number("y_mm", -limits::most_outline_mm, limits::most_outline_mm)};
}

FormEntry read_form(const Node& node, const Place& place, const Project& project, Report& report) {
  Fields fields(node, place, report);
  FormEntry entry;
  entry.id = read_id(fields, report);
  refuse_repeated(
      project.forms, entry.id, [](const FormEntry& e) { return e.id; }, fields.place_of("id"), report);
  entry.name = fields.text_or("name", "");
  std::vector<form::Point> points;
  fields.each("points", form::most_outline_points, false,
              [&](const Node& item, const Place& at) { points.push_back(read_point(item, at, report)); });
  if (const auto form = form::parse_form(fields.text("shape"), points))
    entry.form = *form;
  else
    report.add(form.problem(), fields.place_of("shape"));
  entry.unknown = fields.unknown();
  return entry;
}

OtherSupply read_finding(const Node& node, const Place& place, Report& report) {
  Fields fields(node, place, report);
  OtherSupply supply;
  supply.name = fields.text("name");
  supply.count = fields.number_or("count", 0, limits::most_findings, supply.count);
  supply.unit = fields.text_or("unit", "");
  supply.unknown = fields.unknown();
  return supply;
}

SavedGauge read_saved_gauge(const Node& node, const Place& place, const Project& project, Report& report) {
  Fields fields(node, place, report);
  SavedGauge saved;
  saved.named.hand = fields.text_or("hand", "");
  saved.named.thread = fields.text("thread");
  saved.named.bead = read_reference(fields, "bead", ids_of(project.beads), report);
  if (const Node* gauge = fields.find("gauge"))
    saved.named.gauge = read_gauge(*gauge, fields.place_of("gauge"), saved.gauge_unknown, report);
  else
    report.add(ProblemCode::missing_field, fields.place_of("gauge"), "nothing",
               "a gauge with column_mm and edge_mm");
  saved.unknown = fields.unknown();
  return saved;
}

WornSize read_worn_size(const Node& node, const Place& place, Report& report) {
  Fields fields(node, place, report);
  WornSize size;
  size.name = fields.text("name");
  size.measure = millimetres(fields.number("measure_mm", limits::least_measure_mm, limits::most_measure_mm));
  size.unknown = fields.unknown();
  return size;
}

SavedStrand read_strand(const Node& node, const Place& place, Report& report) {
  Fields fields(node, place, report);
  SavedStrand strand;
  bool first = true;
  fields.each("layout", most_layout_lines, true, [&](const Node& line, const Place& at) {
    const std::string text = json::read_text(line, at, report);
    if (!report.failed() && text.find('\n') != std::string::npos)
      report.add(ProblemCode::bad_text, at, "a line feed", "one line of the layout");
    strand.layout += (first ? "" : "\n") + text;
    first = false;
  });
  if (const auto worn = strand::parse_worn(fields.text("worn")))
    strand.worn = *worn;
  else
    report.add(worn.problem(), fields.place_of("worn"));
  strand.ease = millimetres(fields.number_or("ease_mm", 0, limits::most_ease_mm, 0));
  if (fields.has("lean")) strand.lean = fields.number("lean", 0, limits::most_lean);
  if (fields.has("tolerance_mm")) strand.tolerance = millimetres(fields.number("tolerance_mm", 0, limits::most_tolerance_mm));
  fields.each("sizes", most_entries, false,
              [&](const Node& size, const Place& at) { strand.sizes.push_back(read_worn_size(size, at, report)); });
  strand.unknown = fields.unknown();
  return strand;
}

int read_format(Fields& fields, Report& report) {
  constexpr std::int64_t any = 1'000'000'000;
  const auto format = static_cast<int>(fields.whole("format", 1, any));
  if (!report.failed() && format > newest_format)
    report.add(ProblemCode::newer_format, fields.place_of("format"), fmt::format("format {}", format),
               fmt::format("format {} or older: this file was saved by a newer version", newest_format));
  return format;
}

void read_entries(Fields& fields, Project& project, std::vector<chart::Chart>* charts, Report& report) {
  fields.each("beads", most_entries, true, [&](const Node& node, const Place& place) {
    UnknownFields unknown;
    bead::Size size = read_bead(node, place, unknown, report);
    refuse_repeated(
        project.beads, size.id, [](const bead::Size& s) { return s.id; }, place.member("id"), report);
    if (!unknown.empty()) project.bead_unknown[size.id] = std::move(unknown);
    project.beads.push_back(std::move(size));
  });
  project.thread = bead::threads().front();
  if (const Node* thread = fields.find("thread"))
    read_thread(*thread, fields.place_of("thread"), project, report);
  project.allowance = fields.number_or("allowance", 0, 1, project.allowance);
  fields.each("legend", most_legend_entries, true, [&](const Node& node, const Place& place) {
    project.legend.push_back(read_legend_entry(node, place, project, report));
  });
  fields.each("forms", most_entries, false, [&](const Node& node, const Place& place) {
    project.forms.push_back(read_form(node, place, project, report));
  });
  fields.each("gauges", most_entries, false, [&](const Node& node, const Place& place) {
    project.gauges.push_back(read_saved_gauge(node, place, project, report));
  });
  BandContext context{letters_of(project), ids_of(project.beads), ids_of(project.forms)};
  context.charts = charts;
  fields.each("bands", most_bands, true, [&](const Node& node, const Place& place) {
    project.bands.push_back(read_band(node, place, context, report));
  });
  if (const Node* strand = fields.find("strand"))
    project.strand = read_strand(*strand, fields.place_of("strand"), report);
  fields.each("findings", most_entries, false, [&](const Node& node, const Place& place) {
    project.findings.push_back(read_finding(node, place, report));
  });
}

Result<Project> read_document(const Node& document, std::vector<chart::Chart>* charts) {
  Report report;
  const Place root;
  Fields fields(document, root, report);
  Project project;
  project.format = read_format(fields, report);
  project.title = fields.text("title");
  project.subtitle = fields.text_or("subtitle", "");
  project.designer = fields.text_or("designer", "");
  project.summary = fields.text_or("summary", "");
  project.finished_size = fields.text_or("finished_size", "");
  project.terms = fields.text_or("terms", "");
  read_entries(fields, project, charts, report);
  project.tools = fields.texts("tools", most_entries);
  project.assembly = fields.texts("assembly", most_entries);
  if (const Node* costing = fields.find("costing"))
    project.costing = read_costing(*costing, fields.place_of("costing"), report);
  project.unknown = fields.unknown();
  if (report.failed()) return report.problem();
  return project;
}

}  // namespace

Result<Project> parse_project(std::string_view text) {
  const auto document = json::parse(text);
  if (!document) return document.problem();
  return read_project(*document);
}

Result<Project> read_project(const Node& document) {
  return read_document(document, nullptr);
}

Result<Project> with_outline(const Node& outline, std::vector<chart::Chart> charts) {
  return read_document(outline, &charts);
}

}  // namespace evencount::project
