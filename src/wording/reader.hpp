#pragma once
/// Reading word charts back: from our own words, a booklet's text, or what a designer typed in the trade's
/// usual ways.
///
/// The reader shares no code with the writer. It knows the rows of every technique by its own rules (reader_rows.hpp) and nothing
/// of plans made elsewhere.
///
/// Accepted for a run: `(2)A`, `2A`, `A2`, `2 x A`, `2×A`, `A x 2`, `A` (one bead); runs parted by commas,
/// semicolons or spaces; letters in either case, one to three of them. A lower-case x between a count and a
/// letter always means "times". Accepted for a label: `Row 3 (R):`, `Row 3:`, `Rows 1-2 →`, `Rows 1–2 (L):`,
/// `Rows 1 & 2 (L to R)`, `R3.`, `R1-2`, `3:`, `Row 4 (U), decrease at the beginning:`, `Round 9 (R), on the back:`. A line may
/// hold several rows; a row may run on over following lines. Other text is skipped, so that a whole booklet can be read. A band
/// begins at each line of rows 1-2, or of row 1 where a technique's rows are not strung together; the nearest
/// "Word chart: NAME" line above names it, and the facts line below that, if there is one, tells its technique and is
/// checked against what was read. Without facts, rows 1-2 begin flat peyote.
///
/// Work that is written once for several times is unfolded: `*(2)A, (1)B* × 6` within a row (also `x 6`, `6 times`, `twice`) and
/// `Rows 13–28: work rows 5–12 twice`.

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
  std::optional<int> columns;  ///< what each band's chart must have, if known
  std::optional<int> rows;
  std::optional<std::string> technique;  ///< id, of every band; else the facts tell it
};

/// Cells of all bands of a text. A few lines of work that is done again can ask for a chart of the largest size, so the length of
/// the text alone is no bound; no booklet comes near this one.
inline constexpr int most_cells_read = 64 * chart::most_cells;

struct ReadBand {
  std::string name;  ///< empty when no heading names it
  chart::Chart chart;
  std::vector<std::string> letters;  ///< letters[bead]
  weave::Travel first_travel =
      weave::Travel::left;  ///< as the words say for the first row; left when they do not
  int rows = 0;
  std::optional<weave::Closure> closure;  ///< as the facts line says; round for what is worked in the round
  std::string technique;                  ///< id; when it isn't named, flat peyote by the number of columns
  int begin_at = 0;                       ///< as in weave::Making: the rounds of a bezel's back
  bool operator==(const ReadBand&) const = default;
};

/// Every band in the text, in order; at least one.
/// Cells follow the order of stringing: rows 1-2 of flat peyote run from the last column to column 0 whatever direction the
/// words name. Errors (bad_words unless said): "row 14, after 2A: found 5 beads, expected 3"; a row missing,
/// repeated or out of order; a direction that does not alternate; a label that the technique does not know; rows to be worked
/// again that are not there; a letter outside the legend, a technique that nobody knows (unknown_name); sizes beyond
/// chart::most_columns, most_edge and most_cells, or beyond `most_cells_read` for all bands (out_of_range); no rows at all;
/// facts that disagree. `where` names the line of the text and the row.
[[nodiscard]] Result<std::vector<ReadBand>> read_words(std::string_view text,
                                                       const ReadOptions& options = {});

}  // namespace evencount::wording
