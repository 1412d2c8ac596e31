#pragma once
/// How many units each flexible run takes, so that the runs together fill a given room. Exact; whole micrometres.
///
/// A strand's room is filled by runs of equal units (a spacer; two beads and a bar). Runs of one group are to
/// be as equal as
/// possible. A run may lie in two places: in both halves of a mirrored strand, with the same count.
///
/// What is best, each only among those that are equal in what stands before it:
///   1. the least |length - room|
///   2. the least spread: the sum over groups of (largest count - smallest count)
///   3. the fewest beads
///   4. the shorter one
///   5. the smaller total (units in all places) of the first kind of unit, then of the second, …; then of the first
///      group, of the second, …. Units are of one kind when they are equally long and take the same beads.
/// Within a group the larger counts are then placed as symmetrically as they can be: one in the middle where
/// their number is odd,
/// then in pairs from the outside in.
///
/// Properties (tests/strand/run_counts_test.cpp):
///  (1) no admissible counts are better in 1 to 5: by trying all of them on small problems, by an independent
///  solver of integer
///      programs on larger ones (tests/strand/runs_by_glpsol)
///  (2) least <= count <= most, and no bead is taken more often than it is on hand
///  (3) the spread of a group is 0 or 1
///  (4) lengths and room all k times as large: the same counts
///  (5) more on hand, or a larger `most`, never gives a larger error
/// How: docs/algorithms/strand.md.

#include <cstdint>
#include <optional>
#include <vector>

#include "base/result.hpp"

namespace evencount::strand {

/// What one unit takes of a bead of which there are only so many.
struct TakenBead {
  int bead = 0;   ///< index in RunProblem::on_hand
  int count = 0;  ///< above 0
  bool operator==(const TakenBead&) const = default;
};

inline constexpr int most_units = 100'000;

/// Runs that are to be as equal as possible.
struct RunGroup {
  std::int64_t unit_um = 0;  ///< how much longer one unit makes a run; above 0
  int unit_beads = 0;        ///< beads in a unit, on all its cords
  int least = 0;             ///< units in each run
  int most = most_units;
  std::vector<int> places;       ///< one entry a run: in how many places it lies, 1 or 2
  std::vector<TakenBead> takes;  ///< of limited beads, by ascending index
  bool operator==(const RunGroup&) const = default;
};

struct RunProblem {
  std::int64_t room_um = 0;  ///< below zero where what is fixed is too long already
  std::vector<RunGroup> groups;
  std::vector<std::int64_t> on_hand;  ///< what is left of each limited bead for the runs
  bool operator==(const RunProblem&) const = default;
};

struct RunCounts {
  std::vector<std::vector<int>> counts;  ///< counts[group][run]
  std::int64_t length_um = 0;            ///< of all runs in all their places
  std::int64_t error_um = 0;             ///< length - room: above zero is too long
  int spread = 0;
  std::int64_t beads = 0;
  bool operator==(const RunCounts&) const = default;
};

/// The best on either side of the room; one of them is the best of all.
struct RunAnswers {
  std::optional<RunCounts> not_longer;   ///< none: even the least of every run is longer
  std::optional<RunCounts> not_shorter;  ///< none: even the most that may be taken is shorter
  /// The better of the two. One of them is there.
  [[nodiscard]] const RunCounts& best() const;
  bool operator==(const RunAnswers&) const = default;
};

/// The most beads that fit the arithmetic, and the longest room: far beyond a rope.
inline constexpr std::int64_t most_beads_in_runs = 1'000'000;
inline constexpr std::int64_t longest_room_um = 5'000'000;

/// Errors: out_of_range (a field outside the range stated above; more than 500 runs; room or beads beyond the
/// limits; an index that
/// there is not); too_few_beads (the least of every run takes more than is on hand).
[[nodiscard]] Result<RunAnswers> solve_runs(const RunProblem& problem);

}  // namespace evencount::strand
