#pragma once
/// How a project's bands are strung: its saved layout over what the project has.

#include <vector>

#include "project/project.hpp"
#include "strand/fitting.hpp"
#include "strand/strung.hpp"

namespace evencount::project {

/// What a layout may name: every band on a form that is strung (by its name), every such form (by its id),
/// every bead of the
/// project (by its id). Of equal names the first counts, in that order. Bands that can't be strung are left out.
[[nodiscard]] std::vector<strand::Element> strand_catalogue(const Project& project);

/// The strand as it is strung. Errors: missing_field (the project has none), those of strand::parse_layout and
/// strand::lay_strung; all
/// with "strand" in `where`.
[[nodiscard]] Result<strand::Strung> strung_of(const Project& project);

/// The wearers of the saved strand: its sizes, or the trade's for what it is worn on.
[[nodiscard]] std::vector<strand::Wearer> wearers_of(const SavedStrand& saved);

/// Degrees that its faces stand at: its own, or strand::bracelet_lean on a wrist and strand::necklace_lean else.
[[nodiscard]] double lean_of(const SavedStrand& saved);

}  // namespace evencount::project
