#include <fmt/ostream.h>

#include "app/files.hpp"
#include "app/output_path.hpp"
#include "app/project_file.hpp"
#include "app/verbs.hpp"
#include "page/stitch_along.hpp"

namespace evencount::app {
namespace {

Result<Done> make_one(const std::string& path, const std::string& output, const language::Language& language,
                      const Console& console) {
  const auto project = load_project(path);
  if (!project) return project.problem();
  const auto along = page::stitch_along(*project, language);
  if (!along) return along.problem().within(path);
  if (const auto written = write_file(output, along->html); !written) return written.problem();
  for (const page::NoLeftHand& band : along->without_left_hand)
    fmt::print(console.err, "{}: no left-handed mode ({})\n", band.band, band.reason);
  fmt::print(console.out, "{}: {} band{}\n", output, project->bands.size(), project->bands.size() == 1 ? "" : "s");
  return Done{};
}

}  // namespace

int along_verb(const AlongArguments& arguments, const Console& console) {
  const auto language = language::find_language(arguments.language);
  if (!language) return console.fail(language.problem());
  const auto outputs = output_paths(arguments.projects, {arguments.output, arguments.folder, ".html", "a page"});
  if (!outputs) return console.fail(outputs.problem());
  for (std::size_t i = 0; i < outputs->size(); ++i)
    if (const auto made = make_one(arguments.projects[i], (*outputs)[i], **language, console); !made)
      return console.fail(made.problem());
  return exit_done;
}

}  // namespace evencount::app
