#pragma once
/// Which chosen bead each spot takes: the nearest, or, where beads run short, the cheapest way to share them out. This room's own.
///
/// With limits this is a transportation problem with few sinks: all cells start at their nearest bead, then overfull beads
/// send cells on along shortest paths from bead to bead until none is overfull. Each step keeps the assignment the cheapest
/// one for its loads (successive shortest paths), so the last is the cheapest of all.

#include <optional>

#include "picture/choice_model.hpp"

namespace evencount::picture {

/// Above every CIEDE2000 there is: what a spot's second choice costs when there is none.
inline constexpr double farther_than_any = 1000;

struct Share {
  int spot;
  int place;  ///< in the chosen candidates
  double cells;
};

/// Chosen candidates and what they cost.
struct Assignment {
  Candidates chosen;
  double total = 0;  ///< sum over the cells of the difference to their bead
  std::vector<double>
      price;               ///< of each chosen: what one cell more would cost the others; all 0 without limits
  std::vector<int> first;  ///< of each spot: the place of its nearest, price included
  std::vector<double> near, next;  ///< differences (price included) to the nearest and the second nearest
  std::vector<Share>
      shares;  ///< who takes what; in order of spots; empty without limits: everyone takes `first`
};

/// Nothing when the chosen have too few beads for all cells; nor need there be, with limits, when the total is above `give_up`.
[[nodiscard]] std::optional<Assignment> assign(ChoiceModel& model, Candidates chosen,
                                               double give_up = without_limit);

}  // namespace evencount::picture
