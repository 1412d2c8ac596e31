#include "weave/brick.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <optional>
#include <vector>

#include "language/texts.hpp"
#include "weave/needle.hpp"
#include "weave/sewn_seam.hpp"

namespace evencount::weave {
namespace {

using chart::Chart;

Lattice shifted(int columns, int edge) {
  return {.columns = columns, .edge = edge, .drop = 1};
}

/// The steps that a row takes in its column.
struct Run {
  int first = 0;
  int last = 0;
  [[nodiscard]] int beads() const { return last - first + 1; }
};

/// Works one piece, row after row. A bead's place in a row counts from 0 in the order of stringing.
class Brick {
 public:
  Brick(Plan& plan, const Chart& chart, const std::vector<Run>& runs)
      : lattice_(shifted(chart.columns(), chart.edge())),
        runs_(runs),
        // Beads of a ladder are passed right and left in turn; the last one must end up going right.
        needle_(plan, chart, runs.front().beads() % 2 == 1 ? Travel::right : Travel::left) {}

  void work(Closure closure) {
    work_ladder();
    for (int row = 1; row < lattice_.columns; ++row) work_row(row);
    if (closure == Closure::sew) {
      const int end = at(lattice_.columns - 1, lattice_.edge - 1).step;
      sew_ends(needle_, lattice_.columns, end, lattice_.edge - 1 - end, lattice_.columns + 1);
    }
    needle_.finish();
  }

 private:
  // Rows from 0, as the columns.

  [[nodiscard]] int beads(int row) const { return runs_[static_cast<std::size_t>(row)].beads(); }
  /// 1 where a row goes towards higher steps, else -1.
  [[nodiscard]] static int onward(int row) { return row % 2 == 0 ? 1 : -1; }
  [[nodiscard]] Cell at(int row, int place) const {
    const Run& run = runs_[static_cast<std::size_t>(row)];
    return {row, onward(row) > 0 ? run.first + place : run.last - place};
  }
  [[nodiscard]] int along(int row, int place) const { return lattice_.along_halves(at(row, place)); }

  /// Whether a row begins half a bead further in than the row before ended.
  [[nodiscard]] bool begins_in(int row) const {
    return onward(row) * (along(row, 0) - along(row - 1, beads(row - 1) - 1)) > 0;
  }
  /// Whether it ends half a bead further out than the row before began.
  [[nodiscard]] bool ends_out(int row) const {
    return onward(row) * (along(row, beads(row) - 1) - along(row - 1, 0)) > 0;
  }

  void begin_row(int row) {
    needle_.begin_row(RowKind::row, row + 1);
    needle_.row().travel = onward(row) > 0 ? Travel::forth : Travel::back;
  }

  void work_ladder() {
    begin_row(0);
    needle_.start();
    needle_.pick_up(at(0, 0));
    for (int place = 1; place < beads(0); ++place) {
      needle_.turn(Turn::edge);
      needle_.pick_up(at(0, place));
      needle_.turn(Turn::edge);
      needle_.pass(at(0, place - 1));
      needle_.turn(Turn::edge);
      needle_.pass(at(0, place));
    }
    needle_.end_row();
  }

  void work_row(int row) {
    const bool alone = beads(row) == 1;
    if (alone) needle_.turn(Turn::outside);
    begin_row(row);
    if (begins_in(row)) needle_.row().begins = RowEnd::decrease;
    if (ends_out(row)) needle_.row().ends = RowEnd::increase;
    if (alone) {
      needle_.pick_up(at(row, 0));
      hang(row, 0);
    } else if (beads(row - 1) == 1) {
      stand_on_one_bead(row);
    } else {
      begin_with_two(row);
      for (int place = 2; place < beads(row); ++place) string_and_hang(row, place);
    }
    needle_.end_row();
  }

  void begin_with_two(int row) {
    needle_.pick_up(at(row, 0));
    string_and_hang(row, 1);
    needle_.turn(Turn::edge);
    needle_.pass(at(row, 0));
    needle_.turn(Turn::inside);
    needle_.pass(at(row, 1));
  }

  void string_and_hang(int row, int place) {
    needle_.turn(Turn::edge);
    needle_.pick_up(at(row, place));
    hang(row, place);
  }

  /// Under the thread just below a bead, or the last one where the bead stands beyond it, and back through the bead.
  void hang(int row, int place) {
    const bool beyond = place == beads(row) - 1 && ends_out(row);
    const int thread = along(row, place) - (beyond ? 2 * onward(row) : 0);
    // The thread is named by the lower of the two beads it joins, half a bead from its middle.
    needle_.under({row - 1, (thread - 1) / 2});
    needle_.pass(at(row, place));
  }

  void stand_on_one_bead(int row) {
    needle_.pick_up(at(row, 0));
    needle_.turn(Turn::edge);
    needle_.pick_up(at(row, 1));
    needle_.turn(Turn::outside);
    needle_.pass(at(row - 1, 0));
    needle_.pass(at(row, 1));
  }

