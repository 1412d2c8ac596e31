#include <fmt/ostream.h>

#include <algorithm>
#include <filesystem>

#include "app/files.hpp"
#include "app/json_text.hpp"
#include "app/lettering_argument.hpp"
#include "app/new_file.hpp"
#include "app/project_file.hpp"
#include "app/verbs.hpp"
#include "base/text.hpp"
#include "project/series.hpp"

namespace evencount::app {
namespace {

using project::SeriesOutcome;

/// "3-12": from one step to another.
Result<std::optional<project::StepSpan>> parse_steps(const std::string& text, std::string_view what) {
  if (text.empty()) return std::optional<project::StepSpan>{};
  const auto dash = text.find('-');
  const auto first = parse_integer(text.substr(0, dash));
  const auto last = dash == std::string::npos ? std::nullopt : parse_integer(text.substr(dash + 1));
  if (!first || !last || *first < 0 || *last < *first || *last >= chart::most_edge)
    return Problem{ProblemCode::bad_usage, std::string(what), quote(text),
                   "FIRST-LAST, two steps from 0 on, such as 1-11"};
  return std::optional(project::StepSpan{static_cast<int>(*first), static_cast<int>(*last - *first + 1)});
}

Result<project::SeriesOptions> options_from(const SeriesArguments& arguments) {
  project::SeriesOptions options;
  if (!arguments.band.empty()) options.band = arguments.band;
  options.letter = upper_ascii(arguments.letter);
  options.replace_edited = arguments.replace_edited;
  const auto style = lettering_style(arguments.alphabet, arguments.running);
  if (!style) return style.problem();
  options.style = *style;
  const auto front = parse_steps(arguments.front, "front"), back = parse_steps(arguments.back, "back");
  if (!front) return front.problem();
  if (!back) return back.problem();
  options.front = *front;
  options.back = *back;
  return options;
}

/// The table, its texts' backslash and n as line breaks.
Result<project::SeriesTable> read_table(const std::string& path) {
  const auto text = read_file(path);
  if (!text) return text.problem();
  auto table = project::parse_series_table(*text);
  if (!table) return table.problem().within(path);
  for (project::SeriesRow& row : table->rows)
    for (std::string* words : {&row.front, &row.back}) *words = with_line_breaks(std::move(*words));
  return table;
}

/// Motif files lie where the table does, unless their names say otherwise.
project::MotifTexts read_motifs(const project::SeriesTable& table, const std::string& path) {
  const std::filesystem::path folder = std::filesystem::path(path).parent_path();
  project::MotifTexts motifs;
  for (const std::string& name : project::motifs_of(table))
    motifs.emplace(name, read_file((folder / name).string()));
  return motifs;
}

Json to_json(const project::Series& series, bool written) {
  Json bands = Json::array(), problems = Json::array();
  for (const project::SeriesBand& band : series.bands)
    bands.push_back(
        {{"line", band.line}, {"name", band.name}, {"outcome", project::outcome_name(band.outcome)}});
  for (const Problem& problem : series.problems)
    problems.push_back({{"code", problem_kind(problem.code).name},
                        {"where", problem.where},
                        {"found", problem.found},
                        {"expected", problem.expected}});
  return {{"written", written},
          {"bands", std::move(bands)},
          {"problems", std::move(problems)},
          {"no_line", series.no_line}};
}

void print_series(const project::Series& series, const std::string& path, std::ostream& out) {
  const auto count = [&](SeriesOutcome outcome) {
    return std::ranges::count(series.bands, outcome, &project::SeriesBand::outcome);
  };
  fmt::print(out, "{}: {} made, {} replaced, {} as they were, {} kept\n", path, count(SeriesOutcome::made),
             count(SeriesOutcome::replaced), count(SeriesOutcome::same), count(SeriesOutcome::kept));
  for (const project::SeriesBand& band : series.bands)
    if (band.outcome == SeriesOutcome::kept)
      fmt::print(out,
                 "  kept: {}, edited since it was made or made by hand (line {} of the table; "
                 "--replace-edited to replace it)\n",
                 band.name, band.line);
  for (const std::string& name : series.no_line)
    fmt::print(out, "  no good line in the table: {}, left as it is\n", name);
}

void print_problems(const project::Series& series, const SeriesArguments& arguments, bool written,
                    const Console& console) {
  for (const Problem& problem : series.problems)
    fmt::print(console.err, "evencount: {}\n", message(problem.within(arguments.table)));
  if (!written)
    fmt::print(console.err, "evencount: {} bad, so nothing was written; --skip-bad makes the {} others\n",
               series.problems.size() == 1 ? "a line is" : "lines are", series.bands.size());
}

int finish(const project::Series& series, const SeriesArguments& arguments, const Console& console) {
  const std::string path = arguments.output.empty() ? arguments.onto : arguments.output;
  const bool written = series.problems.empty() || arguments.skip_bad;
  if (written)
    if (const auto saved = save_project(path, series.project); !saved) return console.fail(saved.problem());
  if (arguments.json)
    print(console.out, to_json(series, written));
  else if (written)
    print_series(series, path, console.out);
  if (!series.problems.empty()) print_problems(series, arguments, written, console);
  if (!written) return exit_bad_input;
  const bool kept = std::ranges::find(series.bands, SeriesOutcome::kept, &project::SeriesBand::outcome) !=
                    series.bands.end();
  return kept || !series.problems.empty() ? exit_findings : exit_done;
}

}  // namespace

int series_verb(const SeriesArguments& arguments, const Console& console) {
  if (arguments.onto.empty() || !arguments.output.empty())
    if (const auto free = check_new_file(arguments.output, arguments.overwrite); !free)
      return console.fail(free.problem());
  const auto options = options_from(arguments);
  if (!options) return console.fail(options.problem());
  const auto source = load_project(arguments.source);
  if (!source) return console.fail(source.problem());
  std::optional<project::Project> onto;
  if (!arguments.onto.empty()) {
    auto loaded = load_project(arguments.onto);
    if (!loaded) return console.fail(loaded.problem());
    onto = std::move(*loaded);
  }
  const auto table = read_table(arguments.table);
  if (!table) return console.fail(table.problem());
  const auto series =
      project::make_series(*source, *table, read_motifs(*table, arguments.table), *options, onto);
  if (!series) return console.fail(series.problem().within(arguments.source));
  return finish(*series, arguments, console);
}

}  // namespace evencount::app
