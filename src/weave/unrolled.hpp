#pragma once
/// A round or joined piece laid flat round one place, so that what the needle does there can be drawn.
///
/// Unrolled cells count on past the seams: on a round lattice columns go below 0 and past the last one; where the ends of a piece
/// meet, the first steps follow the last.
///
/// Properties (tests/weave/moments_test.cpp):
///  (1) unrolled_cell(l, middle_of(l, c)) == c
///  (2) on an open flat lattice an unrolled cell is the cell itself
///  (3) shown_cell of the unrolled cell of a visit is the visit's own cell

#include <optional>
#include <vector>

#include "weave/plan.hpp"

namespace evencount::weave {

/// A bead that the needle goes through.
struct Visit {
  std::size_t stitch = 0;
  Cell cell;
  Spot middle;  ///< unrolled: consecutive beads are neighbours also where a tube or a seam lies between them
  Travel travel = Travel::right;
  bool operator==(const Visit&) const = default;
};

/// The beads gone through in stitches first to end, in order. On a round lattice the first one lies where the lattice puts it;
/// at a seam the first half of the steps follows the last.
[[nodiscard]] std::vector<Visit> visits(const Plan& plan, std::size_t first, std::size_t end, bool at_seam);

/// The unrolled cell round the middle of a bead, and the middle of the bead of an unrolled cell.
[[nodiscard]] Cell unrolled_cell(const Lattice& lattice, Spot middle);
[[nodiscard]] Spot middle_of(const Lattice& lattice, Cell unrolled);

/// The cell of the lattice that an unrolled cell shows; none past the ends of the piece, or where no bead can lie.
[[nodiscard]] std::optional<Cell> shown_cell(const Lattice& lattice, Cell unrolled, bool at_seam);

}  // namespace evencount::weave
