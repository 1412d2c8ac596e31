#include "app/output_path.hpp"

#include <algorithm>
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

Result<std::vector<std::string>> output_paths(const std::vector<std::string>& projects, const OutputChoice& choice) {
  if (!choice.output.empty() && projects.size() > 1)
    return Problem{ProblemCode::bad_usage, "output", "one file for several projects",
                   "--folder, which gets " + std::string(choice.what) + " for each"};
  if (!choice.output.empty()) return std::vector{choice.output};
  const std::filesystem::path folder = choice.folder.empty() ? "." : choice.folder;
  std::vector<std::string> paths;
  for (const std::string& project : projects) {
    std::string path = (folder / (stem_of(project) + std::string(choice.ending))).string();
    if (std::find(paths.begin(), paths.end(), path) != paths.end())
      return Problem{ProblemCode::bad_usage, "output", "two projects for " + path, "each project once, and projects of different names"};
    paths.push_back(std::move(path));
  }
  return paths;
}

}  // namespace evencount::app
