#pragma once
/// Reading word charts back: from our own words, a booklet's text, or what a designer typed in the trade's
/// usual ways.
///
/// The reader shares no code with the writer. It knows peyote's rows and nothing of plans made elsewhere.
///
/// Accepted for a run: `(2)A`, `2A`, `A2`, `2 x A`, `2×A`, `A x 2`, `A` (one bead); runs parted by commas,
/// semicolons or spaces; letters in either case, one to three of them. A lower-case x between a count and a
/// letter always means "times". Accepted for a label: `Row 3 (R):`, `Row 3:`, `Rows 1-2 →`, `Rows 1–2 (L):`,
/// `Rows 1 & 2 (L to R)`, `R3.`, `R1-2`, `3:`. A line may hold several rows; a row may run on over following
/// lines. Other text is skipped, so that a whole booklet can be read. A band begins at each rows-1-2 line;
/// the nearest "Word chart: NAME" line above names it, and the facts line below that, if there is one, is
/// checked against what was read.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "chart/chart.hpp"
#include "weave/plan.hpp"

namespace evencount::wording {

struct ReadOptions {
  /// The letters of the legend in order. When empty, the letters that occur anywhere in the text are taken, in
  /// alphabetical order (A … Z, AA …), so that the bands of one booklet share them. Each chart's beads are
  /// positions in that list.
  std::vector<std::string> legend;
  std::optional<int> columns;  ///< what each band must have, if known
  std::optional<int> rows;
};

struct ReadBand {
  std::string name;  ///< empty when no heading names it
  chart::Chart chart;
  std::vector<std::string> letters;                  ///< letters[bead]
  weave::Travel first_travel = weave::Travel::left;  ///< as the words say for rows 1-2; left when they do not
  int rows = 0;
  std::optional<weave::Closure> closure;  ///< as the facts line says
  std::string technique;                  ///< id, from the number of columns
  bool operator==(const ReadBand&) const = default;
};

/// Every band in the text, in order; at least one.
/// Cells follow the order of stringing: rows 1-2 run from the last column to column 0 whatever direction the
/// words name. Errors (bad_words unless said): "row 14, after 2A: found 5 beads, expected 3"; a row missing,
/// repeated or out of order; a direction that does not alternate; a letter outside the legend (unknown_name);
/// sizes beyond chart::most_columns and most_edge (out_of_range); no rows at all; facts that disagree.
/// `where` names the line of the text and the row.
[[nodiscard]] Result<std::vector<ReadBand>> read_words(std::string_view text,
                                                       const ReadOptions& options = {});

}  // namespace evencount::wording
