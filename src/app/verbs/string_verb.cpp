#include <fmt/ostream.h>

#include <algorithm>

#include "app/drawing_file.hpp"
#include "app/files.hpp"
#include "app/project_file.hpp"
#include "app/verbs.hpp"
#include "app/verbs/string_report.hpp"
#include "base/text.hpp"
#include "drawing/strand_drawing.hpp"

namespace evencount::app {
namespace {

/// What the command line says of the strand goes into the project.
Result<bool> change_strand(project::Project& project, const StringArguments& arguments) {
  bool changed = false;
  if (!arguments.layout.empty()) {
    const auto text = read_file(arguments.layout);
    if (!text) return text.problem();
    if (!project.strand) project.strand.emplace().ease = strand::ordinary_ease;
    std::string layout = *text;
    while (layout.ends_with('\n')) layout.pop_back();
    project.strand->layout = std::move(layout);
    changed = true;
  }
  if (!project.strand) return changed;
  if (!arguments.worn.empty()) {
    const auto worn = strand::parse_worn(arguments.worn);
    if (!worn) return worn.problem();
    if (*worn != project.strand->worn) project.strand->sizes.clear();
    project.strand->worn = *worn;
    changed = true;
  }
  if (!arguments.ease.empty()) {
    const auto ease = parse_length(arguments.ease);
    if (!ease) return ease.problem().within("ease");
    project.strand->ease = *ease;
    changed = true;
  }
  return changed;
}

int draw(const project::Project& project, const project::StrungSizes& report, const StringArguments& arguments,
         const Console& console) {
  const project::StrungSize& size = report.sizes.front();
  if (!arguments.flat.empty()) {
    const auto flat = drawing::strand_flat(project, report.strung, size.fit, size.curve);
    if (const int status = write_drawing(flat, project.title, arguments.flat, std::nullopt, console);
        status != exit_done)
      return status;
  }
  if (!arguments.as_worn.empty()) {
    const auto worn = drawing::strand_worn(project, report.strung, size.fit);
    if (!worn) return console.fail(worn.problem());
    return write_drawing(*worn, project.title, arguments.as_worn, std::nullopt, console);
  }
  return exit_done;
}

}  // namespace

Result<std::vector<strand::Wearer>> wearers_asked(const project::SavedStrand& saved,
                                                  const StringArguments& arguments) {
  std::vector<strand::Wearer> all = project::wearers_of(saved);
  if (!arguments.measure.empty()) {
    const auto measure = parse_length(arguments.measure);
    if (!measure) return measure.problem().within("measure");
    const Length ease = saved.worn == strand::Worn::length ? Length{} : saved.ease;
    return std::vector<strand::Wearer>{{plain_number(measure->mm()) + " mm", saved.worn, *measure, ease}};
  }
  if (arguments.size.empty()) return all;
  std::string names;
  for (const strand::Wearer& wearer : all) {
    if (wearer.name == arguments.size) return std::vector<strand::Wearer>{wearer};
    names += (names.empty() ? "" : ", ") + wearer.name;
  }
  return Problem{ProblemCode::unknown_name, "size", quote(arguments.size), "one of " + names};
}

int string_verb(const StringArguments& arguments, const Console& console) {
  auto project = load_project(arguments.project);
  if (!project) return console.fail(project.problem());
  const auto changed = change_strand(*project, arguments);
  if (!changed) return console.fail(changed.problem());
  const auto strung = project::strung_of(*project);
  if (!strung)
    return console.fail(
        strung.problem().within(arguments.layout.empty() ? arguments.project : arguments.layout));
  const auto wearers = wearers_asked(*project->strand, arguments);
  if (!wearers) return console.fail(wearers.problem());
  const auto report = project::strung_sizes(*project, *strung, *wearers, arguments.polygon);
  if (!report) return console.fail(report.problem().within(arguments.project));
  if (*changed)
    if (const auto saved = save_project(arguments.project, *project); !saved)
      return console.fail(saved.problem());
  print_string(project->title, *report, arguments.json, console);
  if (const int status = draw(*project, *report, arguments, console); status != exit_done) return status;
  return project::is_sound(*report) ? exit_done : exit_findings;
}

}  // namespace evencount::app
