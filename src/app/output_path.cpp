#include "app/output_path.hpp"

#include <filesystem>

namespace evencount::app {
namespace {

constexpr std::string_view project_ending = ".evencount.json";

/// "moonwatch" of "examples/moonwatch.evencount.json".
std::string stem_of(const std::string& path) {
  std::string name = std::filesystem::path(path).filename().string();
  if (name.ends_with(project_ending)) return name.substr(0, name.size() - project_ending.size());
  return std::filesystem::path(name).stem().string();
}

}  // namespace

Result<std::string> output_path(const std::string& project, const OutputChoice& choice) {
  if (!choice.output.empty() && choice.projects > 1)
    return Problem{ProblemCode::bad_usage, "output", "one file for several projects",
                   "--folder, which gets " + std::string(choice.what) + " for each"};
  if (!choice.output.empty()) return choice.output;
  const std::filesystem::path folder = choice.folder.empty() ? "." : choice.folder;
  return (folder / (stem_of(project) + std::string(choice.ending))).string();
}

}  // namespace evencount::app
