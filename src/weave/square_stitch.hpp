#pragma once
/// Square stitch: beads in straight columns and rows, each sewn to the one below it.
///
/// Row 1 is strung from the last column to column 0. Then rows go to and fro: the needle strings a bead, turns and goes through
/// the bead below the other way, turns and goes through the new bead again, so that a circle of thread holds the two
/// together. A row's last circle ends at the edge, where the needle turns into the next row.
/// Sewn end to end, the beads of the last step are sewn to those of the first in the same circles.
/// Source: common practice, no source.

#include "weave/technique.hpp"

namespace evencount::weave {

[[nodiscard]] std::span<const Technique> square_stitch_techniques();

}  // namespace evencount::weave
