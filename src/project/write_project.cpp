#include "base/text.hpp"
#include "chart/runs.hpp"
#include "project/json.hpp"
#include "project/json_tree.hpp"
#include "project/outline.hpp"

namespace evencount::project {
namespace {

using json::Array;
using json::Node;
using json::Object;

/// Builds one object, field after field.
class ObjectWriter {
 public:
  void text(std::string_view name, std::string_view value) { add(name, Node(std::string(value))); }
  void text_unless_empty(std::string_view name, std::string_view value) {
    if (!value.empty()) text(name, value);
  }
  void number(std::string_view name, double value) { add(name, Node(json::number(value))); }
  void whole(std::string_view name, std::int64_t value) {
    add(name, Node(json::Number{std::to_string(value)}));
  }
  void add(std::string_view name, Node node) { members_.emplace_back(name, std::move(node)); }

  template <typename List, typename Write>
  void list(std::string_view name, const List& list, Write write) {
    Array items;
    for (const auto& item : list) items.push_back(write(item));
    add(name, Node(std::move(items)));
  }
  template <typename List, typename Write>
  void list_unless_empty(std::string_view name, const List& items, Write write) {
    if (!items.empty()) list(name, items, write);
  }

  /// The object, its unknown fields last. A field that is known by now keeps its own value.
  Node finish(const UnknownFields& unknown) && {
    const std::size_t known = members_.size();
    for (const auto& [name, value] : unknown) {
      auto node = json::parse(value);
      assert(node.ok());
      bool is_new = node.ok();
      for (std::size_t i = 0; i < known; ++i) is_new = is_new && members_[i].first != name;
      if (is_new) members_.emplace_back(name, std::move(*node));
    }
    return Node(std::move(members_));
  }

