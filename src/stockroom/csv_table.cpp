#include "stockroom/csv_table.hpp"

#include <csv.h>
#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "base/text.hpp"

namespace evencount::stockroom {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

std::string line_name(int line) {
  return fmt::format("line {}", line);
}

/// The end of the line that begins at `start`, its line end included: LF, CR LF or CR.
std::size_t end_of_line(std::string_view text, std::size_t start) {
  const auto end = text.find_first_of("\r\n", start);
  if (end == std::string_view::npos) return text.size();
  return text[end] == '\r' && end + 1 < text.size() && text[end + 1] == '\n' ? end + 2 : end + 1;
}

char separator_of(std::string_view first_line) {
  int commas = 0, semicolons = 0;
  bool within_quotes = false;
  for (const char c : first_line) {
    if (c == '"') within_quotes = !within_quotes;
    if (within_quotes) continue;
    commas += c == ',';
    semicolons += c == ';';
  }
  return semicolons > commas ? ';' : ',';
}

bool is_empty(const CsvRow& row) {
  return std::all_of(row.fields.begin(), row.fields.end(),
                     [](const std::string& field) { return field.empty(); });
}

/// libcsv is fed one line at a time, since it doesn't say where in the text a row begins.
class Reader {
 public:
  explicit Reader(char separator) {
    csv_init(&parser_, CSV_STRICT | CSV_STRICT_FINI);
    csv_set_delim(&parser_, static_cast<unsigned char>(separator));
  }
  ~Reader() { csv_free(&parser_); }
  Reader(const Reader&) = delete;
  Reader& operator=(const Reader&) = delete;

  [[nodiscard]] std::optional<Problem> feed(std::string_view line, int number) {
    if (!within_row_) row_.line = number;
    const bool blank = trim(line).empty();
    ended_ = false;
    if (csv_parse(&parser_, line.data(), line.size(), on_field, on_row, this) != line.size())
      return out_of_place(number);
    within_row_ = !ended_ && (within_row_ || !blank);
    return std::nullopt;
  }

  [[nodiscard]] std::optional<Problem> finish(int number) {
    if (csv_fini(&parser_, on_field, on_row, this) != 0) return out_of_place(number);
    return std::nullopt;
  }

  std::vector<CsvRow> rows;

 private:
  Problem out_of_place(int number) const {
    if (csv_error(const_cast<csv_parser*>(&parser_)) != CSV_EPARSE)
      return {ProblemCode::bad_text, line_name(number), "a field too large to keep", "a table of stock"};
    std::string found = "a quotation mark out of place, or one that is never closed";
    if (number != row_.line) found += fmt::format(" (seen on line {})", number);
    return {ProblemCode::bad_text, line_name(row_.line), found,
            "marks round a whole field, closed again, and doubled within it"};
  }
  static void on_field(void* bytes, std::size_t size, void* reader) {
    static_cast<Reader*>(reader)->row_.fields.emplace_back(static_cast<const char*>(bytes), size);
  }
  static void on_row(int, void* reader) {
    auto& self = *static_cast<Reader*>(reader);
    if (!is_empty(self.row_)) self.rows.push_back(std::move(self.row_));
    self.row_.fields.clear();
    self.ended_ = true;
  }

  csv_parser parser_{};
  CsvRow row_;
  bool within_row_ = false, ended_ = false;
};

std::optional<Problem> fault_of(const CsvRow& row) {
  for (const std::string& field : row.fields) {
    if (field.find('\0') != std::string::npos)
      return Problem{ProblemCode::bad_text, "", "a NUL byte", "text"};
    if (!is_utf8(field))
      return Problem{ProblemCode::bad_text, "", "bytes that are no UTF-8", "a file saved as UTF-8"};
  }
  return std::nullopt;
}

Result<CsvTable> sort_rows(std::vector<CsvRow> rows, char separator) {
  if (rows.empty())
    return Problem{ProblemCode::missing_field, "line 1", "nothing", "the names of the columns"};
  if (rows.size() - 1 > static_cast<std::size_t>(most_lines))
    return Problem{ProblemCode::out_of_range, line_name(rows[static_cast<std::size_t>(most_lines) + 1].line),
                   fmt::format("more than {} lines", most_lines), "several smaller files"};
  CsvTable table{.separator = separator, .header = std::move(rows.front()), .rows = {}};
  if (const auto fault = fault_of(table.header)) return fault->within(line_name(table.header.line));
  rows.erase(rows.begin());
  for (CsvRow& row : rows) {
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
  if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
  const char separator = separator_of(text.substr(0, end_of_line(text, 0)));
  Reader reader(separator);
  int number = 0;
  for (std::size_t start = 0; start < text.size();) {
    const std::size_t end = end_of_line(text, start);
    if (auto problem = reader.feed(text.substr(start, end - start), ++number)) return *problem;
    start = end;
  }
  if (auto problem = reader.finish(number)) return *problem;
  return sort_rows(std::move(reader.rows), separator);
}

void append_row(std::string& text, std::span<const std::string> fields, char separator) {
  constexpr std::string_view special = ",;\"\r\n";
  bool first = true;
  for (const std::string& field : fields) {
    if (!first) text += separator;
    first = false;
    if (field.find_first_of(special) == std::string::npos) {
      text += field;
      continue;
    }
    const std::size_t begin = text.size();
    text.resize(begin + csv_write(nullptr, 0, field.data(), field.size()));
    csv_write(text.data() + begin, text.size() - begin, field.data(), field.size());
  }
  text += "\r\n";
}

}  // namespace evencount::stockroom