  Lattice lattice_;
  const std::vector<Run>& runs_;
  Needle needle_;
};

// Outlines

Problem wrong_cell(Cell cell, std::string found, std::string expected) {
  return {ProblemCode::wrong_size, fmt::format("column {}, step {}", cell.column, cell.step),
          std::move(found), std::move(expected)};
}

Result<Run> run_of(const Chart& chart, int column) {
  std::optional<Run> run;
  for (int step = 0; step < chart.edge(); ++step) {
    if (chart.at({column, step}) == chart::no_bead) continue;
    if (!run)
      run = Run{step, step};
    else if (step != run->last + 1)
      return wrong_cell({column, run->last + 1}, "an empty cell",
                        "a bead in every cell between the ends of a row");
    else
      run->last = step;
  }
  if (!run) return wrong_cell({column, 0}, "a column without beads", "beads in every column: each is a row");
  return *run;
}

Result<Done> check_ends(const Lattice& lattice, Run before, Run run, int column) {
  const auto apart = [&](int step_before, int step) {
    return std::abs(lattice.along_halves({column, step}) - lattice.along_halves({column - 1, step_before}));
  };
  const std::string expected = "half a bead further out or in than the row before";
  if (apart(before.first, run.first) != 1)
    return wrong_cell({column, run.first}, "a row with its first end there", expected);
  if (apart(before.last, run.last) != 1)
    return wrong_cell({column, run.last}, "a row with its last end there", expected);
  if (before.beads() == 1 && run.beads() == 1)
    return wrong_cell({column, run.first}, "a row of one bead over a row of one bead",
                      "two beads there: a single one has no thread to hang on");
  return Done{};
}

Result<Done> check_trimmed(const Chart& chart, const std::vector<Run>& runs) {
  int first = chart.edge(), last = -1;
  for (const Run& run : runs) {
    first = std::min(first, run.first);
    last = std::max(last, run.last);
  }
  if (first > 0) return wrong_cell({0, 0}, "an empty step at the beginning", "a bead in step 0");
  if (last < chart.edge() - 1)
    return wrong_cell({0, chart.edge() - 1}, "an empty step at the end", "a bead in the last step");
  return Done{};
}

/// Every column's run of beads.
Result<std::vector<Run>> runs_of(const Chart& chart) {
  const Lattice lattice = shifted(chart.columns(), chart.edge());
  std::vector<Run> runs;
  for (int column = 0; column < chart.columns(); ++column) {
    const auto run = run_of(chart, column);
    if (!run) return run.problem();
    if (column > 0)
      if (const auto joined = check_ends(lattice, runs.back(), *run, column); !joined)
        return joined.problem();
    runs.push_back(*run);
  }
  if (const auto trimmed = check_trimmed(chart, runs); !trimmed) return trimmed.problem();
  return runs;
}

Result<Done> check_whole(const Chart& chart) {
  for (int step = 0; step < chart.edge(); ++step)
    for (int column = 0; column < chart.columns(); ++column)
      if (chart.at({column, step}) == chart::no_bead)
        return wrong_cell({column, step}, "an empty cell", "a bead in every cell of a piece sewn end to end");
  return Done{};
}

Result<Done> check_size(int columns, int edge) {
  if (columns < 1)
    return Problem{ProblemCode::wrong_size, "columns", fmt::format("{}", columns),
                   "1 or more for brick stitch"};
  if (edge < 2)
    return Problem{ProblemCode::wrong_size, "edge", fmt::format("{}", edge),
                   "2 or more for brick stitch: its rows run along the edge"};
  return Done{};
}

Result<Plan> lower(const Chart& chart, const Making& making) {
  if (making.closure == Closure::sew) {
    if (const auto whole = check_whole(chart); !whole) return whole.problem();
    if (const auto enough = check_edge_to_sew(chart.edge()); !enough) return enough.problem();
  }
  const auto runs = runs_of(chart);
  if (!runs) return runs.problem();
  Plan plan;
  plan.strung_together = 2;
  plan.stitches.reserve(6 * chart.cells().size() + 9 * static_cast<std::size_t>(chart.columns()) + 2);
  Brick(plan, chart, *runs).work(making.closure);
  return plan;
}

constexpr std::array open_or_sewn{Closure::open, Closure::sew};

}  // namespace

std::span<const Technique> brick_techniques() {
  static const std::array<Technique, 1> table{{
      {.id = "brick",
       .name = "brick stitch",
       .closures = open_or_sewn,
       .lattice = shifted,
       .check_size = check_size,
       .measures = columns_and_edge,
       .gauge = bead::brick_gauge,
       .lower = lower,
       .printed_name = &language::Texts::brick_stitch,
       .note = &language::Texts::brick_note},
  }};
  return table;
}

}  // namespace evencount::weave
