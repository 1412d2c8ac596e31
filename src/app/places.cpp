#include "app/places.hpp"

#include <fmt/format.h>

#include <cstdlib>

namespace evencount::app {
namespace {

namespace fs = std::filesystem;

fs::path program_folder() {
  std::error_code error;
  const fs::path program = fs::read_symlink("/proc/self/exe", error);
  return error ? fs::path(".") : program.parent_path();
}

std::string shared_folder(const char* name) {
  std::error_code error;
  for (const fs::path& share : {program_folder() / EVENCOUNT_SHARE_FROM_PROGRAM, program_folder() / "share"})
    if (fs::is_directory(share / name, error)) return (share / name).lexically_normal().string();
  return "";
}

}  // namespace

std::string variable(const char* name) {
  const char* value = std::getenv(name);
  return value ? value : "";
}

Result<fs::path> data_folder(std::string_view otherwise) {
  const fs::path data = variable("XDG_DATA_HOME"), home = variable("HOME");
  if (data.is_absolute()) return data / "evencount";
  if (home.is_absolute()) return home / ".local" / "share" / "evencount";
  return Problem{ProblemCode::missing_field, "your data", "no home folder", fmt::format("{}, or $HOME", otherwise)};
}

Result<fs::path> usual_projects() {
  auto data = data_folder("--projects FOLDER");
  if (!data) return data.problem();
  return *data / "projects";
}

std::string page_folder() {
  return shared_folder("studio");
}

std::string examples_folder() {
  return shared_folder("examples");
}

}  // namespace evencount::app
