#include "weave/plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/text.hpp"

namespace evencount::weave {

namespace {

struct ClosureName {
  Closure closure;
  std::string_view name;
};

constexpr std::array closure_names{ClosureName{Closure::open, "open"}, ClosureName{Closure::zip, "zip"},
                                   ClosureName{Closure::sew, "sew"}, ClosureName{Closure::round, "round"}};

}  // namespace

chart::Grid grid_of(const Lattice& lattice, Closure closure) {
  return {lattice.drop, closes_round_edge(closure), lattice.round};
}

std::string_view closure_name(Closure closure) {
  return closure_names[static_cast<std::size_t>(closure)].name;
}

Result<Closure> parse_closure(std::string_view name) {
  for (const ClosureName& known : closure_names)
    if (name == known.name) return known.closure;
  return Problem{ProblemCode::unknown_name, "", quote(name), "open, zip, sew or round"};
}

std::string row_name(const Row& row) {
  if (row.kind == RowKind::zip) return "zip";
  if (row.kind == RowKind::sew) return "sewn join";
  const std::string_view word = row.kind == RowKind::round ? "round" : "row";
  if (row.first_number == row.last_number) return fmt::format("{} {}", word, row.first_number);
  return fmt::format("{}s {}-{}", word, row.first_number, row.last_number);
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
    if (has_beads(row.kind)) most = std::max(most, row.last_number);
  return most;
}

}  // namespace evencount::weave
