#pragma once
/// Groups whose units are alike, taken together: only their total counts for the length and for what is on
/// hand. Internal to the
/// room.

#include "strand/run_counts.hpp"

namespace evencount::strand {

/// Totals are counted from the least of every run.
struct RunKind {
  std::int64_t unit_um = 0;
  int unit_beads = 0;
  std::vector<TakenBead> takes;
  std::vector<std::size_t> groups;  ///< indices in the problem
  std::int64_t least_total = 0;     ///< units that the least of every run makes
  /// spreads[i][t]: the least spread with which the groups from the i-th on share t units more than their
  /// least; `no_share`
  /// where they can't.
  std::vector<std::vector<int>> spreads;
};
inline constexpr int no_share = 1 << 20;

/// In the order of their first groups. Totals up to `window_um` beyond the least.
[[nodiscard]] std::vector<RunKind> kinds_of(const RunProblem& problem, std::int64_t window_um);

/// Units in all places when every run of the group has one.
[[nodiscard]] int places_in_all(const RunGroup& group);

/// How the groups of a kind share a total that they can: the smallest total for the first of them, then for
/// the second, ….
[[nodiscard]] std::vector<std::int64_t> shares_of(const RunProblem& problem, const RunKind& kind, int total);

/// The counts of a group's runs that make up `total` units in all their places.
[[nodiscard]] std::vector<int> counts_of(const RunGroup& group, std::int64_t total);

}  // namespace evencount::strand
