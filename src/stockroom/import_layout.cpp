#include "stockroom/import_layout.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"

namespace evencount::stockroom {
namespace {

using materials::StockKind;

/// Our names for the table's columns; empty for one that is left out.
Result<std::vector<std::string>> our_names(const CsvTable& table, const ImportOptions& options,
                                           const std::string& where) {
  std::vector<std::string> names;
  std::map<std::string, std::string> unused = options.column_of;
  for (const std::string& header : table.header.fields) {
    const std::string theirs(trim(header));
    const auto mapped = options.column_of.find(theirs);
    if (mapped == options.column_of.end() && theirs.empty())
      return Problem{ProblemCode::missing_field, where,
                     fmt::format("no name for column {}", names.size() + 1), "a name for each column"};
    names.push_back(mapped == options.column_of.end() ? lower_ascii(theirs) : mapped->second);
    unused.erase(theirs);
  }
  if (!unused.empty())
    return Problem{ProblemCode::unknown_name, where, "no column " + quote(unused.begin()->first),
                   "the table's own names in a map"};
  return names;
}

Result<StockKind> tell_kind(const std::vector<std::string>& names, const ImportOptions& options,
                            const std::string& where) {
  if (options.kind) return *options.kind;
  std::optional<StockKind> told;
  std::string known;
  for (const StockKind kind : materials::stock_kinds) {
    const std::string own(own_column(kind));
    known += (known.empty() ? "" : ", ") + own;
    if (std::find(names.begin(), names.end(), own) == names.end() && !options.constants.contains(own))
      continue;
    if (told) return Problem{ProblemCode::bad_usage, where, "columns of two kinds", "one of " + known};
    told = kind;
  }
  if (!told)
    return Problem{ProblemCode::bad_usage, where, "nothing that tells the kind of stock",
                   "one of the columns " + known + ", or the kind to be named"};
  return *told;
}

Problem unknown(const std::string& names, StockKind kind, const std::string& where) {
  std::string known;
  for (const Column& column : columns_of(kind))
    known += (known.empty() ? "" : ", ") + std::string(column.name);
  return {ProblemCode::unknown_name, where, "the column " + names,
          "columns of the " + std::string(kind_name(kind)) + ": " + known};
}

Result<Done> add_columns(Layout& layout, const std::vector<std::string>& names, const std::string& where) {
  std::string strange;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (names[i].empty()) continue;
    const Column* column = find_column(layout.kind, names[i]);
    if (column == nullptr)
      strange += (strange.empty() ? "" : ", ") + quote(names[i]);
    else
      layout.fields.push_back({column, i, ""});
  }
  if (!strange.empty()) return unknown(strange, layout.kind, where);
  return Done{};
}

Result<Done> add_constants(Layout& layout, const ImportOptions& options, const std::string& where) {
  for (const auto& [name, value] : options.constants) {
    const Column* column = find_column(layout.kind, name);
    if (column == nullptr || column->part == ColumnPart::code)
      return unknown(quote(name), layout.kind, "set");
    layout.fields.push_back({column, std::nullopt, std::string(trim(value))});
  }
  for (std::size_t i = 0; i < layout.fields.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      if (layout.fields[i].column == layout.fields[j].column)
        return Problem{ProblemCode::duplicate_name, where,
                       "the column " + quote(layout.fields[i].column->name) + " twice", "each column once"};
  return Done{};
}

[[nodiscard]] const Field* find_field(const Layout& layout, std::string_view name) {
  const auto found = std::find_if(layout.fields.begin(), layout.fields.end(),
                                  [&](const Field& field) { return field.column->name == name; });
  return found == layout.fields.end() ? nullptr : &*found;
}

}  // namespace

Result<Layout> lay_out(const CsvTable& table, const ImportOptions& options) {
  const std::string where = fmt::format("line {}", table.header.line);
  const auto names = our_names(table, options, where);
  if (!names) return names.problem();
  const auto kind = tell_kind(*names, options, where);
  if (!kind) return kind.problem();
  Layout layout;
  layout.kind = *kind;
  if (const auto added = add_columns(layout, *names, where); !added) return added.problem();
  if (const auto added = add_constants(layout, options, where); !added) return added.problem();
  if (find_field(layout, "beads_per_gram") && find_field(layout, "thousand_g"))
    return Problem{ProblemCode::duplicate_name, where, "both beads_per_gram and thousand_g", "one of them"};
  const Field* code = find_field(layout, "code");
  if (code == nullptr)
    return Problem{ProblemCode::missing_field, where, "no column code", "a column with each item's code"};
  layout.code_at = *code->at;
  for (const Field& field : layout.fields)
    layout.has_packs |= field.column->part == ColumnPart::pack && !field.is_constant();
  for (const Column& column : columns_of(*kind))
    if (column.required && !find_field(layout, column.name))
      layout.missing += (layout.missing.empty() ? "" : ", ") + std::string(column.name);
  return layout;
}

}  // namespace evencount::stockroom
