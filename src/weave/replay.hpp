#pragma once
/// Following a plan bead by bead, knowing only the lattice.
///
/// Replay fails, naming the row and the stitch in it, when
///  - a cell is stitched twice, or at the end some cell that should hold a bead does not;
///  - the needle passes a bead that is not there, or picks up one for a cell that stays empty;
///  - two consecutive beads on the thread are not neighbours: going on, the next bead lies one column further
///  in the direction
///    of travel and half a step up or down; after a turn, one step up or down in the same column;
///  - a turn round the edge is made away from it or one inside the band at it, or a loop has no earlier thread along the edge to catch;
///  - a bead is picked up, after the first row, that is not held: it must hang on a bead of an earlier row
///  before and after;
///  - the rows are not marked in order, hold more or fewer stitches than there are, or name another direction
///  than that of their first bead;
///  - a zipped band's seam leaves out a bead or ends before the edge, or an open band has a seam.

#include "weave/plan.hpp"

namespace evencount::weave {

/// The chart that the plan makes. Errors: bad_plan.
[[nodiscard]] Result<chart::Chart> replay(const Plan& plan);

}  // namespace evencount::weave
