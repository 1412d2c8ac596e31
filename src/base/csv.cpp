#include "base/csv.hpp"

#include <csv.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>

namespace evencount {
namespace {

/// One row at a time, byte for byte, so that its line and its end are known.
class RowParser {
 public:
  explicit RowParser(char separator) {
    csv_init(&parser_, CSV_STRICT | CSV_STRICT_FINI);
    csv_set_delim(&parser_, static_cast<unsigned char>(separator));
  }
  ~RowParser() { csv_free(&parser_); }
  RowParser(const RowParser&) = delete;
  RowParser& operator=(const RowParser&) = delete;

  /// False when the byte can't stand there.
  bool add(char byte) { return csv_parse(&parser_, &byte, 1, on_field, on_row, this) == 1; }
  bool end() { return csv_fini(&parser_, on_field, on_row, this) == 0; }
  [[nodiscard]] bool row_is_done() const { return done_; }
  std::vector<std::string> take() { return std::move(fields_); }

 private:
  static void on_field(void* text, std::size_t length, void* self) {
    static_cast<RowParser*>(self)->fields_.emplace_back(text == nullptr ? "" : static_cast<const char*>(text), length);
  }
  static void on_row(int, void* self) { static_cast<RowParser*>(self)->done_ = true; }

  csv_parser parser_{};
  std::vector<std::string> fields_;
  bool done_ = false;
};

bool ends_line(std::string_view text, std::size_t at) {
  return text[at] == '\n' || (text[at] == '\r' && (at + 1 == text.size() || text[at + 1] != '\n'));
}

/// The first byte of the next line.
std::size_t past_line(std::string_view text, std::size_t at) {
  while (at < text.size() && !ends_line(text, at)) ++at;
  return at < text.size() ? at + 1 : at;
}

bool is_blank(std::string_view line) {
  return line.find_first_not_of(" \r\n") == std::string_view::npos;
}

struct ReadRow {
  std::vector<std::string> fields;
  std::size_t length = 0;  ///< bytes, its line's end included
};

/// The row that the text begins with; nothing when it can't be read, or is longer than that.
std::optional<ReadRow> read_row(std::string_view text, char separator, std::size_t longest) {
  RowParser parser(separator);
  std::size_t at = 0;
  while (at < std::min(text.size(), longest) && !parser.row_is_done())
    if (!parser.add(text[at++])) return std::nullopt;
  if (!parser.row_is_done() && (at < text.size() || !parser.end() || !parser.row_is_done())) return std::nullopt;
  if (at > 0 && at < text.size() && text[at - 1] == '\r' && text[at] == '\n') ++at;
  return ReadRow{parser.take(), at};
}

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

std::string_view without_mark(std::string_view text) {
  return text.starts_with(byte_order_mark) ? text.substr(byte_order_mark.size()) : text;
}

}  // namespace

char csv_separator(std::string_view text) {
  constexpr std::array separators{',', ';', '\t'};
  std::array<int, 3> counts{};
  bool within_quotes = false;
  for (const char c : text.substr(0, text.find_first_of("\r\n"))) {
    if (c == '"') within_quotes = !within_quotes;
    for (std::size_t i = 0; i < separators.size(); ++i) counts[i] += !within_quotes && c == separators[i];
  }
  return separators[static_cast<std::size_t>(std::max_element(counts.begin(), counts.end()) - counts.begin())];
}

CsvRows read_csv_rows(std::string_view text, std::size_t longest_row) {
  text = without_mark(text);
  CsvRows read{.separator = csv_separator(text)};
  int line = 1;
  for (std::size_t begin = 0; begin < text.size() && read.problems.size() < most_csv_problems;) {
    std::size_t end = past_line(text, begin);
    if (!is_blank(text.substr(begin, end - begin))) {
      auto row = read_row(text.substr(begin), read.separator, longest_row);
      if (row)
        end = begin + row->length, read.rows.push_back({line, std::move(row->fields)});
      else
        read.problems.push_back({ProblemCode::bad_text, fmt::format("line {}", line),
                                 "a quotation mark out of place, one that is never closed, or a row without end",
                                 "marks round a whole field, closed again, and doubled within it"});
    }
    for (; begin < end; ++begin) line += ends_line(text, begin);
  }
  return read;
}

void append_csv_row(std::string& text, std::span<const std::string> fields, char separator) {
  constexpr std::string_view special = ",;\t\"\r\n";
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

}  // namespace evencount
