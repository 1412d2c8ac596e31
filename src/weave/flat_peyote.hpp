#pragma once
/// Flat peyote, even and odd count.
///
/// Row 2k+1 takes the even columns of step k, row 2k+2 the odd columns. Rows 1 and 2 are strung together,
/// from the last column towards column 0, so that the thread comes out of a low bead and row 3 sits on it.
/// Even count: every row ends by passing a bead of the row before, and turns round the edge.
/// Odd count: odd rows have a high bead at both ends. The last bead of row 3 is anchored by a figure-8
/// through the beads below it, the last bead of each later odd row by a loop round the thread along the edge.
/// The last step may leave its odd columns empty: the band then has an odd number of rows and can't be
/// zipped. Source: common practice, no source, for the turns; the order follows from where the thread can go.

#include "weave/plan.hpp"

namespace evencount::weave {

[[nodiscard]] Result<Done> check_even_count(int columns);
[[nodiscard]] Result<Done> check_odd_count(int columns);
[[nodiscard]] Result<Plan> lower_even_count(const chart::Chart& chart, Closure closure);
[[nodiscard]] Result<Plan> lower_odd_count(const chart::Chart& chart, Closure closure);

}  // namespace evencount::weave
