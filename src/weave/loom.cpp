#include "weave/loom.hpp"

#include <array>

#include "language/texts.hpp"
#include "weave/filled.hpp"
#include "weave/needle.hpp"

namespace evencount::weave {
namespace {

constexpr std::string_view name = "loom work";

Lattice lattice_of(int columns, int edge) {
  return {.columns = columns, .edge = edge, .drop = 0};
}

Result<Done> check_size(int columns, int edge) {
  if (columns < 1)
    return Problem{ProblemCode::wrong_size, "columns", fmt::format("{}", columns), "1 or more for loom work"};
  if (edge < 1)
    return Problem{ProblemCode::wrong_size, "edge", fmt::format("{}", edge), "1 or more for loom work"};
  return Done{};
}

void work_row(Needle& needle, int columns, int step) {
  needle.begin_row(RowKind::row, step + 1);
  if (step == 0) needle.start();
  for (int column = 0; column < columns; ++column) needle.pick_up({column, step});
  needle.turn(Turn::warp);
  for (int column = columns - 1; column >= 0; --column) needle.pass({column, step});
  needle.end_row();
}

Result<Plan> lower(const chart::Chart& chart, const Making&) {
  const int columns = chart.columns(), edge = chart.edge();
  if (const auto filled = check_filled(chart, lattice_of(columns, edge), name); !filled)
    return filled.problem();
  Plan plan;
  plan.strung_together = columns;
  plan.on_warps = true;
  plan.stitches.reserve(2 * chart.cells().size() + 2 * static_cast<std::size_t>(edge) + 2);
  Needle needle(plan, chart, Travel::right);
  for (int step = 0; step < edge; ++step) {
    if (step > 0) needle.turn(Turn::edge);
    work_row(needle, columns, step);
  }
  needle.finish();
  return plan;
}

constexpr std::array closures{Closure::open};

}  // namespace

std::span<const Technique> loom_techniques() {
  static const std::array<Technique, 1> table{{
      {"loom", name, closures, lattice_of, check_size, columns_and_edge, bead::loom_gauge, lower,
       &language::Texts::loom_work, &language::Texts::loom_note},
  }};
  return table;
}

}  // namespace evencount::weave
