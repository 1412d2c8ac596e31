#include "app/project_file.hpp"

#include "app/files.hpp"
#include "project/json.hpp"

namespace evencount::app {

Result<project::Project> load_project(const std::string& path) {
  const auto text = read_file(path);
  if (!text) return text.problem();
  auto project = project::parse_project(*text);
  if (!project) return project.problem().within(path);
  return project;
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
