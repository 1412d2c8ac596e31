#include <fmt/ostream.h>

#include "app/files.hpp"
#include "app/stock_verbs.hpp"
#include "app/verbs/stock_text.hpp"
#include "base/text.hpp"
#include "stockroom/amounts.hpp"
#include "stockroom/stock_file.hpp"

namespace evencount::app {
namespace {

using stockroom::FieldChange;
using stockroom::ImportedItem;
using stockroom::ImportEffect;
using stockroom::ImportReport;

/// "A=B" into two parts; the last equals sign parts them, since a header may hold one and a column's name doesn't.
Result<std::pair<std::string, std::string>> pair_of(const std::string& text, std::string_view where,
                                                    std::string_view shape, bool at_first) {
  const auto equals = at_first ? text.find('=') : text.rfind('=');
  if (equals == std::string::npos || trim(text.substr(0, equals)).empty())
    return Problem{ProblemCode::bad_usage, std::string(where), quote(text), std::string(shape)};
  return std::pair(std::string(trim(text.substr(0, equals))), std::string(trim(text.substr(equals + 1))));
}

Result<Done> read_map(const StockImportArguments& arguments, std::map<std::string, std::string>& map) {
  constexpr std::string_view shape = "THEIR HEADER=COLUMN";
  if (!arguments.map_file.empty()) {
    const auto text = read_file(arguments.map_file);
    if (!text) return text.problem();
    int number = 0;
    for (const std::string_view line : split(*text, '\n')) {
      ++number;
      if (trim(line).empty() || trim(line).starts_with('#')) continue;
      const auto pair = pair_of(std::string(trim(line)), fmt::format("line {}", number), shape, false);
      if (!pair) return pair.problem().within(arguments.map_file);
      map.insert_or_assign(pair->first, pair->second);
    }
  }
  for (const std::string& text : arguments.map) {
    const auto pair = pair_of(text, "map", shape, false);
    if (!pair) return pair.problem();
    map.insert_or_assign(pair->first, pair->second);
  }
  return Done{};
}

Result<stockroom::ImportOptions> options_of(const StockImportArguments& arguments) {
  stockroom::ImportOptions options;
  const auto kind = kind_argument(arguments.kind);
  if (!kind) return kind.problem();
  options.kind = *kind;
  if (const auto map = read_map(arguments, options.column_of); !map) return map.problem();
  for (const std::string& text : arguments.set) {
    const auto pair = pair_of(text, "set", "COLUMN=VALUE", true);
    if (!pair) return pair.problem();
    options.constants.insert_or_assign(pair->first, pair->second);
  }
  options.currency = arguments.currency;
  options.skip_bad = arguments.skip_bad;
  options.dry_run = arguments.dry_run;
  options.note = arguments.note;
  return options;
}

std::string_view effect_name(ImportEffect effect) {
  switch (effect) {
    case ImportEffect::added:
      return "added";
    case ImportEffect::changed:
      return "changed";
    case ImportEffect::unchanged:
      return "unchanged";
  }
  return "unchanged";
}

void print_faults(const ImportReport& report, const std::string& file, const Console& console) {
  for (const stockroom::LineFault& fault : report.faults)
    fmt::print(console.err, "evencount: {}: {}\n", file, message(fault));
  if (report.fault_count > report.faults.size())
    fmt::print(console.err, "evencount: {}: {} more lines like these\n", file,
               report.fault_count - report.faults.size());
}

void print_items(const ImportReport& report, std::ostream& out) {
  const auto shown = [](const std::string& text) {
    return text.empty() ? std::string("nothing") : one_line(text);
  };
  for (const ImportedItem& imported : report.items) {
    if (imported.effect == ImportEffect::unchanged) continue;
    fmt::print(out, "{} {}  {}, {}", imported.effect == ImportEffect::added ? '+' : '~', imported.item.code,
               one_line(imported.item.name), describe(imported.item));
    if (imported.effect == ImportEffect::added && imported.movement != 0)
      fmt::print(out, ", {}", stockroom::amount_text(report.kind, imported.movement));
    fmt::print(out, "\n");
    for (const FieldChange& change : imported.changes)
      fmt::print(out, "    {}: {} -> {}\n", change.field, shown(change.before), shown(change.after));
  }
}

Json to_json(const ImportReport& report) {
  Json items = Json::array(), faults = Json::array();
  for (const ImportedItem& imported : report.items) {
    if (imported.effect == ImportEffect::unchanged) continue;
    Json changes = Json::array();
    for (const FieldChange& change : imported.changes)
      changes.push_back({{"field", change.field}, {"before", change.before}, {"after", change.after}});
    items.push_back({{"line", imported.line},
                     {"code", imported.item.code},
                     {"effect", effect_name(imported.effect)},
                     {"movement", imported.movement},
                     {"changes", std::move(changes)}});
  }
  for (const stockroom::LineFault& fault : report.faults)
    faults.push_back({{"line", fault.line},
                      {"code", problem_kind(fault.problem.code).name},
                      {"column", fault.problem.where},
                      {"found", fault.problem.found},
                      {"expected", fault.problem.expected}});
  return {{"kind", kind_name(report.kind)},
          {"written", report.written},
          {"added", report.count(ImportEffect::added)},
          {"changed", report.count(ImportEffect::changed)},
          {"unchanged", report.count(ImportEffect::unchanged)},
          {"bad_lines", report.fault_count},
          {"items", std::move(items)},
          {"faults", std::move(faults)}};
}

int print_report(const StockImportArguments& arguments, const ImportReport& report, const Console& console) {
  print_faults(report, arguments.file, console);
  if (arguments.json)
    print(console.out, to_json(report));
  else if (arguments.dry_run)
    print_items(report, console.out);
  if (!arguments.json)
    fmt::print(console.out, "{}: {} added, {} changed, {} unchanged{}{}\n", kind_name(report.kind),
               report.count(ImportEffect::added), report.count(ImportEffect::changed),
               report.count(ImportEffect::unchanged),
               report.fault_count > 0 ? fmt::format(", {} bad lines", report.fault_count) : "",
               report.written ? "" : "; nothing is written");
  if (report.fault_count == 0) return exit_done;
  return arguments.skip_bad ? exit_findings : exit_bad_input;
}

}  // namespace

int stock_import_verb(const StockImportArguments& arguments, const Console& console) {
  auto options = options_of(arguments);
  if (!options) return console.fail(options.problem());
  const auto at = time_argument(arguments.at);
  if (!at) return console.fail(at.problem());
  const auto text = read_file(arguments.file);
  if (!text) return console.fail(text.problem());
  const bool palette = !stockroom::is_table(*text) && options->column_of.empty() &&
                       (arguments.file.ends_with(".gpl") || stockroom::parse_palette(*text).ok());
  const auto table =
      palette ? stockroom::table_of_palette(*text, arguments.size) : stockroom::read_csv(*text);
  if (!table) return console.fail(table.problem().within(arguments.file));
  auto stock = open_stock(arguments.stock);
  if (!stock) return console.fail(stock.problem());
  const auto report = stock->import_table(*table, *options, *at);
  if (!report) return console.fail(report.problem().within(arguments.file));
  return print_report(arguments, *report, console);
}

}  // namespace evencount::app
