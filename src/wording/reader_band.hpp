#pragma once
/// The rows that were found between the first rows of one band and those of the next, and whether they are a whole band.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "chart/chart.hpp"
#include "weave/plan.hpp"
#include "wording/reader_facts.hpp"
#include "wording/reader_row.hpp"
#include "wording/reader_rows.hpp"

namespace evencount::wording::reader {

/// Rows that are worked again: "Rows 13–28: work rows 5–12 twice".
struct FoundRepeat {
  int first_row = 0;
  int last_row = 0;
  int line = 0;
  std::optional<weave::Travel> travel;  ///< of its first row, if that is said
  bool on_back = false;                 ///< it is said that its rounds lie on the back
  int first_source = 0;                 ///< the rows named
  int last_source = 0;
  std::optional<int> times;  ///< when left out, as often as it takes
};

/// A line that was skipped although it might have been meant as a row.
struct Suspect {
  int line = 0;
  bool by_label = false;  ///< it had a row's label; else it only held runs
};

struct FoundBand {
  std::string name;
  const RowRules* rules = nullptr;  ///< never null; flat peyote when nothing names the technique
  bool named = false;               ///< the technique was named, by the facts or the caller
  std::optional<Facts> facts;
  std::map<int, FoundRow> rows;           ///< by first row
  std::map<int, FoundRepeat> repeats;     ///< by first row
  std::map<int, Suspect> labelled_lines;  ///< by the row that their label names
  std::vector<int> run_lines;             ///< lines of runs that belonged to no row
};

/// What the band must be, if that is known from elsewhere.
struct Wanted {
  std::optional<int> columns;
  std::optional<int> rows;
  const RowRules* rules = nullptr;  ///< null when the technique isn't known
};

/// The number of columns: what is wanted, or the facts say; else nothing until the first row has been read.
[[nodiscard]] std::optional<int> stated_columns(const FoundBand& band, const Wanted& wanted);

/// The number of columns, as far as it is known when `row` is read.
[[nodiscard]] std::optional<int> columns_for(const FoundBand& band, const Wanted& wanted, const FoundRow& row,
                                             bool first_row_is_whole);

/// A band whose every row is there, has the right length, goes the right way and is what the facts say.
struct CheckedBand {
  const RowRules* rules = nullptr;
  WholeBand whole;
  Extent extent;
};
[[nodiscard]] Result<CheckedBand> check_band(const FoundBand& band, const Wanted& wanted);

/// The chart of a checked band; `beads` has every letter that occurs.
[[nodiscard]] Result<chart::Chart> chart_of(const CheckedBand& band, const BeadOfLetter& beads);

}  // namespace evencount::wording::reader
