#pragma once
/// How high what is strung lies on a table. Internal to the room.
///
/// Properties (tests/strand/resting_test.cpp):
///  (1) as by looking at every other thing: the highest of its own half and, for each other one, that one's half less what the cord
///      falls from its nearer end, in a loop by the shorter way round; within 1e-9 mm
///  (2) begun at another thing of a loop, or strung the other way round, everything lies as high

#include <vector>

namespace evencount::strand {

/// A thing on a table as the way to its resting height is reckoned.
struct Resting {
  double begin_mm = 0, end_mm = 0;  ///< along the cord
  double half_thickness_mm = 0;
  bool rigid = false;  ///< lies level
};

/// Height lost along a strung cord that leaves a hole, by millimetre, from memory of the look.
inline constexpr double cord_falls = 0.25;

/// How high each middle lies: on the table, or held up by a thicker neighbour, from which the cord falls away. One a thing, in
/// millimetres; in time linear in their number. `things` lie one after another along the cord; a loop's last thing meets the first after
/// `whole_mm`, which is not less than where the last one ends.
[[nodiscard]] std::vector<double> resting_heights(const std::vector<Resting>& things, double whole_mm,
                                                  bool loop);

}  // namespace evencount::strand
