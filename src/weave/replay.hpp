#pragma once
/// Following a plan bead by bead, knowing only the lattice.
///
/// Replay fails, naming the row and the stitch in it, when
///  - a cell is stitched twice, or at the end some cell that should hold a bead does not;
///  - the needle passes a bead that is not there, picks up one for a cell that stays empty, or enters a bead across its hole;
///  - two consecutive beads on the thread are not neighbours. Going on, the mouth it leaves and the mouth it enters are at most
///    half a step apart (over empty cells, which draw the fabric in, they may be further apart); after a turn it enters the next
///    bead beside the one it left, or the same one where it goes round a thread; in right-angle weave it goes round a corner and
///    never straight across one;
///  - a turn is called by the wrong name: round the edge where a bead stands beyond it or inside where none does; a loop, or a
///    needle that goes under a thread, where no thread runs, or under another than the nearest;
///  - on warps a row turns anywhere but round its outer warp, or a bead is not gone through both ways, under the warps and above
///    them;
///  - a unit of right-angle weave, whose four sides hold beads, has a corner round which no thread runs;
///  - more beads are strung in one stitch than the technique strings, or a stitch is not held: after the first row every
///    stitch's new beads must touch earlier beads or threads twice, and be followed by a pass;
///  - the rows are not marked in order, hold more or fewer stitches than there are, or name another direction
///    than that of their beads;
///  - the seam of a zipped or sewn piece leaves out a bead, a zip ends before the edge, or an open piece has a seam.

#include "weave/plan.hpp"

namespace evencount::weave {

/// The chart that the plan makes. Errors: bad_plan.
[[nodiscard]] Result<chart::Chart> replay(const Plan& plan);

}  // namespace evencount::weave
