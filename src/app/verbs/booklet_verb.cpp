#include <fmt/ostream.h>

#include <cstdlib>

#include "app/files.hpp"
#include "app/output_path.hpp"
#include "app/project_file.hpp"
#include "app/verbs.hpp"
#include "base/text.hpp"
#include "page/booklet.hpp"

namespace evencount::app {
namespace {

/// The date that the document carries: only when SOURCE_DATE_EPOCH asks for one, so that the same project gives the same bytes.
Result<std::optional<std::int64_t>> document_date() {
  const char* text = std::getenv("SOURCE_DATE_EPOCH");
  if (text == nullptr || *text == '\0') return std::optional<std::int64_t>{};
  const auto seconds = parse_integer(text);
  constexpr std::int64_t end_of_year_9999 = 253402300799;
  if (!seconds || *seconds < 0 || *seconds > end_of_year_9999)
    return Problem{ProblemCode::bad_text, "SOURCE_DATE_EPOCH", quoted(text),
                   "seconds since 1970 as a whole number"};
  return std::optional<std::int64_t>{*seconds};
}

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
  const auto date = document_date();
  if (!date) return console.fail(date.problem());
  options.created_unix = *date;
  for (const std::string& path : arguments.projects) {
    const auto output = output_path(path, {arguments.projects.size(), arguments.output, arguments.folder, ".pdf", "a booklet"});
    if (!output) return console.fail(output.problem());
    const auto made = make_one(path, options, *output);
    if (!made) return console.fail(made.problem());
    fmt::print(console.out, "{}\n", *made);
  }
  return exit_done;
}

}  // namespace evencount::app
