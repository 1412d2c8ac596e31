#pragma once
/// Right-angle weave: units of four beads that share their sides.
///
/// A chart of (2 U + 1) x (2 V + 1) cells holds U units across and V along; the unit (u, r) has its near side in cell
/// (2u + 1, 2r), its far side in (2u + 1, 2r + 2), its left one in (2u, 2r + 1) and its right one in (2u + 2, 2r + 1). The cells
/// between, its middle and corners, stay empty.
///
/// The needle always goes round a unit, turning at every corner and never going straight across one. It comes into a unit by
/// the side that the unit shares with the one before, strings the sides that hold no bead yet and passes those that do, until it
/// has passed the shared side again, which closes the ring; then it goes on round to the side shared with the next unit. That
/// unit is gone round the other way, as the needle comes out of the shared side with the direction it has. The very first unit
/// strings its left side first, and all four. A row's last unit is left by its far side, which the first unit of the next row
/// shares. Rows go right and left in turn.
///
/// Columns and beads along the edge are odd, from 3. Source: common practice, no source.

#include "weave/technique.hpp"

namespace evencount::weave {

[[nodiscard]] std::span<const Technique> right_angle_techniques();

}  // namespace evencount::weave
