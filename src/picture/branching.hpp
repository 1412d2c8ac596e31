#pragma once
/// Closing what the bound at the root leaves open: branch and bound over single candidates. This room's own.

#include "picture/dual_bound.hpp"

namespace evencount::picture {

struct Proof {
  Assignment best;
  double bound = 0;                 ///< on the total; no admissible choice is below it
  int nodes = 0;                    ///< branches looked at after the root
  std::vector<double> multipliers;  ///< the root's, to start a neighbouring count from
};

/// The best choice of `count` candidates and a bound on all, within the effort. With effort enough, bound >= best.total - tolerance.
[[nodiscard]] Proof prove(ChoiceModel& model, NearList list, int count, Assignment start,
                          std::vector<double> multipliers, const ChoiceEffort& effort, double tolerance);

}  // namespace evencount::picture
