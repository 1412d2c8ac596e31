#include "app/new_file.hpp"

#include <filesystem>

namespace evencount::app {

Result<Done> check_new_file(const std::string& path, bool overwrite) {
  if (path.empty()) return Problem{ProblemCode::bad_usage, "output", "no file", "-o FILE"};
  std::error_code error;
  if (overwrite || !std::filesystem::exists(std::filesystem::symlink_status(path, error))) return Done{};
  return Problem{ProblemCode::file_unwritable, path, "a file that is there already",
                 "a new name, or --overwrite"};
}

}  // namespace evencount::app
