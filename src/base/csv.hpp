#pragma once
/// Comma-separated values (RFC 4180): text to rows of fields and back. The fields are libcsv's.
///
/// Properties (tests/base/csv_test.cpp):
///  (1) reading what append_csv_row wrote gives every field back, whatever it holds (quotes, separators, line ends, any bytes but blanks
///      at the ends of a field that needs no quotes)
///  (2) a row's line is the one it begins on, with LF, CR LF or CR, and with line ends within quotes
///  (3) a byte order mark changes nothing
///  (4) a row that can't be read is a problem with its line, and the rows after it are read as if it weren't there; after
///      most_csv_problems of them the rest is left

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"

namespace evencount {

struct CsvRow {
  int line = 0;  ///< of the text, from 1: where the row begins
  std::vector<std::string> fields;
  bool operator==(const CsvRow&) const = default;
};

/// Keeps a file full of open quotes from being read again and again.
inline constexpr std::size_t most_csv_problems = 50;

struct CsvRows {
  char separator = ',';
  std::vector<CsvRow> rows;
  std::vector<Problem> problems;  ///< bad_text, "line 7": quotes that don't pair, a row that is too long
};

/// The comma, semicolon or tabulator that the first line has most of outside quotes; a comma for none.
[[nodiscard]] char csv_separator(std::string_view text);

/// Blank lines are passed over. Blanks round a field without quotes are not part of it. No row is longer than `longest_row` bytes.
[[nodiscard]] CsvRows read_csv_rows(std::string_view text, std::size_t longest_row);

/// Appends one row, CR LF at its end; fields that need quotes get them.
void append_csv_row(std::string& text, std::span<const std::string> fields, char separator);

}  // namespace evencount
