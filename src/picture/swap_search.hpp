#pragma once
/// Choosing by adding the best colour and exchanging one chosen colour for another while that helps. This room's own.
///
/// One pass over the near list prices every exchange at once, after E. Schubert, P. J. Rousseeuw, "Fast and eager k-medoids
/// clustering", Information Systems 101, 2021: an exchange's gain is what the newcomer gains, what the leaver loses, and a correction
/// for the leaver's own spots.

#include <optional>

#include "picture/limited_assignment.hpp"

namespace evencount::picture {

/// Adds the best candidates, one by one, until there are `count` (or none left).
[[nodiscard]] Candidates add_greedily(ChoiceModel& model, const NearList& list, Candidates chosen, int count);

/// Exchanges chosen candidates (never required ones) while the total falls, at most `swaps` times.
[[nodiscard]] Assignment exchange(ChoiceModel& model, const NearList& list, Assignment start, int swaps);

}  // namespace evencount::picture
