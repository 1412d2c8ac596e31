#include "weave/flat_peyote.hpp"

#include <fmt/format.h>

namespace evencount::weave {
namespace {

using chart::Chart;
using chart::no_bead;

Problem wrong_columns(int columns, std::string expected) {
  return {ProblemCode::wrong_size, "columns", fmt::format("{}", columns), std::move(expected)};
}

/// Which cells of the last step are empty: none, or all its odd columns.
Result<std::vector<Cell>> empty_cells_of(const Chart& chart) {
  std::vector<Cell> empty;
  for (int step = 0; step < chart.edge(); ++step)
    for (int column = 0; column < chart.columns(); ++column)
      if (chart.at({column, step}) == no_bead) empty.push_back({column, step});
  if (empty.empty()) return empty;
  const bool last_row_only = static_cast<int>(empty.size()) == chart.columns() / 2 && chart.edge() > 1 &&
                             empty.front() == Cell{1, chart.edge() - 1};
  bool odd_columns_only = last_row_only;
  for (const Cell cell : empty) odd_columns_only = odd_columns_only && cell.column % 2 == 1;
  if (odd_columns_only) return empty;
  return Problem{ProblemCode::wrong_size,
                 fmt::format("column {}, step {}", empty.front().column, empty.front().step), "an empty cell",
                 "a bead in every cell (only a whole last row may be left out)"};
}

/// Builds a plan stitch by stitch, so that the techniques read like instructions.
class Needle {
 public:
  explicit Needle(Plan& plan, const Chart& chart) : plan_(plan), chart_(chart) {}

  void start() { add({.act = Act::start, .travel = travel_}); }
  void finish() { add({.act = Act::finish, .travel = travel_}); }
  void pick_up(Cell cell) {
    add({.act = Act::pick_up, .travel = travel_, .bead = chart_.at(cell), .cell = cell});
  }
  void pass(Cell cell) { add({.act = Act::pass, .travel = travel_, .cell = cell}); }
  void join(Cell cell) { add({.act = Act::join, .travel = travel_, .cell = cell}); }
  void turn(Turn turn) {
    travel_ = opposite(travel_);
    add({.act = Act::turn, .travel = travel_, .turn = turn});
  }
  void begin_row(RowKind kind, int first_number, int last_number) {
    plan_.rows.push_back({kind, first_number, last_number, travel_, plan_.stitches.size(), 0});
  }
  void end_row() { plan_.rows.back().end_stitch = plan_.stitches.size(); }
  [[nodiscard]] Travel travel() const { return travel_; }
  void set_travel(Travel travel) { travel_ = travel; }

 private:
  void add(Stitch stitch) { plan_.stitches.push_back(stitch); }

