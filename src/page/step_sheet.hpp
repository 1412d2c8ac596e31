#pragma once
/// The step diagrams of a band on one sheet of their own.

#include "drawing/marks.hpp"
#include "language/language.hpp"
#include "project/project.hpp"

namespace evencount::page {

/// Every moment of the band's plan (weave::moments, the joining of new thread included) as a diagram with a title above and what
/// the hands do below, in a grid as wide as it needs.
/// Errors: those of project::plan_of and weave::thread_use; missing_font; missing_glyph is found when the sheet is written.
[[nodiscard]] Result<drawing::Drawing> step_sheet(const project::Project& project, const project::Band& band,
                                                  const language::Language& language = language::english());

}  // namespace evencount::page
