#include "weave/square_stitch.hpp"

#include <fmt/format.h>

#include <array>

#include "language/texts.hpp"
#include "weave/needle.hpp"
#include "weave/sewn_seam.hpp"

namespace evencount::weave {
namespace {

using chart::Chart;

class SquareStitch {
 public:
  SquareStitch(Plan& plan, const Chart& chart)
      : columns_(chart.columns()), edge_(chart.edge()), needle_(plan, chart) {}

  void work(Closure closure) {
    needle_.begin_row(RowKind::row, 1);
    needle_.start();
    for (int column = columns_ - 1; column >= 0; --column) needle_.pick_up({column, 0});
    needle_.end_row();
    for (int step = 1; step < edge_; ++step) work_row(step);
    if (closure == Closure::sew) sew_ends(needle_, columns_, edge_ - 1, 0, edge_ + 1);
    needle_.finish();
  }

 private:
  void work_row(int step) {
    needle_.turn(Turn::edge);
    needle_.begin_row(RowKind::row, step + 1);
    const bool rightwards = needle_.travel() == Travel::right;
    const int first = rightwards ? 0 : columns_ - 1, last = columns_ - 1 - first,
              onward = rightwards ? 1 : -1;
    for (int column = first; column != last + onward; column += onward) {
      needle_.pick_up({column, step});
      // The row below is whole already, so beads stand beyond every turn but those at the two edges.
      needle_.turn(column == last ? Turn::edge : Turn::inside);
      needle_.pass({column, step - 1});
      needle_.turn(column == first ? Turn::edge : Turn::inside);
      needle_.pass({column, step});
    }
    needle_.end_row();
  }

  int columns_, edge_;
  Needle needle_;
};

Lattice straight(int columns, int edge) {
  return {.columns = columns, .edge = edge, .drop = 0};
}

Result<Done> check_size(int columns, int edge) {
  if (columns < 1)
    return Problem{ProblemCode::wrong_size, "columns", fmt::format("{}", columns),
                   "1 or more for square stitch"};
  if (edge < 1)
    return Problem{ProblemCode::wrong_size, "edge", fmt::format("{}", edge), "1 or more for square stitch"};
  return Done{};
}

Result<Plan> lower(const Chart& chart, const Making& making) {
  for (int step = 0; step < chart.edge(); ++step)
    for (int column = 0; column < chart.columns(); ++column)
      if (chart.at({column, step}) == chart::no_bead)
        return Problem{ProblemCode::wrong_size, fmt::format("column {}, step {}", column, step),
                       "an empty cell", "a bead in every cell"};
  if (making.closure == Closure::sew)
    if (const auto enough = check_edge_to_sew(chart.edge()); !enough) return enough.problem();
  Plan plan;
  plan.stitches.reserve(5 * chart.cells().size() + 5 * static_cast<std::size_t>(chart.columns()) + 2);
  SquareStitch(plan, chart).work(making.closure);
  return plan;
}

constexpr std::array open_or_sewn{Closure::open, Closure::sew};

}  // namespace

std::span<const Technique> square_stitch_techniques() {
  static const std::array<Technique, 1> table{{
      {.id = "square",
       .name = "square stitch",
       .closures = open_or_sewn,
       .lattice = straight,
       .check_size = check_size,
       .measures = columns_and_edge,
       .gauge = bead::square_gauge,
       .lower = lower,
       .printed_name = &language::Texts::square_stitch,
       .note = &language::Texts::square_note},
  }};
  return table;
}

}  // namespace evencount::weave
