#pragma once
/// What the studio's page shows of a strand: its layout as elements, and where everything lies.

#include "app/json_text.hpp"
#include "project/strung_sizes.hpp"
#include "strand/layout.hpp"
#include "strand/placing.hpp"

namespace evencount::app::studio {

/// The layout, the text with it; what may be strung besides; and why the text can't be read, where it can't.
[[nodiscard]] Json layout_json(const project::Project& project);

/// Each thing as twelve numbers: element, cord, middle x y z, along x y z, outwards x y z, length.
[[nodiscard]] Json placements_json(const project::Project& project, const project::StrungSizes& sizes,
                                   const project::StrungSize& size, const strand::PlacedStrand& placed);

}  // namespace evencount::app::studio
