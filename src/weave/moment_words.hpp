#pragma once
/// What the hands do in a stretch of stitches, in words. Internal to the room.

#include <string>
#include <vector>

#include "language/language.hpp"
#include "weave/plan.hpp"

namespace evencount::weave {

/// Tells stretches of one plan. Beads are numbered ① ② ③ in the order in which they are gone through.
class MomentTeller {
 public:
  /// The plan must outlive it, and the language the plan.
  MomentTeller(const Plan& plan, const language::Language& language);

  /// "string a bead ①, turn, go through a bead of row 2 ② and go through ① again ③".
  /// Turns at the end of the stretch are left out. Beads from the stitch `shown_end` on have no number, and a run
  /// that goes on past it says how many of it are shown. The first number is `number`.
  [[nodiscard]] std::string tell(std::size_t first, std::size_t end, std::size_t shown_end,
                                 int number = 1) const;

  /// The row in which the bead of a cell is strung: its place in Plan::rows.
  [[nodiscard]] std::size_t row_of(Cell cell) const;

 private:
  [[nodiscard]] bool strings_from_outside(std::size_t i) const;
  struct Clause;
  [[nodiscard]] std::vector<Clause> clauses_of(std::size_t first, std::size_t end, std::size_t shown_end,
                                               int number) const;
  /// Beads gone through without a turn between them, all new to the moment.
  [[nodiscard]] Clause new_beads(std::size_t first, std::size_t end) const;
  [[nodiscard]] std::string numbers_text(const std::vector<int>& numbers) const;
  [[nodiscard]] std::string said(const Clause& clause, bool last) const;

  const Plan& plan_;
  const language::Language& language_;
  std::vector<std::size_t> row_of_cell_;
};

/// A row's name within a sentence ("row 3", "rounds 1 and 2"), and after what is of it ("of row 3").
[[nodiscard]] std::string the_row(const language::Language& language, const Row& row);
[[nodiscard]] std::string of_row(const language::Language& language, const Row& row);
/// "a bead", "4 beads".
[[nodiscard]] std::string some_beads(const language::Language& language, int count);
/// "①", "②③", "① to ④"; of numbers beyond 20 nothing.
[[nodiscard]] std::string circled(const language::Language& language, int first, int last);

}  // namespace evencount::weave
