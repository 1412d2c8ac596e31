#include "app/studio/run.hpp"
#include "app/verbs.hpp"

namespace evencount::app {

int studio_verb(const StudioArguments& arguments, const Console& console) {
  return studio::run({.project = arguments.project,
                      .projects = arguments.projects,
                      .page_files = arguments.page_files,
                      .port = arguments.port,
                      .lan = arguments.lan,
                      .open = arguments.open},
                     console);
}

}  // namespace evencount::app
