#include "weave/tubular_peyote.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "language/texts.hpp"
#include "weave/needle.hpp"

namespace evencount::weave {
namespace {

using chart::Chart;
using chart::no_bead;

/// The cells of a chart by row of the lattice, round and round.
class Rounds {
 public:
  explicit Rounds(const Chart& chart) : chart_(chart) {}

  [[nodiscard]] int columns() const { return chart_.columns(); }
  /// Columns of any number, also beyond the last and below the first.
  [[nodiscard]] Cell cell(int column, int row) const {
    return {((column % columns()) + columns()) % columns(), row / 2};
  }
  [[nodiscard]] bool holds(int column, int row) const { return chart_.at(cell(column, row)) != no_bead; }
  /// How many of a row's cells hold beads.
  [[nodiscard]] int count(int row) const {
    int beads = 0;
    for (int column = row % 2; column < columns(); column += 2) beads += holds(column, row) ? 1 : 0;
    return beads;
  }
  /// One past the last row with beads.
  [[nodiscard]] int end() const {
    int row = 2 * chart_.edge();
    while (row > 0 && count(row - 1) == 0) --row;
    return row;
  }

 private:
  const Chart& chart_;
};

/// Works the rounds of an even count of columns, up from the ring and then down.
class EvenRounds {
 public:
  EvenRounds(Plan& plan, const Chart& chart, int begin)
      : rounds_(chart), needle_(plan, chart, Travel::right), begin_(begin) {}

  void work() {
    const int end = rounds_.end(), columns = rounds_.columns();
    int first = begin_ % 2 + 1;
    string_ring(first);
    for (int row = begin_ + 2; row < end; ++row) work_round(row, row - 1, ++first);
    if (begin_ > 0) {
      first = (begin_ % 2 + 2 * (end - begin_) - 2) % columns;
      go_down(end - 1, first);
      for (int row = begin_ - 1; row >= 0; --row) work_round(row, row + 1, ++first);
    }
    needle_.finish();
  }

 private:
  void string_ring(int first) {
    needle_.begin_row(RowKind::round, 1, 2);
    needle_.start();
    for (int i = 0; i < rounds_.columns(); ++i)
      needle_.pick_up(rounds_.cell(first + i, i % 2 == 0 ? begin_ + 1 : begin_));
    pass(first, begin_ + 1);
    needle_.end_row();
    number_ = 2;
  }

  void pass(int column, int row) {
    at_ = rounds_.cell(column, row);
    needle_.pass(at_);
  }

  /// One round over the neighbouring round `below` (above it on the back), from the place at `first` on, and its step-up.
  void work_round(int row, int below, int first) {
    needle_.begin_row(RowKind::round, ++number_);
    needle_.row().on_back = below > row;
    int first_bead = -1;
    for (int i = 0; i < rounds_.columns() / 2; ++i) {
      const int column = first + 2 * i;
      if (rounds_.holds(column, row)) {
        if (first_bead < 0) first_bead = column;
        needle_.pick_up(rounds_.cell(column, row));
        at_ = rounds_.cell(column, row);
      }
      if (rounds_.holds(column + 1, below) && at_ != rounds_.cell(column + 1, below)) pass(column + 1, below);
    }
    // Where the first places hold no bead, the step-up comes by the beads below them once more.
    for (int column = first - 1; column < first_bead; column += 2)
      if (rounds_.holds(column, below) && at_ != rounds_.cell(column, below)) pass(column, below);
    pass(first_bead, row);
    needle_.end_row();
  }

  /// From the last round worked down to round 1 and on along it, to the bead of `column`.
  void go_down(int row, int column) {
    for (; row > begin_; --row) {
      int next = at_.column + 1;
      while (!rounds_.holds(next, row - 1)) next += 2;
      pass(next, row - 1);
    }
    while (at_.column != column) {
      pass(at_.column + 1, begin_ + 1);
      pass(at_.column + 1, begin_);
    }
  }

