#include "project/csv_rows.hpp"

#include <csv.h>
#include <fmt/format.h>

#include <optional>

namespace evencount::project {
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
    static_cast<RowParser*>(self)->fields_.emplace_back(text == nullptr ? "" : static_cast<const char*>(text),
                                                        length);
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

/// The row that the text begins with; nothing when it can't be read or doesn't end.
std::optional<ReadRow> read_row(std::string_view text, char separator) {
  RowParser parser(separator);
  std::size_t at = 0;
  while (at < text.size() && !parser.row_is_done())
    if (!parser.add(text[at++])) return std::nullopt;
  if (!parser.row_is_done() && (!parser.end() || !parser.row_is_done())) return std::nullopt;
  if (at > 0 && at < text.size() && text[at - 1] == '\r' && text[at] == '\n') ++at;
  return ReadRow{parser.take(), at};
}

}  // namespace

CsvRows read_csv(std::string_view text, char separator, std::size_t longest_row) {
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  CsvRows read;
  int line = 1;
  for (std::size_t begin = 0; begin < text.size();) {
    std::size_t end = past_line(text, begin);
    if (!is_blank(text.substr(begin, end - begin))) {
      auto row = read_row(text.substr(begin, longest_row), separator);
      if (row)
        end = begin + row->length, read.rows.push_back({line, std::move(row->fields)});
      else
        read.problems.push_back({ProblemCode::bad_text, fmt::format("line {}", line),
                                 "quotes that do not pair, or a line without end",
                                 "a quote at both ends of a field, and doubled within it"});
    }
    for (; begin < end; ++begin) line += ends_line(text, begin);
  }
  return read;
}

}  // namespace evencount::project
