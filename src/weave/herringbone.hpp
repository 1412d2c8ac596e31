#pragma once
/// Flat herringbone: beads on end in pairs that lean together.
///
/// The holes run along the piece. Row 1 is a ladder: each bead is strung beside the one before and joined to it at both
/// mouths, by going back through that one and through it again. Column 0 is strung going back (towards lower steps), so that
/// the even number of columns leaves the needle going forth out of the last bead, where row 2 begins.
///
/// Each stitch of a later row strings two beads, up over one column and down over the next, goes down through the bead below and,
/// unless the row ends there, up through the next one of the row below. At its end the needle has gone down through the row
/// below's last bead; it comes up past the outside of that bead, through the bead just strung last, and stands where the next
/// row begins.
///
/// An even number of columns from 2; every cell holds a bead. Source: common practice, no source.

#include "weave/technique.hpp"

namespace evencount::weave {

[[nodiscard]] std::span<const Technique> herringbone_techniques();

}  // namespace evencount::weave
