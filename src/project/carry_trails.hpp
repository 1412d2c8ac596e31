#pragma once
/// What of a drawing is one bead wide. Internal to the room.

#include <cstdint>
#include <vector>

#include "chart/grid.hpp"
#include "project/carry_overlap.hpp"

namespace evencount::project {

/// A higher rank goes before a lower one.
enum class TrailRank : std::uint8_t { none, ground_speck, speck_or_ground_line, line };

struct Trail {
  chart::Bead bead = chart::no_bead;
  chart::Cell first;
  int beads = 0;
  TrailRank rank = TrailRank::none;
};

struct Trails {
  std::vector<Trail> trails;
  std::vector<int> of_cell;  ///< step after step; -1 for a cell that is in none
};

/// So many beads in a trail make a line.
inline constexpr int fewest_in_line = 3;

[[nodiscard]] Trails find_trails(const chart::Chart& chart, const Frame& frame, bool columns_round);

}  // namespace evencount::project
