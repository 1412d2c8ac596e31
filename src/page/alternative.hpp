#pragma once
/// What pictures of a project show, in words, for whoever does not see them. Read off the plans, like the pictures.

#include <string>

#include "language/language.hpp"
#include "project/project.hpp"
#include "weave/plan.hpp"

namespace evencount::page {

struct Subject;

/// "Chart of New moon: flat peyote, even count, 6 columns, 24 beads along the edge, 144 beads in 6 colours: night blue (38), …"
/// The colours come with the most beads first, at most six of them by name.
[[nodiscard]] std::string alternative_of_chart(const project::Project& project, const project::Band& band,
                                               const weave::Plan& plan,
                                               const language::Language& language = language::english());
/// "New moon in its beads: …"
[[nodiscard]] std::string alternative_of_band(const project::Project& project, const project::Band& band,
                                              const weave::Plan& plan,
                                              const language::Language& language = language::english());
/// "Moonwatch: 8 bands side by side: …". Errors: those of project::plan_of.
[[nodiscard]] Result<std::string> alternative_of_piece(const project::Project& project,
                                                       const language::Language& language = language::english());
[[nodiscard]] std::string alternative_of_piece(const Subject& subject);

}  // namespace evencount::page
