#pragma once
/// Projects drawn from a seed: every field, every level's unknown fields, awkward text. The same on every machine.

#include <cstdint>

#include "project/project.hpp"

namespace evencount::testing {

[[nodiscard]] project::Project random_project(std::uint64_t seed);

}  // namespace evencount::testing
