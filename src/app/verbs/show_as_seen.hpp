#pragma once
/// A project's colours as colour-blind eyes see them.

#include <string>

#include "project/project.hpp"

namespace evencount::app {

/// The legend's colours as an eye with a deficiency ("protan", "deutan", "tritan") sees them; as they are for an empty name.
/// Errors: unknown_name.
[[nodiscard]] Result<Done> show_as_seen(project::Project& project, const std::string& name);

}  // namespace evencount::app
