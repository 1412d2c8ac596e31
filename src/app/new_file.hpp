#pragma once
/// A file that a verb makes beside what it was given.

#include <string>

#include "base/result.hpp"

namespace evencount::app {

/// Errors: bad_usage (no name); file_unwritable where there is something already, unless that may be overwritten.
[[nodiscard]] Result<Done> check_new_file(const std::string& path, bool overwrite);

}  // namespace evencount::app
