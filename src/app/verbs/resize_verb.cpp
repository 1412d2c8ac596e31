#include <fmt/ostream.h>

#include "app/form_argument.hpp"
#include "app/new_file.hpp"
#include "app/project_file.hpp"
#include "app/verbs.hpp"
#include "app/verbs/resize_report.hpp"
#include "base/text.hpp"

namespace evencount::app {
namespace {

/// "NAME=VALUE", or VALUE alone with an empty name. Names may hold '='; values of these options never do.
std::pair<std::string, std::string> named_value(const std::string& text) {
  const auto equals = text.rfind('=');
  if (equals == std::string::npos) return {"", text};
  return {text.substr(0, equals), text.substr(equals + 1)};
}

/// "ID=KIND:SIZES,hole=2": a form's settings come after its colon.
std::pair<std::string, std::string> named_form(const std::string& text) {
  const auto equals = text.find('=');
  if (equals == std::string::npos || equals > text.find(':')) return {"", text};
  return {text.substr(0, equals), text.substr(equals + 1)};
}

Result<Done> read_beads_and_forms(const ResizeArguments& arguments, project::ResizeRequest& request) {
  for (const std::string& text : arguments.beads) {
    const auto [id, bead] = named_value(text);
    if (!request.beads.emplace(id, bead).second)
      return Problem{ProblemCode::duplicate_name, "bead", quote(text), "each bead once"};
  }
  for (const std::string& text : arguments.forms) {
    const auto [id, notation] = named_form(text);
    auto form = form_argument(notation);
    if (!form) return form.problem();
    if (!request.forms.emplace(id, std::move(*form)).second)
      return Problem{ProblemCode::duplicate_name, "form", quote(text), "each form once"};
  }
  return Done{};
}

Result<Done> read_ways(const ResizeArguments& arguments, project::ResizeRequest& request) {
  for (const std::string& text : arguments.carry) {
    const auto [band, name] = named_value(text);
    const auto carry = project::parse_carry(name);
    if (!carry) return carry.problem();
    (band.empty() ? request.carry : request.bands[band].carry) = *carry;
  }
  for (const std::string& text : arguments.flat) {
    const auto [band, name] = named_value(text);
    const auto flat = project::parse_flat_keeps(name);
    if (!flat) return flat.problem();
    if (band.empty())
      request.flat = *flat;
    else
      request.bands[band].flat = *flat;
  }
  if (!arguments.border.empty()) request.border = upper_ascii(arguments.border);
  request.keep_lines = !arguments.by_area;
  return Done{};
}

Result<Done> read_sizes(const std::vector<std::string>& texts, std::string_view what,
                        std::optional<int> project::BandWish::*size, project::ResizeRequest& request) {
  for (const std::string& text : texts) {
    const auto [band, number] = named_value(text);
    const auto count = parse_integer(number);
    if (band.empty() || !count || *count < 1 || *count > chart::most_edge)
      return Problem{ProblemCode::bad_usage, std::string(what), quote(text),
                     fmt::format("BAND=NUMBER, from 1 to {}", chart::most_edge)};
    request.bands[band].*size = static_cast<int>(*count);
  }
  return Done{};
}

Result<project::ResizeRequest> read_request(const ResizeArguments& arguments) {
  project::ResizeRequest request;
  if (const auto done = read_beads_and_forms(arguments, request); !done) return done.problem();
  if (const auto done = read_ways(arguments, request); !done) return done.problem();
  if (const auto done = read_sizes(arguments.columns, "columns", &project::BandWish::columns, request); !done)
    return done.problem();
  if (const auto done = read_sizes(arguments.edge, "edge", &project::BandWish::edge, request); !done)
    return done.problem();
  return request;
}

}  // namespace

int resize_verb(const ResizeArguments& arguments, const Console& console) {
  if (const auto free = check_new_file(arguments.output, arguments.overwrite); !free)
    return console.fail(free.problem());
  const auto project = load_project(arguments.project);
  if (!project) return console.fail(project.problem());
  const auto request = read_request(arguments);
  if (!request) return console.fail(request.problem());
  const auto resized = project::resize(*project, *request);
  if (!resized) return console.fail(resized.problem().within(arguments.project));
  if (const auto saved = save_project(arguments.output, resized->project); !saved)
    return console.fail(saved.problem());
  if (arguments.json) {
    print(console.out, to_json(*resized));
  } else {
    fmt::print(console.out, "{}: {} of {} bands resized\n", arguments.output, resized->bands.size(),
               resized->project.bands.size());
    print_resized(*resized, arguments.brief, console.out);
  }
  return exit_done;
}

}  // namespace evencount::app
