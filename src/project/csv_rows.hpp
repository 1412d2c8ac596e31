#pragma once
/// CSV text to rows of fields, each with the line it begins on. Internal to the room; the fields are libcsv's.

#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"

namespace evencount::project {

struct CsvRow {
  int line = 0;  ///< of the text, from 1
  std::vector<std::string> fields;
};

struct CsvRows {
  std::vector<CsvRow> rows;
  std::vector<Problem>
      problems;  ///< bad_text, "line 7": quotes that don't pair, a row that is too long. The rows after it are read
};

/// A byte order mark is passed over, and so are blank lines. Spaces round an unquoted field are not part of it.
[[nodiscard]] CsvRows read_csv(std::string_view text, char separator, std::size_t longest_row);

}  // namespace evencount::project
