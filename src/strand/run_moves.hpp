#pragma once
/// The cheapest way to every length, kind of unit by kind of unit. Internal to the room.

#include <cstdint>
#include <vector>

namespace evencount::strand {

/// Spread above, beads below: compared as numbers, the spread counts first.
using Cost = std::uint32_t;
inline constexpr Cost unreachable = Cost{1} << 30;
inline constexpr int spread_shift = 20;

/// Totals that lie evenly apart: from `first` on, `count` of them, `step` apart (in grid steps), each costing
/// `step_cost` more than
/// the one before.
struct Moves {
  std::int64_t first = 0, step = 1, count = 1;
  Cost first_cost = 0, step_cost = 0;
};

/// next[x] = min(next[x], prev[x - m] + cost(m)) over all m of the moves. Linear in the size, however many there are.
void apply(const Moves& moves, const std::vector<Cost>& prev, std::vector<Cost>& next);

}  // namespace evencount::strand
