#include "app/project_file.hpp"

#include <filesystem>

#include "app/files.hpp"
#include "app/studio/recover.hpp"
#include "project/json.hpp"

namespace evencount::app {

namespace {

/// The project with what only its history holds yet.
Result<studio::Recovered> load_with_history(const std::string& path, const std::string& history_path) {
  const auto text = read_file(path);
  if (!text) return text.problem();
  const auto history = studio::History::open(history_path, studio::History::Access::read);
  if (!history) return history.problem();
  auto recovered = studio::recover(*history, *text);
  if (!recovered) return recovered.problem().within(path);
  return recovered;
}

}  // namespace

Result<project::Project> load_project(const std::string& path) {
  std::error_code error;
  const std::string history = studio::history_file(path);
  if (path == "-" || !std::filesystem::exists(history, error)) {
    const auto text = read_file(path);
    if (!text) return text.problem();
    auto project = project::parse_project(*text);
    if (!project) return project.problem().within(path);
    return project;
  }
  // A studio may be writing the file right now: what looks like another program's change is looked at again.
  constexpr int looks = 3;
  for (int look = 1;; ++look) {
    auto recovered = load_with_history(path, history);
    if (!recovered) return recovered.problem();
    if (!recovered->outside || look == looks) return std::move(recovered->project);
  }
}

Result<project::Project> load_or_begin_project(const std::string& path) {
  auto loaded = load_project(path);
  if (loaded || loaded.problem().code != ProblemCode::file_not_found) return loaded;
  project::Project project;
  project.title = "Untitled";
  project.thread = bead::threads().front();
  return project;
}

Result<Done> save_project(const std::string& path, const project::Project& project) {
  return write_file(path, project::to_json(project));
}

}  // namespace evencount::app