 private:
  Object members_;
};

Node write_text(const std::string& text) {
  return Node(text);
}

Node write_bead(const bead::Size& size, const UnknownFields& unknown) {
  ObjectWriter object;
  object.text("id", size.id);
  object.text("kind", bead::kind_name(size.kind));
  object.number("diameter_mm", size.diameter.mm());
  object.number("length_mm", size.length.mm());
  object.number("hole_mm", size.hole.mm());
  object.number("beads_per_gram", size.beads_per_gram);
  object.number("scatter", size.scatter);
  object.number("lot_shift", size.lot_shift);
  object.text_unless_empty("source", size.source);
  return std::move(object).finish(unknown);
}

Node write_thread(const Project& project) {
  ObjectWriter object;
  object.text("id", project.thread.id);
  object.text("name", project.thread.name);
  object.number("diameter_mm", project.thread.diameter.mm());
  object.text_unless_empty("source", project.thread.source);
  object.number("tail_mm", project.thread_habits.tail.mm());
  object.number("working_length_mm", project.thread_habits.working_length.mm());
  if (project.thread_habits.reinforced_rows != 0)
    object.whole("reinforced_rows", project.thread_habits.reinforced_rows);
  return std::move(object).finish(project.thread_unknown);
}

Node write_pack(const Pack& pack) {
  ObjectWriter object;
  object.number("grams", pack.mass.grams());
  if (pack.price) {
    object.whole("price_minor", pack.price->minor);
    object.text("currency", pack.price->currency);
  }
  return std::move(object).finish(pack.unknown);
}

Node write_legend_entry(const LegendEntry& entry) {
  ObjectWriter object;
  object.text("letter", entry.letter);
  object.text("name", entry.name);
  object.text("colour", colour::to_hex(entry.colour));
  object.text("finish", bead::finish_name(entry.finish));
  object.text("bead", entry.bead);
  if (entry.pack) object.add("pack", write_pack(*entry.pack));
  return std::move(object).finish(entry.unknown);
}

Node write_point(const form::Point& point) {
  ObjectWriter object;
  object.number("x_mm", point.x_mm);
  object.number("y_mm", point.y_mm);
  return std::move(object).finish({});
}

Node write_form(const FormEntry& entry) {
  ObjectWriter object;
  object.text("id", entry.id);
  object.text_unless_empty("name", entry.name);
  object.text("shape", form::to_notation(entry.form));
  if (entry.form.outline) object.list("points", entry.form.outline->points, write_point);
  return std::move(object).finish(entry.unknown);
}

Node write_gauge(const bead::Gauge& gauge, const UnknownFields& unknown) {
  ObjectWriter object;
  object.number("column_mm", gauge.column.mm());
  object.number("edge_mm", gauge.edge.mm());
  object.text_unless_empty("source", gauge.source);
  if (gauge.uncertainty) object.number("uncertainty", *gauge.uncertainty);
  return std::move(object).finish(unknown);
}

Node write_saved_gauge(const SavedGauge& saved) {
  ObjectWriter object;
  object.text_unless_empty("hand", saved.named.hand);
  object.text("thread", saved.named.thread);
  object.text("bead", saved.named.bead);
  object.add("gauge", write_gauge(saved.named.gauge, saved.gauge_unknown));
  return std::move(object).finish(saved.unknown);
}

enum class Cells { written, left_out };

Node write_band(const Band& band, const std::vector<std::string>& letters, Cells cells) {
  ObjectWriter object;
  object.text("name", band.name);
  object.text("technique", band.technique);
  object.text("bead", band.bead);
  if (band.form) object.text("form", *band.form);
  object.text("use", form::use_name(band.use));
  object.text("closure", weave::closure_name(band.closure));
  if (band.begin_at != 0) object.whole("begin_at", band.begin_at);
  if (band.gauge) object.add("gauge", write_gauge(*band.gauge, band.gauge_unknown));
  if (band.copies != 1) object.whole("copies", band.copies);
  object.text_unless_empty("note", band.note);
  object.text_unless_empty("series_mark", band.series_mark);
  object.whole("columns", band.chart.columns());
  object.whole("edge", band.chart.edge());
  if (cells == Cells::left_out) return std::move(object).finish(band.unknown);
  Array steps;
  for (int step = 0; step < band.chart.edge(); ++step)
    steps.emplace_back(chart::to_text(chart::to_runs(band.chart.step(step)), letters));
  object.add("cells", Node(std::move(steps)));
  return std::move(object).finish(band.unknown);
}

Node write_worn_size(const WornSize& size) {
  ObjectWriter object;
  object.text("name", size.name);
  object.number("measure_mm", size.measure.mm());
  return std::move(object).finish(size.unknown);
}

Node write_strand(const SavedStrand& strand) {
  ObjectWriter object;
  object.list("layout", split(strand.layout, '\n'), [](std::string_view line) { return write_text(std::string(line)); });
  object.text("worn", strand::worn_name(strand.worn));
  if (strand.ease != Length{}) object.number("ease_mm", strand.ease.mm());
  if (strand.lean) object.number("lean", *strand.lean);
  if (strand.tolerance) object.number("tolerance_mm", strand.tolerance->mm());
  object.list_unless_empty("sizes", strand.sizes, write_worn_size);
  return std::move(object).finish(strand.unknown);
}

Node write_finding(const OtherSupply& supply) {
  ObjectWriter object;
  object.text("name", supply.name);
  object.number("count", supply.count);
  object.text_unless_empty("unit", supply.unit);
  return std::move(object).finish(supply.unknown);
}

Node write_rule(const materials::PriceRule& rule, const UnknownFields& unknown) {
  ObjectWriter object;
  const auto factor = [&](std::string_view name, const std::optional<materials::Factor>& times) {
    if (times) object.number(name, static_cast<double>(times->hundredths) / 100);
  };
  object.text("name", rule.name);
  factor("materials", rule.materials);
  factor("labour", rule.labour);
  factor("overhead", rule.overhead);
  factor("wholesale", rule.wholesale);
  factor("retail", rule.retail);
  factor("retail_to", rule.retail_to);
  return std::move(object).finish(unknown);
}

Node write_costing(const Costing& costing) {
  const materials::CostSettings& settings = costing.settings;
  const auto percent = [](materials::Percent share) { return static_cast<double>(share.hundredths) / 100; };
  ObjectWriter object;
  object.text("currency", settings.currency);
  object.whole("hour_minor", settings.hour_minor);
  object.whole("beads_a_day", settings.beads_a_day);
  object.whole("minutes_a_day", settings.minutes_a_day);
  if (!settings.technique_time.empty()) {
    ObjectWriter times;
    for (const materials::TechniqueTime& own : settings.technique_time) times.number(own.technique, percent(own.time));
    object.add("technique_percent", std::move(times).finish({}));
  }
  object.whole("finishing_minutes", settings.finishing_minutes);
  object.whole("assembly_minutes", settings.assembly_minutes);
  object.whole("other_materials_minor", settings.other_materials_minor);
  object.number("waste_percent", percent(settings.waste));
  object.number("overhead_percent", percent(settings.overhead));
  object.whole("overhead_minor", settings.overhead_minor);
  if (settings.own_rule) object.add("rule", write_rule(*settings.own_rule, costing.rule_unknown));
  return std::move(object).finish(costing.unknown);
}

Node tree_of(const Project& project, Cells cells) {
  const std::vector<std::string> letters = letters_of(project);
  ObjectWriter object;
  object.whole("format", project.format);
  object.text("title", project.title);
  object.text_unless_empty("subtitle", project.subtitle);
  object.text_unless_empty("designer", project.designer);
  object.text_unless_empty("summary", project.summary);
  object.text_unless_empty("finished_size", project.finished_size);
  object.text_unless_empty("terms", project.terms);
  object.list("beads", project.beads, [&](const bead::Size& size) {
    const auto unknown = project.bead_unknown.find(size.id);
    return write_bead(size, unknown == project.bead_unknown.end() ? UnknownFields{} : unknown->second);
  });
  object.add("thread", write_thread(project));
  object.number("allowance", project.allowance);
  object.list("legend", project.legend, write_legend_entry);
  object.list_unless_empty("forms", project.forms, write_form);
  object.list_unless_empty("gauges", project.gauges, write_saved_gauge);
  object.list("bands", project.bands, [&](const Band& band) { return write_band(band, letters, cells); });
  if (project.strand) object.add("strand", write_strand(*project.strand));
  object.list_unless_empty("findings", project.findings, write_finding);
  object.list_unless_empty("tools", project.tools, write_text);
  object.list_unless_empty("assembly", project.assembly, write_text);
  if (project.costing) object.add("costing", write_costing(*project.costing));
  return std::move(object).finish(project.unknown);
}

}  // namespace

std::string to_json(const Project& project) {
  return json::to_text(tree_of(project, Cells::written)) + "\n";
}

std::string to_json(const Costing& costing) {
  return json::to_text(write_costing(costing)) + "\n";
}

json::Node outline_of(const Project& project) {
  return tree_of(project, Cells::left_out);
}

json::Node outline_of(const Band& band) {
  return write_band(band, {}, Cells::left_out);
}

}  // namespace evencount::project
