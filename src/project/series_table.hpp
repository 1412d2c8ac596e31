#pragma once
/// The table of a series: CSV (RFC 4180), one band a line. Columns are found by their heads, in any order, of which only the name must be
/// there:
///
///   name          the band's; single in the table
///   front, back   text on that face; \n, or a line break between quotes, begins a new line
///   front motif, back motif   the name of a motif text (motif.hpp)
///   letter        what the texts of this line are drawn in, a letter of the legend
///   colour B      what takes the place of letter B in this line: another letter, #rrggbb or #rrggbb:NAME
///   note          printed below the band's name
///   copies        how many of it one piece takes
///
/// Fields are parted by commas, or by semicolons or tabs where the first line has more of them; heads may be written with
/// capitals. Blank lines, and lines of nothing but commas, are passed over; a line may end early.
///
/// Properties (tests/project/series_table_test.cpp):
///  (1) lines written as CSV, whatever their texts hold, are read back
///  (2) a bad line is named by its number in the file and its column, and all others read as if it were not there
///  (3) any bytes at all are read without harm

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"
#include "colour/srgb.hpp"

namespace evencount::project {

/// What takes a letter's place: another letter, or a colour with its name.
struct SeriesColour {
  std::string letter;
  std::optional<colour::Rgb> colour;
  std::string name;
  bool operator==(const SeriesColour&) const = default;
};

struct SeriesRow {
  int line = 0;  ///< of the file, from 1: where it begins
  std::string name, front, back, front_motif, back_motif, letter, note;
  std::optional<int> copies;
  std::map<std::string, SeriesColour> colours;  ///< by the letter they take the place of
  bool operator==(const SeriesRow&) const = default;
};

struct SeriesTable {
  std::vector<SeriesRow> rows;  ///< the good ones, in order
  std::vector<Problem>
      problems;  ///< of the bad ones, in order; `where` begins "line 7" or "line 7, column back motif"
  bool operator==(const SeriesTable&) const = default;
};

inline constexpr std::size_t longest_table = 1u << 20;  ///< bytes
inline constexpr std::size_t longest_table_row =
    16u << 10;  ///< bytes; a quote that is never closed runs no further

/// Errors of the whole table: out_of_range (too long, more rows than a project may have bands), missing_field (no line of heads, no
/// name among them), unknown_name or duplicate_name (a head), bad_text (a line of heads that can't be read).
/// Of single lines: bad_text (quotes, UTF-8, control characters, a colour), missing_field (no name), duplicate_name, out_of_range
/// (copies), wrong_size (more fields than heads).
[[nodiscard]] Result<SeriesTable> parse_series_table(std::string_view text);

}  // namespace evencount::project