  Rounds rounds_;
  Needle needle_;
  int begin_;
  int number_ = 0;
  Cell at_;  ///< the bead that the needle came out of last
};

/// Works the spiral of an odd count.
void work_spiral(Plan& plan, const Chart& chart) {
  const Rounds rounds(chart);
  const int columns = chart.columns(), end = rounds.end();
  Needle needle(plan, chart, Travel::right);
  needle.begin_row(RowKind::round, 1, 2);
  needle.start();
  for (int column = 0; column < columns; ++column) needle.pick_up({column, 0});
  needle.end_row();
  for (int row = 2; row < end; ++row) {
    needle.begin_row(RowKind::round, row + 1);
    for (int column = row % 2; column < columns; column += 2) {
      needle.pick_up({column, row / 2});
      const bool next_round = column + 1 == columns;
      needle.pass(next_round ? Cell{0, row / 2} : Cell{column + 1, (row - 1) / 2});
    }
    needle.end_row();
  }
  needle.finish();
}

Problem wrong_cell(Cell cell, std::string found, std::string expected) {
  return {ProblemCode::wrong_size, fmt::format("column {}, step {}", cell.column, cell.step), std::move(found),
          std::move(expected)};
}

/// Every cell filled, but perhaps the whole last round.
Result<Done> check_full(const Chart& chart) {
  const Rounds rounds(chart);
  const int end = rounds.end();
  for (int row = 0; row < 2 * chart.edge(); ++row)
    for (int column = row % 2; column < chart.columns(); column += 2)
      if (!rounds.holds(column, row) && (row < end || row < 2 * chart.edge() - 1 || row < 2))
        return wrong_cell(rounds.cell(column, row), "an empty cell",
                          "a bead in every cell (only a whole last round may be left out)");
  return Done{};
}

/// How many columns lie from one bead of a row to the next, at most.
int widest_gap(const Rounds& rounds, int row) {
  int widest = 0, last = -1;
  for (int column = row % 2; column < 2 * rounds.columns(); column += 2) {
    if (!rounds.holds(column, row)) continue;
    if (last >= 0) widest = std::max(widest, column - last);
    last = column;
  }
  return widest;
}

/// The places where a bead can hang are the only ones that hold beads.
Result<Done> check_bezel(const Chart& chart, int begin) {
  const Rounds rounds(chart);
  const int end = rounds.end();
  if (begin < 0 || begin + 2 > 2 * chart.edge())
    return Problem{ProblemCode::out_of_range, "begin_at", fmt::format("{}", begin),
                   fmt::format("from 0 to {}: the ring takes two rows of the chart", 2 * chart.edge() - 2)};
  if (end < 2 * chart.edge() - 1)
    return wrong_cell({0, chart.edge() - 1}, "an empty step at the end", "a bead in the last step");
  for (int row = 0; row < end; ++row) {
    const bool ring = row == begin || row == begin + 1;
    if (rounds.count(row) < 2)
      return wrong_cell({row % 2, row / 2}, fmt::format("a round of {} beads", rounds.count(row)), "at least 2 beads");
    if (const int gap = widest_gap(rounds, row); 2 * gap > chart.columns())
      return wrong_cell({row % 2, row / 2}, fmt::format("{} columns from one bead of a round to the next", gap),
                        fmt::format("at most {}, half of the ring", chart.columns() / 2));
    for (int column = row % 2; column < chart.columns(); column += 2) {
      const bool place = ring || rounds.holds(column - 1, row > begin ? row - 1 : row + 1);
      if (ring && !rounds.holds(column, row))
        return wrong_cell(rounds.cell(column, row), "an empty cell in the ring", "a bead in every cell of rounds 1 and 2");
      if (!place && rounds.holds(column, row))
        return wrong_cell(rounds.cell(column, row), "a bead with nothing to hang on",
                          "no bead after an empty cell of the round before");
    }
  }
  return Done{};
}

Result<Plan> lower_even(const Chart& chart, const Making&) {
  if (auto full = check_full(chart); !full) return full.problem();
  Plan plan;
  EvenRounds(plan, chart, 0).work();
  return plan;
}

Result<Plan> lower_odd(const Chart& chart, const Making&) {
  if (auto full = check_full(chart); !full) return full.problem();
  Plan plan;
  work_spiral(plan, chart);
  return plan;
}

Result<Plan> lower_bezel(const Chart& chart, const Making& making) {
  if (auto sound = check_bezel(chart, making.begin_at); !sound) return sound.problem();
  Plan plan;
  EvenRounds(plan, chart, making.begin_at).work();
  return plan;
}

Result<Done> check_even_columns(int columns, int) {
  if (columns >= 4 && columns % 2 == 0) return Done{};
  return Problem{ProblemCode::wrong_size, "columns", fmt::format("{}", columns),
                 "an even number from 4: an odd number of columns spirals (tubular-odd-count)"};
}

Result<Done> check_odd_columns(int columns, int) {
  if (columns >= 5 && columns % 2 == 1) return Done{};
  return Problem{ProblemCode::wrong_size, "columns", fmt::format("{}", columns),
                 "an odd number from 5: an even number of columns has rounds that step up (tubular-even-count)"};
}

template <int rise>
Lattice round_lattice(int columns, int edge) {
  return {.columns = columns, .edge = edge, .round = true, .rise = rise};
}

using language::Texts;

constexpr std::array round_only{Closure::round};

}  // namespace

std::span<const Technique> tubular_peyote_techniques() {
  static const std::array<Technique, 3> table{{
      {"tubular-even-count", "tubular peyote, even count", round_only, round_lattice<0>, check_even_columns,
       columns_and_edge, bead::default_gauge, lower_even, &Texts::tubular_even, &Texts::step_up_note},
      {"tubular-odd-count", "tubular peyote, odd count", round_only, round_lattice<1>, check_odd_columns,
       columns_and_edge, bead::default_gauge, lower_odd, &Texts::tubular_odd, &Texts::spiral_note},
      {"peyote-bezel", "peyote bezel", round_only, round_lattice<0>, check_even_columns, columns_and_edge,
       bead::default_gauge, lower_bezel, &Texts::peyote_bezel, &Texts::bezel_note},
  }};
  return table;
}

}  // namespace evencount::weave
