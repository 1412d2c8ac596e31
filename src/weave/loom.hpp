#pragma once
/// Loom work: beads hung on warp threads.
///
/// The warps stand one gap a column apart, so there is one more of them than columns; the outer two are doubled. Every row is
/// strung whole, from column 0 to the last, laid under the warps with one bead in each gap, and passed again above the warps on
/// the way back; between the two the needle goes round the last warp, and round the first one into the next row. So each bead is
/// held by the warps at its two ends, and the rows hang on those and not on each other.
///
/// Any number of columns and rows; every cell holds a bead. Source: common practice, no source.

#include "weave/technique.hpp"

namespace evencount::weave {

[[nodiscard]] std::span<const Technique> loom_techniques();

}  // namespace evencount::weave
