#include "strand/run_kinds.hpp"

#include <algorithm>
#include <numeric>

namespace evencount::strand {
namespace {

bool alike(const RunKind& kind, const RunGroup& group) {
  return kind.unit_um == group.unit_um && kind.unit_beads == group.unit_beads && kind.takes == group.takes;
}

/// 1 where a run lies in one place, else 2: the steps in which the group's total can grow.
int step_of(const RunGroup& group) {
  return std::find(group.places.begin(), group.places.end(), 1) == group.places.end() ? 2 : 1;
}

/// The spread of a group that has t units more than its least: 0 where all runs can be equal, else 1.
int spread_of(const RunGroup& group, int t) {
  const std::int64_t most = std::int64_t{group.most - group.least} * places_in_all(group);
  if (t > most || t % step_of(group) != 0) return no_share;
  return t % places_in_all(group) == 0 ? 0 : 1;
}

/// The table of one more group in front of those that share by `rest`.
std::vector<int> joined(const RunGroup& group, const std::vector<int>& rest) {
  std::vector<int> table(rest.size(), no_share);
  for (std::size_t own = 0; own < table.size(); ++own) {
    const int spread = spread_of(group, static_cast<int>(own));
    if (spread == no_share) continue;
    for (std::size_t t = own; t < table.size(); ++t) table[t] = std::min(table[t], spread + rest[t - own]);
  }
  return table;
}

/// Which of `count` runs in a row get one more when `more` of them do.
std::vector<bool> placed_evenly(std::size_t count, std::size_t more) {
  std::vector<bool> chosen(count, false);
  if (more % 2 == 1) {
    chosen[(count - 1) / 2] = true;
    --more;
  }
  for (std::size_t i = 0; more > 0 && i < count; ++i) {
    for (const std::size_t end : {i, count - 1 - i}) {
      if (more == 0 || chosen[end]) continue;
      chosen[end] = true;
      --more;
    }
  }
  return chosen;
}

}  // namespace

int places_in_all(const RunGroup& group) {
  return std::accumulate(group.places.begin(), group.places.end(), 0);
}

std::vector<RunKind> kinds_of(const RunProblem& problem, std::int64_t window_um) {
  std::vector<RunKind> kinds;
  for (std::size_t i = 0; i < problem.groups.size(); ++i) {
    const RunGroup& group = problem.groups[i];
    if (group.places.empty()) continue;
    auto kind = std::find_if(kinds.begin(), kinds.end(), [&](const RunKind& k) { return alike(k, group); });
    if (kind == kinds.end())
      kind = kinds.insert(kinds.end(), {group.unit_um, group.unit_beads, group.takes, {}, 0, {}});
    kind->groups.push_back(i);
    kind->least_total += std::int64_t{group.least} * places_in_all(group);
  }
  for (RunKind& kind : kinds) {
    std::int64_t most = 0;
    for (const std::size_t i : kind.groups)
      most +=
          std::int64_t{problem.groups[i].most - problem.groups[i].least} * places_in_all(problem.groups[i]);
    most = std::min(most, window_um / kind.unit_um);
    std::vector<int> table(static_cast<std::size_t>(most) + 1, no_share);
    table[0] = 0;
    kind.spreads.assign(kind.groups.size() + 1, table);
    for (std::size_t i = kind.groups.size(); i-- > 0;)
      kind.spreads[i] = joined(problem.groups[kind.groups[i]], kind.spreads[i + 1]);
  }
  return kinds;
}

std::vector<std::int64_t> shares_of(const RunProblem& problem, const RunKind& kind, int total) {
  std::vector<std::int64_t> shares;
  for (std::size_t i = 0; i < kind.groups.size(); ++i) {
    const RunGroup& group = problem.groups[kind.groups[i]];
    int own = 0;
    while (spread_of(group, own) + kind.spreads[i + 1][static_cast<std::size_t>(total - own)] !=
           kind.spreads[i][static_cast<std::size_t>(total)])
      ++own;
    shares.push_back(std::int64_t{group.least} * places_in_all(group) + own);
    total -= own;
  }
  return shares;
}

std::vector<int> counts_of(const RunGroup& group, std::int64_t total) {
  const auto twice = static_cast<std::size_t>(std::count(group.places.begin(), group.places.end(), 2));
  const std::size_t once = group.places.size() - twice;
  const auto rest = static_cast<std::size_t>(total % places_in_all(group));
  const std::size_t more_twice = std::min(twice, rest / 2);
  const std::vector<bool> of_twice = placed_evenly(twice, more_twice);
  const std::vector<bool> of_once = placed_evenly(once, rest - 2 * more_twice);
  std::vector<int> counts;
  for (std::size_t i = 0, a = 0, b = 0; i < group.places.size(); ++i) {
    const bool more = group.places[i] == 2 ? of_twice[b++] : of_once[a++];
    counts.push_back(static_cast<int>(total / places_in_all(group)) + (more ? 1 : 0));
  }
  return counts;
}

}  // namespace evencount::strand
