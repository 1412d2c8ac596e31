#pragma once
/// Tables as CSV (RFC 4180), read by libcsv.
///
/// Properties (tests/stockroom/csv_table_test.cpp):
///  (1) reading what append_row wrote gives every field back, whatever it holds but blanks at its ends (quotes, both separators, line
///      ends, any UTF-8) when it isn't empty
///  (2) a row's line is the one it begins on, with LF, CR LF or CR, and with line ends within quotes
///  (3) a byte order mark changes nothing; the separator is found by itself

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"

namespace evencount::stockroom {

/// What is wrong with one line; `problem.where` is the column, or empty.
struct LineFault {
  int line = 0;
  Problem problem;
  bool operator==(const LineFault&) const = default;
};

/// "line 7: price: found '3,x', expected …".
[[nodiscard]] std::string message(const LineFault& fault);

struct CsvRow {
  int line = 0;  ///< where it begins, from 1
  std::vector<std::string> fields;
  std::optional<Problem>
      fault;  ///< another number of fields than the header, NUL bytes, bytes that are no UTF-8
  bool operator==(const CsvRow&) const = default;
};

struct CsvTable {
  char separator = ',';  ///< comma or semicolon, whichever the first line has more of outside quotes
  CsvRow header;
  std::vector<CsvRow>
      rows;  ///< each as many fields as the header, or with a fault; rows of empty fields are left out
};

inline constexpr int most_lines = 200'000;  ///< rows of one file

/// Blanks round a field without quotes do not belong to it.
/// Errors, `where` naming the line: bad_text (another encoding, a quote that is never closed or stands in the middle of a field),
/// missing_field (nothing in it), out_of_range (more than most_lines).
[[nodiscard]] Result<CsvTable> read_csv(std::string_view text);

/// Appends one row, CR LF at its end; fields that need quotes get them.
void append_row(std::string& text, std::span<const std::string> fields, char separator);

}  // namespace evencount::stockroom
