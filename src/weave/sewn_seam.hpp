#pragma once
/// Sewing the two ends of a finished piece together. Internal to the room.

#include "weave/needle.hpp"

namespace evencount::weave {

/// Fewest beads along the edge of a piece sewn end to end: with two, its ends are neighbours already.
inline constexpr int least_edge_to_sew = 3;

/// A ladder across the seam. The needle comes out of the outermost bead of one end, in the step `from_step`, at the edge of the
/// piece, and the row before has ended; it works the whole way across. In every column it goes through the bead of the other
/// end, the one of this end and that of the other end again, so that thread joins the two at both mouths.
///
/// `number`: the row's, one more than the last row with beads.
void sew_ends(Needle& needle, int columns, int from_step, int to_step, int number);

/// Errors: too_few_beads.
[[nodiscard]] Result<Done> check_edge_to_sew(int edge);

}  // namespace evencount::weave