  Plan& plan_;
  const Chart& chart_;
  Travel travel_ = Travel::left;
};

/// Rows 1 and 2, strung together from the last column to column 0, then the turn into row 3.
void string_first_rows(Needle& needle, int columns) {
  needle.begin_row(RowKind::row, 1, 2);
  needle.start();
  for (int column = columns - 1; column >= 0; --column) needle.pick_up({column, 0});
  needle.end_row();
}

/// An odd-numbered row, left to right: the even columns of `step`, each but perhaps the last held by an odd
/// column of the row before.
void odd_row(Needle& needle, int columns, int step) {
  needle.turn(Turn::edge);
  needle.begin_row(RowKind::row, 2 * step + 1, 2 * step + 1);
  for (int column = 0; column < columns; column += 2) {
    needle.pick_up({column, step});
    if (column + 1 < columns) needle.pass({column + 1, step - 1});
  }
}

/// The last bead of an odd row of odd count has no bead beyond it to pass: anchor it and come back through
/// it.
void anchor_last_bead(Needle& needle, int columns, int step) {
  const int last = columns - 1;
  if (step > 1) {
    needle.turn(Turn::loop);
    needle.pass({last, step});
    return;
  }
  needle.turn(Turn::edge);
  needle.pass({last, 0});
  needle.pass({last - 1, 0});
  needle.pass({last - 2, 0});
  needle.turn(last - 2 == 0 ? Turn::edge : Turn::inside);
  needle.pass({last - 2, 1});
  needle.pass({last - 1, 0});
  needle.pass({last, 0});
  needle.turn(Turn::edge);
  needle.pass({last, 1});
}

/// An even-numbered row, right to left: the odd columns of `step`, each held by an even column of the same
/// step.
void even_row(Needle& needle, int columns, int step) {
  const bool even_count = columns % 2 == 0;
  if (even_count) needle.turn(Turn::edge);
  needle.begin_row(RowKind::row, 2 * step + 2, 2 * step + 2);
  for (int column = even_count ? columns - 1 : columns - 2; column > 0; column -= 2) {
    needle.pick_up({column, step});
    needle.pass({column - 1, step});
  }
  needle.end_row();
}

/// From the left edge across the seam: the low beads of row 1 and the high beads of the last row in turn, and
/// back once.
void zip(Needle& needle, int columns, int edge) {
  const auto seam_cell = [&](int column) { return Cell{column, column % 2 == 0 ? 0 : edge - 1}; };
  needle.turn(Turn::edge);
  needle.begin_row(RowKind::zip, 2 * edge + 1, 2 * edge + 1);
  for (int column = 0; column < columns; ++column) needle.join(seam_cell(column));
  needle.turn(Turn::edge);
  // Coming back through the neighbours on the other side of the edge turn locks the seam.
  needle.join(columns % 2 == 0 ? Cell{columns - 1, 0} : Cell{columns - 1, edge - 1});
  for (int column = columns - 2; column >= 0; --column) needle.join(seam_cell(column));
  needle.end_row();
}

Result<Plan> lower(const Chart& chart, Closure closure, std::string_view technique) {
  auto empty = empty_cells_of(chart);
  if (!empty) return empty.problem();
  const int columns = chart.columns(), edge = chart.edge();
  const bool odd_rows = !empty->empty();
  if (closure == Closure::zip && odd_rows)
    return Problem{ProblemCode::needs_even_rows, "closure", fmt::format("zip on {} rows", 2 * edge - 1),
                   "an even number of rows: the two ends interlock only then"};
  if (closure == Closure::zip && edge < 3)
    return Problem{ProblemCode::too_few_beads, "edge", fmt::format("{}", edge),
                   "at least 3 beads along the edge to zip"};

  Plan plan;
  plan.technique = technique;
  plan.lattice = {columns, edge, 1};
  plan.closure = closure;
  plan.empty_cells = std::move(*empty);
  plan.stitches.reserve(2 * chart.cells().size() + 8 * static_cast<std::size_t>(edge) + 64);
  Needle needle(plan, chart);
  string_first_rows(needle, columns);
  for (int step = 1; step < edge; ++step) {
    odd_row(needle, columns, step);
    if (columns % 2 == 1) anchor_last_bead(needle, columns, step);
    needle.end_row();
    if (!(odd_rows && step == edge - 1)) even_row(needle, columns, step);
  }
  if (closure == Closure::zip) zip(needle, columns, edge);
  needle.finish();
  plan.rows.back().end_stitch = plan.stitches.size();
  return plan;
}

}  // namespace

Result<Done> check_even_count(int columns) {
  if (columns < 2 || columns % 2 != 0)
    return wrong_columns(columns, "an even number from 2 for even-count peyote");
  return Done{};
}

Result<Done> check_odd_count(int columns) {
  if (columns < 3 || columns % 2 != 1)
    return wrong_columns(columns, "an odd number from 3 for odd-count peyote");
  return Done{};
}

Result<Plan> lower_even_count(const Chart& chart, Closure closure) {
  if (const auto size = check_even_count(chart.columns()); !size) return size.problem();
  return lower(chart, closure, "peyote-even-count");
}

Result<Plan> lower_odd_count(const Chart& chart, Closure closure) {
  if (const auto size = check_odd_count(chart.columns()); !size) return size.problem();
  return lower(chart, closure, "peyote-odd-count");
}

}  // namespace evencount::weave
