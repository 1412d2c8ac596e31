#include "app/places.hpp"

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

fs::path usual_projects() {
  const std::string data = variable("XDG_DATA_HOME");
  if (fs::path(data).is_absolute()) return fs::path(data) / "evencount" / "projects";
  const std::string home = variable("HOME");
  return fs::path(home.empty() ? "." : home) / ".local" / "share" / "evencount" / "projects";
}

std::string page_folder() {
  return shared_folder("studio");
}

std::string examples_folder() {
  return shared_folder("examples");
}

}  // namespace evencount::app
