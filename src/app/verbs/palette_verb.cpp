#include <fmt/ostream.h>

#include "app/json_text.hpp"
#include "app/project_file.hpp"
#include "app/verbs.hpp"
#include "project/palette.hpp"

namespace evencount::app {
namespace {

Json to_json(const std::vector<project::PaletteConflict>& conflicts, const std::vector<std::string>& paths) {
  Json list = Json::array();
  for (const project::PaletteConflict& conflict : conflicts)
    list.push_back({{"letter", conflict.letter},
                    {"project", paths[conflict.project]},
                    {"first", paths[conflict.first]},
                    {"difference", conflict.difference}});
  return {{"projects", paths}, {"conflicts", std::move(list)}};
}

}  // namespace

int palette_verb(const PaletteArguments& arguments, const Console& console) {
  std::vector<project::Project> projects;
  for (const std::string& path : arguments.projects) {
    auto project = load_project(path);
    if (!project) return console.fail(project.problem());
    projects.push_back(std::move(*project));
  }
  const auto conflicts = project::palette_conflicts(projects);
  if (arguments.json) {
    print(console.out, to_json(conflicts, arguments.projects));
  } else if (conflicts.empty()) {
    fmt::print(console.out, "{} projects: every letter means one bead\n", projects.size());
  }
  for (const project::PaletteConflict& conflict : conflicts)
    if (!arguments.json)
      fmt::print(console.out, "{}  {}: another {} than in {}\n", conflict.letter,
                 arguments.projects[conflict.project], conflict.difference,
                 arguments.projects[conflict.first]);
  return conflicts.empty() ? exit_done : exit_findings;
}

}  // namespace evencount::app
