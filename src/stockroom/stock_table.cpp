#include "stockroom/stock_table.hpp"

#include <algorithm>
#include <vector>

#include "stockroom/columns.hpp"

namespace evencount::stockroom {
namespace {

void append_line(std::string& text, std::span<const Column> columns, const Line& line, bool first,
                 const ExportOptions& options) {
  std::vector<std::string> fields;
  for (const Column& column : columns) {
    if (!column.written) continue;
    const bool shown = first || column.part == ColumnPart::code || column.part == ColumnPart::pack;
    fields.push_back(shown ? column.write(line) : std::string());
    if (column.number && options.semicolons)
      std::replace(fields.back().begin(), fields.back().end(), '.', ',');
  }
  append_csv_row(text, fields, options.semicolons ? ';' : ',');
}

}  // namespace

std::string write_table(std::span<const materials::StockedItem> items, materials::StockKind kind,
                        const ExportOptions& options) {
  const auto columns = columns_of(kind);
  std::string text = options.byte_order_mark ? "\xEF\xBB\xBF" : "";
  std::vector<std::string> names;
  for (const Column& column : columns)
    if (column.written) names.emplace_back(column.name);
  append_csv_row(text, names, options.semicolons ? ';' : ',');
  for (const materials::StockedItem& held : items) {
    if (kind_of(held.item) != kind) continue;
    const auto& packs = held.item.packs;
    append_line(text, columns, {held.item, held.level.on_hand, packs.empty() ? nullptr : &packs.front()},
                true, options);
    for (std::size_t i = 1; i < packs.size(); ++i)
      append_line(text, columns, {held.item, held.level.on_hand, &packs[i]}, false, options);
  }
  return text;
}

}  // namespace evencount::stockroom
