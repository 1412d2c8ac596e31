#pragma once
/// The whole piece as a picture: as it is strung, or its bands side by side.

#include "drawing/marks.hpp"
#include "project/project.hpp"

namespace evencount::page {

/// To true size, without any text. Strung in the size that the supplies are for; of a project without a strand, or whose strand can't be
/// laid out, each band once, upright, in the order of the project. Errors: those of project::plan_of; missing_field without bands.
[[nodiscard]] Result<drawing::Drawing> piece_picture(const project::Project& project);

}  // namespace evencount::page
