#include "stockroom/csv_table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "base/text.hpp"

namespace evencount::stockroom {
namespace {

std::string line_name(int line) {
  return fmt::format("line {}", line);
}

bool is_empty(const TableRow& row) {
  return std::all_of(row.fields.begin(), row.fields.end(),
                     [](const std::string& field) { return field.empty(); });
}

std::optional<Problem> fault_of(const TableRow& row) {
  for (const std::string& field : row.fields) {
    if (field.find('\0') != std::string::npos)
      return Problem{ProblemCode::bad_text, "", "a NUL byte", "text"};
    if (!is_utf8(field))
      return Problem{ProblemCode::bad_text, "", "bytes that are no UTF-8", "a file saved as UTF-8"};
  }
  return std::nullopt;
}

Result<CsvTable> sort_rows(std::vector<TableRow> rows, char separator) {
  if (rows.empty())
    return Problem{ProblemCode::missing_field, "line 1", "nothing", "the names of the columns"};
  if (rows.size() - 1 > static_cast<std::size_t>(most_lines))
    return Problem{ProblemCode::out_of_range, line_name(rows[static_cast<std::size_t>(most_lines) + 1].line),
                   fmt::format("more than {} lines", most_lines), "several smaller files"};
  CsvTable table{.separator = separator, .header = std::move(rows.front()), .rows = {}};
  if (const auto fault = fault_of(table.header)) return fault->within(line_name(table.header.line));
  rows.erase(rows.begin());
  for (TableRow& row : rows) {
    row.fault = fault_of(row);
    if (!row.fault && row.fields.size() != table.header.fields.size())
      row.fault = Problem{ProblemCode::bad_text, "", fmt::format("{} fields", row.fields.size()),
                          fmt::format("{}, as in the first line", table.header.fields.size())};
  }
  table.rows = std::move(rows);
  return table;
}

}  // namespace

std::string message(const LineFault& fault) {
  return evencount::message(fault.problem.within(line_name(fault.line)));
}

Result<CsvTable> read_csv(std::string_view text) {
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF"))
    return Problem{ProblemCode::bad_text, "line 1", "UTF-16", "a file saved as UTF-8"};
  constexpr std::size_t longest_row = 1'000'000;  // bytes; no item says so much
  CsvRows read = read_csv_rows(text, longest_row);
  if (!read.problems.empty()) return read.problems.front();
  std::vector<TableRow> rows;
  for (CsvRow& row : read.rows)
    if (TableRow checked{row.line, std::move(row.fields), {}}; !is_empty(checked)) rows.push_back(std::move(checked));
  return sort_rows(std::move(rows), read.separator);
}

}  // namespace evencount::stockroom
