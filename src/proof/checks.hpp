#pragma once
/// The checks and what they share. Internal to the room: others use proof.hpp.

#include <optional>
#include <string>
#include <vector>

#include "proof/proof.hpp"

namespace evencount::proof {

using Findings = std::vector<Finding>;

// project_checks.cpp
void check_title(const project::Project& project, Findings& findings);
void check_bands(const project::Project& project, Findings& findings);
void check_references(const project::Project& project, Findings& findings);
// weave_checks.cpp
void check_plan(const project::Project& project, Findings& findings);
void check_words(const project::Project& project, Findings& findings);
void check_supplies(const project::Project& project, Findings& findings);
void check_thread(const project::Project& project, Findings& findings);
void check_passes(const project::Project& project, Findings& findings);
// form_checks.cpp
void check_fit(const project::Project& project, Findings& findings);
void check_width(const project::Project& project, Findings& findings);
// strand_checks.cpp
void check_strand(const project::Project& project, Findings& findings);
// legend_checks.cpp
void check_unused(const project::Project& project, Findings& findings);
void check_colours(const project::Project& project, Findings& findings);
void check_difference(const Subject& subject, Findings& findings);
void check_contrast(const project::Project& project, Findings& findings);
// glyph_checks.cpp
void check_glyphs(const Subject& subject, Findings& findings);

[[nodiscard]] std::string band_place(const project::Band& band);

/// What a problem found and what it needs, without its place.
[[nodiscard]] std::string sentence(const Problem& problem);

/// Whether the technique, bead and form of a band and every bead of its chart are there: what every other check
/// relies on.
[[nodiscard]] bool is_sound(const project::Project& project, const project::Band& band);

/// The plan of a sound band; nothing when it is not sound or its technique can't make it.
[[nodiscard]] std::optional<weave::Plan> plan_if_any(const project::Project& project,
                                                     const project::Band& band);

/// Which legend entries the charts use.
[[nodiscard]] std::vector<bool> used_entries(const project::Project& project);

}  // namespace evencount::proof
