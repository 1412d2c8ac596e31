#pragma once
/// Looks a page over as a proof-reader would: nothing clipped, nothing printed over something else.

#include <string>
#include <vector>

#include "page/typesetter.hpp"

namespace evencount::page {

/// What is wrong with a page, in words; empty when nothing is. Every mark, the ink of texts included, must keep
/// `margin_mm` to each edge; no two texts may overlap; no text may be under 8 pt, no cell of a chart under 3.5 mm
/// across (in right-angle weave a bead's length).
[[nodiscard]] std::vector<std::string> faults_of(const drawing::Drawing& page, const Typesetter& typesetter,
                                                 double margin_mm);

}  // namespace evencount::page
