#pragma once
/// Brick stitch, plain and shaped.
///
/// A row runs along the piece: it is one column of the chart, and its beads stand side by side half a bead on from those of the
/// row before. Rows go to and fro, row 1 towards higher steps. Between rows the needle comes out of the last bead on the side
/// where the next row goes.
///
///  - Row 1 is a ladder: neighbours are joined by thread at both mouths.
///  - Every other row begins with two beads: both are strung, the second hangs on the thread between two beads below, and the
///    needle goes down the first and up the second once more, which locks the first.
///  - Each further bead is strung, the needle goes under the next thread and back through the bead.
///
/// Against the row before a row begins half a bead further out (the first bead then stands over the end) or, with a decrease,
/// half a bead further in; it ends half a bead further in or, with an increase, half a bead further out: one more bead hung on
/// the last thread. So the chart may have any outline whose columns are whole and whose ends move by half a bead: points,
/// triangles, diamonds, leaves. At points:
///
///  - one bead over two hangs alone on the thread between them; the thread to it runs outside it and encloses it;
///  - two beads over one, which has no thread: both are strung, the thread goes outside the bead below, up through it and
///    through the second bead again;
///  - one bead over one has nothing to hang on and is refused.
///
/// Sewn end to end (plain pieces only), the beads of the last step are joined to those of the first by a ladder across the seam.
/// Source: common practice, no source; the points from memory.

#include "weave/technique.hpp"

namespace evencount::weave {

[[nodiscard]] std::span<const Technique> brick_techniques();

}  // namespace evencount::weave
