#pragma once
/// Where what is made from a project is written.

#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"

namespace evencount::app {

struct OutputChoice {
  std::string output;       ///< the file, for one project; may be empty
  std::string folder;       ///< for NAME and the ending of each; the current one when empty
  std::string_view ending;  ///< ".pdf"
  std::string_view what;    ///< "a booklet"
};

/// The files for the projects of one call, in their order: moonwatch.pdf for moonwatch.evencount.json. Errors: bad_usage (one file for
/// several projects, or two that would get the same: the later would take the earlier one's place).
[[nodiscard]] Result<std::vector<std::string>> output_paths(const std::vector<std::string>& projects, const OutputChoice& choice);

}  // namespace evencount::app
