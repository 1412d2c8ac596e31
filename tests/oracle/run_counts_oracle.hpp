#pragma once
/// The best counts of runs, by trying all of them.

#include <algorithm>
#include <optional>
#include <tuple>
#include <vector>

#include "strand/run_counts.hpp"

namespace evencount::strand::oracle {

/// 1 to 5 of strand/run_counts.hpp, smaller is better.
struct Rank {
  std::int64_t error_um = 0;
  int spread = 0;
  std::int64_t beads = 0, length_um = 0;
  std::vector<std::int64_t> kind_totals, group_totals;
  auto operator<=>(const Rank&) const = default;
};

inline std::optional<Rank> rank_of(const RunProblem& problem, const std::vector<std::vector<int>>& counts) {
  Rank rank;
  std::vector<std::int64_t> left = problem.on_hand;
  std::vector<std::size_t> kinds;  // the first group of each
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    const RunGroup& group = problem.groups[g];
    std::int64_t total = 0;
    for (std::size_t r = 0; r < counts[g].size(); ++r) {
      if (counts[g][r] < group.least || counts[g][r] > group.most) return std::nullopt;
      total += std::int64_t{group.places[r]} * counts[g][r];
    }
    if (!counts[g].empty()) {
      const auto [low, high] = std::minmax_element(counts[g].begin(), counts[g].end());
      rank.spread += *high - *low;
    }
    rank.length_um += group.unit_um * total;
    rank.beads += group.unit_beads * total;
    for (const TakenBead& taken : group.takes)
      left[static_cast<std::size_t>(taken.bead)] -= taken.count * total;
    rank.group_totals.push_back(total);
    std::size_t kind = 0;
    while (kind < kinds.size() && !(problem.groups[kinds[kind]].unit_um == group.unit_um &&
                                    problem.groups[kinds[kind]].unit_beads == group.unit_beads &&
                                    problem.groups[kinds[kind]].takes == group.takes))
      ++kind;
    if (kind == kinds.size()) {
      kinds.push_back(g);
      rank.kind_totals.push_back(0);
    }
    rank.kind_totals[kind] += total;
  }
  for (const std::int64_t rest : left)
    if (rest < 0) return std::nullopt;
  rank.error_um = std::abs(rank.length_um - problem.room_um);
  return rank;
}

struct Ranks {
  std::optional<Rank> not_longer, not_shorter;
};

/// Every count of every run from its least to its most, or to what `highest` says.
inline Ranks best_ranks(const RunProblem& problem, int highest) {
  std::vector<std::vector<int>> counts;
  for (const RunGroup& group : problem.groups) counts.emplace_back(group.places.size(), group.least);
  Ranks best;
  const auto offer = [](std::optional<Rank>& place, const Rank& rank) {
    if (!place || rank < *place) place = rank;
  };
  for (bool more = true; more;) {
    if (const auto rank = rank_of(problem, counts)) {
      if (rank->length_um <= problem.room_um) offer(best.not_longer, *rank);
      if (rank->length_um >= problem.room_um) offer(best.not_shorter, *rank);
    }
    more = false;
    for (std::size_t g = 0; g < counts.size() && !more; ++g)
      for (std::size_t r = 0; r < counts[g].size() && !more; ++r) {
        more = counts[g][r] < std::min(problem.groups[g].most, highest);
        counts[g][r] = more ? counts[g][r] + 1 : problem.groups[g].least;
      }
  }
  return best;
}

}  // namespace evencount::strand::oracle
