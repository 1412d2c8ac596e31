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

std::vector<NamedColour> colours_of(const std::vector<HeldItem>& items, const std::string& size) {
  std::vector<NamedColour> colours;
  for (const HeldItem& held : items) {
    const auto* beads = std::get_if<materials::BeadStock>(&held.item.what);
    if (beads != nullptr && beads->size == size && beads->colour)
      colours.push_back({held.item.name, *beads->colour, 0});
  }
  return colours;
}

Result<std::vector<NamedColour>> read_colours(std::string_view text, const std::string& size) {
  if (!is_table(text)) return parse_palette(text);
  const auto table = read_csv(text);
  if (!table) return table.problem();
  const auto report = plan_import(*table, {}, {.kind = materials::StockKind::beads});
  if (!report) return report.problem();
  if (!report->faults.empty())
    return report->faults.front().problem.within("line " + std::to_string(report->faults.front().line));
  std::vector<HeldItem> items;
  for (const ImportedItem& imported : report->items) items.push_back({imported.item, {}});
  auto colours = colours_of(items, size);
  if (colours.empty())
    return Problem{ProblemCode::missing_field, "", "no " + size + " with a colour",
                   "beads of the band's size, their colours measured"};
  return colours;
}

}  // namespace evencount::stockroom
