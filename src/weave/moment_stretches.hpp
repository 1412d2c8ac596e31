#pragma once
/// Stretches of a plan as a beader counts them: what belongs to one stitch, and how much of it can be shown.
/// Internal to the room.

#include <vector>

#include "weave/moments.hpp"

namespace evencount::weave {

/// What one stitch strings and what it goes through then; in the trade's sense, not the plan's.
struct Group {
  std::size_t first = 0, end = 0;
  int strung = 0;
};

/// The plan must outlive it.
class Stretches {
 public:
  explicit Stretches(const Plan& plan);

  /// The groups of a row, none for a seam; what lies between it and the next row belongs to its last one.
  [[nodiscard]] const std::vector<Group>& of(std::size_t row) const { return groups_[row]; }

  /// One past the last bead gone through before stitch i.
  [[nodiscard]] std::size_t after_bead_before(std::size_t i) const;
  /// One past the last bead strung in a group.
  [[nodiscard]] std::size_t after_last_strung(const Group& group) const;
  /// How many beads are gone through.
  [[nodiscard]] int beads_in(std::size_t first, std::size_t end) const;
  /// Whether there is such a turn in it.
  [[nodiscard]] bool turns(std::size_t first, std::size_t end, Turn turn) const;
  /// How much of a stretch can be shown.
  [[nodiscard]] std::size_t shown_end(std::size_t first, std::size_t end,
                                      int most = most_beads_of_a_moment) const;
  /// What to show of the piece round a moment.
  [[nodiscard]] Window window_of(const Moment& moment) const;

 private:
  [[nodiscard]] std::vector<Group> groups_of(std::size_t place) const;
  [[nodiscard]] const Stitch& stitch(std::size_t i) const { return plan_.stitches[i]; }

  const Plan& plan_;
  std::vector<std::vector<Group>> groups_;
};

}  // namespace evencount::weave
