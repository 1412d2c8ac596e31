#include "stockroom/stock_file.hpp"

#include <algorithm>

#include "base/text.hpp"

namespace evencount::stockroom {

bool is_table(std::string_view text) {
  const auto end = text.find_first_of("\r\n");
  const auto first_line = read_csv(text.substr(0, end));
  if (!first_line) return false;
  const auto& names = first_line->header.fields;
  return std::any_of(names.begin(), names.end(),
                     [](const std::string& name) { return lower_ascii(trim(name)) == "code"; });
}

Result<CsvTable> table_of_palette(std::string_view text, const std::string& size) {
  const auto palette = parse_palette(text);
  if (!palette) return palette.problem();
  CsvTable table{
      .separator = ',', .header = {1, {"code", "name", "size", "colour"}, std::nullopt}, .rows = {}};
  for (const NamedColour& named : *palette)
    table.rows.push_back(
        {named.line, {named.name, named.name, size, colour::to_hex(named.colour)}, std::nullopt});
  return table;
}

Result<std::vector<materials::StockedItem>> read_items(std::string_view text, const std::string& size) {
  std::vector<materials::StockedItem> items;
  if (!is_table(text)) {
    const auto palette = parse_palette(text);
    if (!palette) return palette.problem();
    for (const NamedColour& named : *palette)
      items.push_back({{named.name, named.name, materials::BeadStock{size, {}, named.colour, {}}, {}, ""}, {}});
    return items;
  }
  const auto table = read_csv(text);
  if (!table) return table.problem();
  const auto report = plan_import(*table, {}, {});
  if (!report) return report.problem();
  if (!report->faults.empty())
    return report->faults.front().problem.within("line " + std::to_string(report->faults.front().line));
  for (const ImportedItem& imported : report->items) items.push_back({imported.item, {imported.movement, 0}});
  return items;
}

}  // namespace evencount::stockroom
