#include "weave/replay_checks.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace evencount::weave {
namespace {

Problem bad_row(const Row& row, std::string found, std::string expected) {
  return {ProblemCode::bad_plan, row_name(row), std::move(found), std::move(expected)};
}

bool goes_against(const Row& row, int from, int to, Travel up) {
  return from != to && row.travel != (to > from ? up : opposite(up));
}

/// The words take a row's direction from its mark, so the mark must tell the truth.
Result<Done> check_travel(const Plan& plan, const Row& row) {
  const Stitch* first = nullptr;
  const Stitch* last = nullptr;
  for (std::size_t i = row.first_stitch; i < row.end_stitch; ++i) {
    const Stitch& stitch = plan.stitches[i];
    if (stitch.act != Act::pick_up && stitch.act != Act::join) continue;
    if (first == nullptr) first = &stitch;
    last = &stitch;
  }
  if (first == nullptr) return bad_row(row, "no bead in it", "a bead in every row");
  const bool along = axis_of(row.travel) == Axis::along;
  const bool one_way = plan.lattice.round || !has_beads(row.kind) ||
                       (!along && plan.lattice.holes == Holes::across);
  const bool against = one_way ? first->travel != row.travel
                       : along ? goes_against(row, first->cell.step, last->cell.step, Travel::forth)
                               : goes_against(row, first->cell.column, last->cell.column, Travel::right);
  if (against)
    return bad_row(row, "beads that go against the row's direction", "the direction of its first bead");
  return Done{};
}

}  // namespace

std::string cell_name(Cell cell) {
  return fmt::format("column {}, step {}", cell.column, cell.step);
}

Result<Done> check_rows(const Plan& plan) {
  std::size_t end = 0;
  int number = 0;
  for (const Row& row : plan.rows) {
    const bool in_order = row.first_stitch >= end && row.end_stitch > row.first_stitch &&
                          row.end_stitch <= plan.stitches.size() && row.first_number == number + 1 &&
                          row.last_number >= row.first_number;
    if (!in_order)
      return bad_row(row, "a row mark out of order", "rows one after another, each with its stitches");
    for (std::size_t i = end; i < row.first_stitch; ++i)
      if (plan.stitches[i].act == Act::pick_up || plan.stitches[i].act == Act::join)
        return Problem{ProblemCode::bad_plan, "before " + row_name(row), "a stitch outside any row",
                       "only turns and passes between rows"};
    if (auto way = check_travel(plan, row); !way) return way;
    end = row.end_stitch;
    number = row.last_number;
  }
  if (plan.rows.empty() || end != plan.stitches.size())
    return Problem{ProblemCode::bad_plan, "plan", "stitches after the last row", "every stitch in a row"};
  return Done{};
}

bool in_seam(const Plan& plan, Cell cell) {
  const Lattice& lattice = plan.lattice;
  const bool first = cell.step == 0, last = cell.step == lattice.edge - 1;
  if (!closes_round_edge(plan.closure)) return false;
  if (plan.closure == Closure::sew || lattice.drop == 0) return first || last;
  // The beads that stand out: low ones at the beginning, high ones at the end.
  return (cell.column / lattice.drop) % 2 == 0 ? first : last;
}

}  // namespace evencount::weave
