#pragma once
/// Tables as CSV, the first line their columns' names, each line checked against it.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/csv.hpp"

namespace evencount::stockroom {

/// What is wrong with one line; `problem.where` is the column, or empty.
struct LineFault {
  int line = 0;
  Problem problem;
  bool operator==(const LineFault&) const = default;
};

/// "line 7: price: found '3,x', expected …".
[[nodiscard]] std::string message(const LineFault& fault);

struct TableRow {
  int line = 0;  ///< where it begins, from 1
  std::vector<std::string> fields;
  std::optional<Problem>
      fault;  ///< another number of fields than the header, NUL bytes, bytes that are no UTF-8
  bool operator==(const TableRow&) const = default;
};

struct CsvTable {
  char separator = ',';  ///< comma or semicolon, whichever the first line has more of outside quotes
  TableRow header;
  std::vector<TableRow>
      rows;  ///< each as many fields as the header, or with a fault; rows of empty fields are left out
};

inline constexpr int most_lines = 200'000;  ///< rows of one file

/// Errors, `where` naming the line: bad_text (another encoding, a quote that is never closed or stands in the middle of a field, a row too long),
/// missing_field (nothing in it), out_of_range (more than most_lines).
[[nodiscard]] Result<CsvTable> read_csv(std::string_view text);

}  // namespace evencount::stockroom
