#pragma once
/// Motifs as text: letters of the legend, one line a step, column 0 on the left; '.' leaves what is there, '_' is an empty cell.

#include <string>
#include <string_view>
#include <vector>

#include "chart/chart.hpp"

namespace evencount::project {

/// So many steps from one on.
struct StepSpan {
  int first = 0;
  int steps = 0;
  bool operator==(const StepSpan&) const = default;
};

/// The lines of a motif, without the empty ones at its end.
[[nodiscard]] std::vector<std::string_view> motif_lines(std::string_view text);

/// The chart with the motif on it, from the span's first step on, every line in the middle of the columns.
/// Errors, with "line N" of the motif in `where`: wrong_size (more letters than columns, more lines than steps), unknown_name (a letter
/// that is not one of `letters`; small ones stand for capitals).
[[nodiscard]] Result<chart::Chart> with_motif(const chart::Chart& chart, std::string_view text,
                                              const std::vector<std::string>& letters, const StepSpan& span);

}  // namespace evencount::project
