#include <fmt/ostream.h>

#include "app/cover_picture.hpp"
#include "app/document_date.hpp"
#include "app/files.hpp"
#include "app/hand.hpp"
#include "app/output_path.hpp"
#include "app/project_file.hpp"
#include "app/verbs.hpp"
#include "page/booklet.hpp"

namespace evencount::app {
namespace {

Result<std::string> make_one(const std::string& path, const page::BookletOptions& options,
                             const std::string& output) {
  const auto project = load_project(path);
  if (!project) return project.problem();
  const auto pdf = page::booklet_pdf(*project, options);
  if (!pdf) return pdf.problem().within(path);
  if (const auto written = write_file(output, *pdf); !written) return written.problem();
  return fmt::format("{}: {} band{}", output, project->bands.size(), project->bands.size() == 1 ? "" : "s");
}

}  // namespace

int booklet_verb(const BookletArguments& arguments, const Console& console) {
  page::BookletOptions options;
  const auto paper = page::parse_paper(arguments.paper);
  if (!paper) return console.fail(paper.problem());
  options.paper = *paper;
  const auto signs = drawing::parse_signs(arguments.signs);
  if (!signs) return console.fail(signs.problem());
  options.signs = *signs;
  options.steps = !arguments.no_steps;
  const auto language = language::find_language(arguments.language);
  if (!language) return console.fail(language.problem());
  options.language = *language;
  const auto left_handed = parse_left_handed(arguments.hand);
  if (!left_handed) return console.fail(left_handed.problem());
  options.left_handed = *left_handed;
  if (!arguments.cover.empty()) {
    auto cover = cover_picture(arguments.cover);
    if (!cover) return console.fail(cover.problem());
    options.cover = std::move(*cover);
  }
  const auto date = document_date();
  if (!date) return console.fail(date.problem());
  options.created_unix = *date;
  const auto outputs = output_paths(arguments.projects, {arguments.output, arguments.folder, ".pdf", "a booklet"});
  if (!outputs) return console.fail(outputs.problem());
  for (std::size_t i = 0; i < outputs->size(); ++i) {
    const auto made = make_one(arguments.projects[i], options, (*outputs)[i]);
    if (!made) return console.fail(made.problem());
    fmt::print(console.out, "{}\n", *made);
  }
  return exit_done;
}

}  // namespace evencount::app
