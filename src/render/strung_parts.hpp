#pragma once
/// What is strung, as solids where the strand places it: bands on their forms, beads, and findings in plain shapes of their stated sizes.
///
/// Properties (tests/render/strung_parts_test.cpp):
///  (1) every bead that the strand places, the outer cord's extra ones too, is one solid in its place
///  (2) a finding keeps within its stated sizes

#include "render/workbench.hpp"
#include "strand/placing.hpp"

namespace evencount::render {

/// `stand`: how the strand's own space (strand/placing.hpp) lies in the scene; it must not stretch.
/// Errors: those of Workbench::add_band and add_form.
[[nodiscard]] Result<Done> add_strung(Workbench& bench, const project::Project& project,
                                      const strand::Strung& strung, const strand::PlacedStrand& placed,
                                      const Placement& stand);

}  // namespace evencount::render
