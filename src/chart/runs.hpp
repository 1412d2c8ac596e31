#pragma once
/// Run-length rows: how a chart's steps are kept in a project, one short line each.

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "chart/chart.hpp"

namespace evencount::chart {

/// So many beads of one kind in a row. `count` is at least 1.
struct Run {
  int count = 1;
  Bead bead = 0;
  bool operator==(const Run&) const = default;
};

/// The shortest list of runs that spells `beads`. Neighbouring runs differ.
[[nodiscard]] std::vector<Run> to_runs(std::span<const Bead> beads);

/// "2A 1B 3A", each bead named by `letters[bead]`; an empty cell is '.'.
[[nodiscard]] std::string to_text(std::span<const Run> runs, std::span<const std::string> letters);

/// The inverse: a line of runs that must come to `length` beads.
/// Errors: bad_text (a run that isn't a count and a letter), unknown_name (a letter outside `letters`),
/// wrong_size. Properties: parse_runs(to_text(to_runs(b), l), l, b.size()) == b.
[[nodiscard]] Result<std::vector<Bead>> parse_runs(std::string_view text,
                                                   std::span<const std::string> letters, int length);

}  // namespace evencount::chart
