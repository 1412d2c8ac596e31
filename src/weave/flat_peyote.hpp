#pragma once
/// Flat peyote: even and odd count, two-drop, and with shaped ends.
///
/// A stitch strings one bead, or two in two-drop; what is said of a bead below holds for such a group. Rows 1 and 2 are strung
/// together, from the last column towards column 0, so that the thread comes out of a low bead and row 3 sits on it. Rows
/// alternate in direction after that. Where a row begins or ends against the row before it decides how the needle comes round:
///
///  - it ended through the edge bead below and begins on top of it (every row of even count): round the edge;
///  - its last bead has no bead beyond it to pass (odd rows of odd count): that bead is anchored by a loop round the thread
///    along the edge, or by a figure-8 through the beads below it, and the needle comes back through it. The first such row has
///    no thread along that edge yet and takes the figure-8;
///  - it begins one stitch further in, a decrease: a loop round the thread along the edge brings the needle back through the
///    last two beads; where no thread lies there yet, it passes outside the last bead;
///  - it begins one stitch further out, an increase: the new bead is strung from its outer side, so that the thread encloses it.
///
/// The last step may leave its odd columns empty: the band then has an odd number of rows and can't be zipped.
/// Source: common practice, no source, for the turns; the order follows from where the thread can go.

#include "weave/technique.hpp"

namespace evencount::weave {

/// Even count, odd count with loops, odd count with figure-8 turns, two-drop even and odd, shaped.
[[nodiscard]] std::span<const Technique> flat_peyote_techniques();

}  // namespace evencount::weave
