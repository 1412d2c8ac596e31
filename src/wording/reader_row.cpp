#include "wording/reader_row.hpp"

#include <fmt/format.h>

#include "chart/letters.hpp"

namespace evencount::wording::reader {

bool RunWalk::again() {
  if (fold_ == row_->folds.size() || at_ != row_->folds[fold_].end_run) return false;
  const Fold& fold = row_->folds[fold_];
  if (++done_ < fold.times) {
    at_ = fold.first_run;
    return true;
  }
  ++fold_;
  done_ = 0;
  return false;
}

const FoundRun* RunWalk::next() {
  again();
  if (at_ == row_->runs.size()) return nullptr;
  const auto& ends = row_->unit_ends;
  // A fold that is gone through again finds its semicolons before the ones that were passed last.
  while (unit_end_ > 0 && ends[unit_end_ - 1] >= at_) --unit_end_;
  while (unit_end_ < ends.size() && ends[unit_end_] < at_) ++unit_end_;
  const bool first_of_later_round = done_ > 0 && at_ == row_->folds[fold_].first_run;
  began_unit_ = unit_end_ < ends.size() && ends[unit_end_] == at_ && !first_of_later_round;
  return &row_->runs[at_++];
}

chart::Bead BeadWalk::next() {
  began_unit_ = false;
  if (left_ == 0) {
    const FoundRun* run = runs_.next();
    assert(run != nullptr);
    left_ = run->count;
    bead_ = run->letter == no_letter ? chart::no_bead : beads_->at(run->letter);
    began_unit_ = runs_.began_unit();
  }
  --left_;
  return bead_;
}

std::string row_text(int first_row, int last_row, bool round) {
  const std::string_view word = round ? "round" : "row";
  return first_row == last_row ? fmt::format("{} {}", word, first_row)
                               : fmt::format("{}s {}-{}", word, first_row, last_row);
}

std::string row_text(const FoundRow& row) {
  return row_text(row.first_row, row.last_row, row.round);
}

std::string beads_text(int beads) {
  return fmt::format("{} bead{}", beads, beads == 1 ? "" : "s");
}

std::string run_text(const FoundRun& run) {
  return run.letter == no_letter ? "dec" : fmt::format("{}{}", run.count, chart::letter_name(run.letter));
}

std::string place_text(const FoundRow& row, std::string_view after) {
  return fmt::format("line {}, {}{}{}", row.line, row_text(row), after.empty() ? "" : ", after ", after);
}

std::string last_run_within(const FoundRow& row, int places) {
  const FoundRun* last = nullptr;
  RunWalk runs(row);
  int passed = 0;
  for (const FoundRun* run = runs.next(); run != nullptr && run->count <= places - passed;
       run = runs.next()) {
    passed += run->count;
    last = run;
  }
  return last == nullptr ? "" : run_text(*last);
}

Problem wrong_length(const FoundRow& row, int places, int needed) {
  const auto counted = [&](int count) {
    return row.places == row.beads ? beads_text(count) : fmt::format("{} beads and decreases", count);
  };
  return bad_words(place_text(row, last_run_within(row, needed)), counted(places), counted(needed));
}

Problem too_long(const FoundRow& row, int places, int most) {
  Problem problem = wrong_length(row, places, most);
  problem.expected = "at most " + problem.expected;
  return problem;
}

Problem bad_words(std::string where, std::string found, std::string expected) {
  return {ProblemCode::bad_words, std::move(where), std::move(found), std::move(expected)};
}

}  // namespace evencount::wording::reader
