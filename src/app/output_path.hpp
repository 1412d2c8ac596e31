#pragma once
/// Where what is made from a project is written.

#include <string>
#include <string_view>

#include "base/result.hpp"

namespace evencount::app {

struct OutputChoice {
  std::size_t projects = 1;  ///< of the same call
  std::string output;        ///< the file, for one project; may be empty
  std::string folder;        ///< for NAME and the ending of each; the current one when empty
  std::string_view ending;   ///< ".pdf"
  std::string_view what;     ///< "a booklet"
};

/// The file for the project of that path: moonwatch.pdf for moonwatch.evencount.json. Errors: bad_usage (one file for several projects).
[[nodiscard]] Result<std::string> output_path(const std::string& project, const OutputChoice& choice);

}  // namespace evencount::app
