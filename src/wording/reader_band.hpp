#pragma once
/// The rows that were found between one rows-1-2 line and the next, and whether they are a whole band.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "chart/chart.hpp"
#include "weave/plan.hpp"
#include "wording/reader_facts.hpp"

namespace evencount::wording::reader {

struct FoundRun {
  int count = 1;
  int letter = 0;  ///< its place in A, B … Z, AA …
};

struct FoundRow {
  int first_row = 1;
  int last_row = 1;
  int line = 0;
  std::optional<weave::Travel> travel;
  std::vector<FoundRun> runs;
  int beads = 0;
};

/// A line that was skipped although it might have been meant as a row.
struct Suspect {
  int line = 0;
  bool by_label = false;  ///< it had a row's label; else it only held runs
};

struct FoundBand {
  std::string name;
  std::optional<Facts> facts;
  std::map<int, FoundRow> rows;           ///< by first row
  std::map<int, Suspect> labelled_lines;  ///< by the row that their label names
  std::vector<int> run_lines;             ///< lines of runs that belonged to no row
};

/// What the band must be, if that is known from elsewhere.
struct Wanted {
  std::optional<int> columns;
  std::optional<int> rows;
};

inline constexpr int highest_row = 2 * chart::most_edge;

[[nodiscard]] std::string row_text(int first_row, int last_row);

/// "line 12, row 14, after 2A"; `after` may be empty.
[[nodiscard]] std::string place_text(const FoundRow& row, std::string_view after);

/// The number of columns: what is wanted, or the facts say; else nothing until rows 1-2 have been read.
[[nodiscard]] std::optional<int> stated_columns(const FoundBand& band, const Wanted& wanted);

/// How many beads a row of so many columns takes.
[[nodiscard]] int beads_needed(int columns, int first_row);

/// The finished complaint about a row of the wrong length.
[[nodiscard]] Problem wrong_length(const FoundRow& row, int beads, int needed);

/// Whether every row is there, of the right length, going the right way, as the facts say.
[[nodiscard]] Result<Done> check_band(const FoundBand& band, const Wanted& wanted);

/// The chart of a band that has been checked; `bead_of_letter[letter]` for each letter that occurs.
[[nodiscard]] Result<chart::Chart> chart_of(const FoundBand& band,
                                            const std::map<int, chart::Bead>& bead_of_letter);

[[nodiscard]] int row_total(const FoundBand& band);

}  // namespace evencount::wording::reader
