#pragma once
/// A lower bound on every choice of beads, by Lagrangian relaxation. This room's own.
///
/// A multiplier u for each spot is what serving a cell of it may cost. Whatever the multipliers are,
///
///     bound(u) = sum of weight * u + the K least of rho_j,   rho_j = sum of weight * min(0, difference - u) over the spots
///
/// is at most the cost of any K candidates: docs/algorithms/picture_choice.md. Only differences below u count, so a near list
/// that reaches as far as every u holds all that is needed of the whole stock. A limit on hand makes rho_j a knapsack: the
/// most welcome cells first, until the beads run out.

#include <functional>

#include "picture/limited_assignment.hpp"

namespace evencount::picture {

/// What is decided about a candidate.
enum class Fate : signed char { out, open, in };

/// A branch of the search: fates, and the multipliers and the bound that hold for every choice that agrees with them.
struct Branch {
  std::vector<Fate> fates;
  std::vector<double> multipliers;
  double bound = 0;
  std::vector<double> popularity;  ///< how often each candidate was among the K least of late, 0 to 1
};

struct AscentLimits {
  int rounds;
  double tolerance;   ///< a bound this close below `upper` counts as reaching it
  double enough_gap;  ///< relative
};

/// Raises the bound of a branch by subgradient steps (Polyak's length, deflected), and fixes candidates whose other fate would cost
/// more than `upper`. `offer` is shown each set that the relaxation picks and returns the total of the best choice known.
/// Ends when the bound reaches `upper`, when steps have become too short, or after so many rounds.
/// The list must hold all candidates that are not out; those fixed out are taken off it.
void ascend(ChoiceModel& model, NearList& list, int count, Branch& branch, double upper,
            const std::function<double(const Candidates&)>& offer, const AscentLimits& limits);

/// Multipliers to begin with: between what the nearest and the second nearest bead of a choice cost.
[[nodiscard]] std::vector<double> first_multipliers(const Assignment& choice, const NearList& list);

}  // namespace evencount::picture
