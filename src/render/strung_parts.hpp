#pragma once
/// What is strung, as solids: bands on their forms, beads, and findings in plain shapes of their stated sizes.

#include "render/strung_layout.hpp"
#include "render/workbench.hpp"

namespace evencount::render {

/// Errors: those of Workbench::add_band and add_form.
[[nodiscard]] Result<Done> add_strung(Workbench& bench, const project::Project& project,
                                      const strand::Strung& strung, const StrungLayout& layout);

}  // namespace evencount::render
