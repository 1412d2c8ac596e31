#include "weave/sewn_seam.hpp"

#include <fmt/format.h>

namespace evencount::weave {

void sew_ends(Needle& needle, int columns, int from_step, int to_step, int number) {
  const bool leftwards = needle.travel() == Travel::right;
  const int first = leftwards ? columns - 1 : 0, last = columns - 1 - first, onward = leftwards ? -1 : 1;
  needle.turn(Turn::edge);
  needle.begin_row(RowKind::sew, number);
  for (int column = first; column != last + onward; column += onward) {
    needle.join({column, to_step});
    needle.turn(column == last ? Turn::edge : Turn::inside);
    needle.join({column, from_step});
    needle.turn(column == first ? Turn::edge : Turn::inside);
    needle.join({column, to_step});
  }
}

Result<Done> check_edge_to_sew(int edge) {
  if (edge < least_edge_to_sew)
    return Problem{
        ProblemCode::too_few_beads, "edge", fmt::format("{}", edge),
        fmt::format("at least {} beads along the edge to sew the ends together", least_edge_to_sew)};
  return Done{};
}

}  // namespace evencount::weave
