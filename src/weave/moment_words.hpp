#pragma once
/// What the hands do in a stretch of stitches, in words. Internal to the room.

#include <string>
#include <vector>

#include "weave/plan.hpp"

namespace evencount::weave {

/// Tells stretches of one plan. Beads are numbered ① ② ③ in the order in which they are gone through.
class MomentTeller {
 public:
  /// The plan must outlive it.
  explicit MomentTeller(const Plan& plan);

  /// "string a bead ①, turn, go through a bead of row 2 ② and go through ① again ③".
  /// Turns at the end of the stretch are left out. Beads from the stitch `shown_end` on have no number, and a run
  /// that goes on past it says how many of it are shown. The first number is `number`.
  [[nodiscard]] std::string tell(std::size_t first, std::size_t end, std::size_t shown_end,
                                 int number = 1) const;

  /// The row in which the bead of a cell is strung: its place in Plan::rows.
  [[nodiscard]] std::size_t row_of(Cell cell) const;

 private:
  [[nodiscard]] bool strings_from_outside(std::size_t i) const;
  /// Beads gone through without a turn between them.
  [[nodiscard]] std::string told_beads(std::size_t first, std::size_t end) const;

  const Plan& plan_;
  std::vector<std::size_t> row_of_cell_;
};

/// "row 3", "rows 1–2", "round 4".
[[nodiscard]] std::string printed_row(const Row& row);
/// "Row 3".
[[nodiscard]] std::string capitalised(std::string text);
/// "a bead", "4 beads".
[[nodiscard]] std::string beads_text(int count);
/// "①", "②③", "①–④"; of numbers beyond 20 nothing.
[[nodiscard]] std::string circled(int first, int last);

}  // namespace evencount::weave
