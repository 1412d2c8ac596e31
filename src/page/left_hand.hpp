#pragma once
/// A band as a left-handed maker works it: from the other side.
///
/// The engine plans chart::mirrored in the band's own technique and shows that plan in a mirror. Whoever works it from the other side
/// gets a band that looks like the right-handed one.

#include "project/project.hpp"

namespace evencount::page {

/// The plan whose words a maker follows: for the left hand that of the mirrored chart, with left and right changed.
/// Errors: those of project::plan_of; a technique may not make the mirrored chart.
[[nodiscard]] Result<weave::Plan> seen_plan(const project::Band& band, bool left_handed);

}  // namespace evencount::page
