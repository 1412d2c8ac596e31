#pragma once
/// A strand to begin with, and what changes in a strand when bands do.

#include <string>

#include "project/project.hpp"

namespace evencount::project {

/// The project's bands in their order, as many times as it has copies of them, on elastic knotted end to end: two cords where a form has
/// two holes. A run of 8/0 beads at both sides makes the length, one lies between neighbours; bands that slide get stops at both
/// ends, and beads between them where neighbours don't hold each other. Without such bands, the forms.
///
/// Property (tests/project/operations_strand_test.cpp): what comes of the examples' bands closes in the trade's sizes, and no band comes off.
/// Errors: missing_field (no band is closed round a form, and there is no form to string).
[[nodiscard]] Result<SavedStrand> strand_to_begin_with(const Project& project, strand::Worn worn);

/// The strand still means the band that was called `before` and is called `after` in `renamed`. A layout that can't be read, or means something
/// else by that name, stays as it is. Errors: duplicate_name (a part of the layout is called that).
[[nodiscard]] Result<Done> rename_on_strand(const Project& project, std::string_view before,
                                            std::string_view after, Project& renamed);

/// Takes a band that is to go off the strand; whether it was on it. The strand goes too when nothing is left on it.
[[nodiscard]] bool take_off_strand(const Project& project, std::string_view name, Project& changed);

/// Whether the layout can be read and names that.
[[nodiscard]] bool is_strung(const Project& project, std::string_view name);

}  // namespace evencount::project
