#include "weave/plan.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"

namespace evencount::weave {

std::string_view closure_name(Closure closure) {
  return closure == Closure::zip ? "zip" : "open";
}

Result<Closure> parse_closure(std::string_view name) {
  for (const Closure closure : {Closure::open, Closure::zip})
    if (name == closure_name(closure)) return closure;
  return Problem{ProblemCode::unknown_name, "", quoted(name), "open or zip"};
}

std::string row_name(const Row& row) {
  if (row.kind == RowKind::zip) return "zip";
  if (row.first_number == row.last_number) return fmt::format("row {}", row.first_number);
  return fmt::format("rows {}-{}", row.first_number, row.last_number);
}

std::vector<Bead> beads_of(const Plan& plan, const Row& row) {
  std::vector<Bead> beads;
  for (std::size_t i = row.first_stitch; i < row.end_stitch; ++i)
    if (plan.stitches[i].act == Act::pick_up) beads.push_back(plan.stitches[i].bead);
  return beads;
}

std::vector<int> count_beads(const Plan& plan) {
  std::vector<int> counts;
  for (const Stitch& stitch : plan.stitches) {
    if (stitch.act != Act::pick_up) continue;
    if (stitch.bead >= counts.size()) counts.resize(stitch.bead + 1u);
    ++counts[stitch.bead];
  }
  return counts;
}

int row_count(const Plan& plan) {
  int most = 0;
  for (const Row& row : plan.rows)
    if (row.kind == RowKind::row) most = std::max(most, row.last_number);
  return most;
}

}  // namespace evencount::weave
