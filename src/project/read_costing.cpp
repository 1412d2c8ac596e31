#include "project/read_costing.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "project/json.hpp"
#include "project/limits.hpp"

namespace evencount::project {
namespace {

using json::Fields;
using json::Node;
using json::Place;
using json::Report;

/// Hundredths of a number that has at most two decimals.
std::int64_t hundredths(double number, const Place& place, Report& report) {
  const double whole = std::round(100 * number);
  // Far above the error of a decimal in binary, far below a thousandth.
  if (std::abs(100 * number - whole) > 1e-6)
    report.add(ProblemCode::out_of_range, place, plain_number(number, 6),
               "a number with at most two decimals");
  return static_cast<std::int64_t>(whole);
}

constexpr double most_factor = materials::most_hundredths / 100;

materials::Percent read_percent(Fields& fields, std::string_view name, materials::Percent otherwise,
                                Report& report) {
  const double number =
      fields.number_or(name, 0, most_factor, static_cast<double>(otherwise.hundredths) / 100);
  return {hundredths(number, fields.place_of(name), report)};
}

materials::Factor read_factor(Fields& fields, std::string_view name, materials::Factor otherwise,
                              Report& report) {
  return {read_percent(fields, name, {otherwise.hundredths}, report).hundredths};
}

std::optional<materials::Factor> read_factor_if_any(Fields& fields, std::string_view name, Report& report) {
  if (!fields.has(name)) return {};
  return read_factor(fields, name, {}, report);
}

materials::PriceRule read_rule(const Node& node, const Place& place, UnknownFields& unknown, Report& report) {
  Fields fields(node, place, report);
  materials::PriceRule rule;
  rule.name = fields.text_or("name", "own rule");
  rule.materials = read_factor(fields, "materials", rule.materials, report);
  rule.labour = read_factor(fields, "labour", rule.labour, report);
  rule.overhead = read_factor(fields, "overhead", rule.overhead, report);
  rule.wholesale = read_factor_if_any(fields, "wholesale", report);
  rule.retail = read_factor_if_any(fields, "retail", report);
  rule.retail_to = read_factor_if_any(fields, "retail_to", report);
  unknown = fields.unknown();
  return rule;
}

std::vector<materials::TechniqueTime> read_times(const Node& node, const Place& place, Report& report) {
  std::vector<materials::TechniqueTime> times;
  Fields fields(node, place, report);
  const auto* techniques = node.as<json::Object>();
  if (!techniques) return times;
  if (techniques->size() > most_entries)
    report.add(ProblemCode::out_of_range, place, "too many techniques", "at most 1000");
  else
    for (const json::Member& member : *techniques)
      times.push_back({member.first, read_percent(fields, member.first, {}, report)});
  return times;
}

}  // namespace

std::string read_currency(Fields& fields, std::string_view otherwise, Report& report) {
  std::string currency = fields.text_or("currency", otherwise);
  const bool is_code = currency.size() == 3 && std::all_of(currency.begin(), currency.end(),
                                                           [](char c) { return c >= 'A' && c <= 'Z'; });
  if (!is_code)
    report.add(ProblemCode::bad_text, fields.place_of("currency"), quote(currency),
               "three capital letters (ISO 4217), such as EUR");
  return currency;
}

Costing read_costing(const Node& node, const Place& place, Report& report) {
  Fields fields(node, place, report);
  Costing costing;
  materials::CostSettings& settings = costing.settings;
  const auto minor = [&](std::string_view name, std::int64_t otherwise) {
    return fields.whole_or(name, 0, materials::most_setting_minor, otherwise);
  };
  const auto minutes = [&](std::string_view name, std::int64_t otherwise) {
    return fields.whole_or(name, 0, materials::most_minutes, otherwise);
  };
  settings.currency = read_currency(fields, settings.currency, report);
  settings.hour_minor = minor("hour_minor", settings.hour_minor);
  settings.beads_a_day =
      fields.whole_or("beads_a_day", 1, materials::most_setting_minor, settings.beads_a_day);
  settings.minutes_a_day = minutes("minutes_a_day", settings.minutes_a_day);
  if (const Node* times = fields.find("technique_percent"))
    settings.technique_time = read_times(*times, fields.place_of("technique_percent"), report);
  settings.finishing_minutes = minutes("finishing_minutes", settings.finishing_minutes);
  settings.assembly_minutes = minutes("assembly_minutes", settings.assembly_minutes);
  settings.other_materials_minor = minor("other_materials_minor", settings.other_materials_minor);
  settings.waste = read_percent(fields, "waste_percent", settings.waste, report);
  settings.overhead = read_percent(fields, "overhead_percent", settings.overhead, report);
  settings.overhead_minor = minor("overhead_minor", settings.overhead_minor);
  if (const Node* rule = fields.find("rule"))
    settings.own_rule = read_rule(*rule, fields.place_of("rule"), costing.rule_unknown, report);
  costing.unknown = fields.unknown();
  return costing;
}

Result<Costing> parse_costing(std::string_view text) {
  const auto document = json::parse(text);
  if (!document) return document.problem();
  Report report;
  const Place root;
  Costing costing = read_costing(*document, root, report);
  if (report.failed()) return report.problem();
  return costing;
}

}  // namespace evencount::project
