#pragma once
/// What replay checks without following the thread. Internal to the room.

#include "weave/plan.hpp"

namespace evencount::weave {

/// "column 3, step 0".
[[nodiscard]] std::string cell_name(Cell cell);

/// Whether the rows are marked in order, hold every stitch but turns between them, and name the direction of their beads.
/// Errors: bad_plan.
[[nodiscard]] Result<Done> check_rows(const Plan& plan);

/// Whether a bead lies at an end of the piece where a seam must take it in: all end beads of a sewn piece, the standing ones of
/// a zipped one, none otherwise.
[[nodiscard]] bool in_seam(const Plan& plan, Cell cell);

}  // namespace evencount::weave
