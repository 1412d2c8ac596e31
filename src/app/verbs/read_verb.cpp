#include <fmt/ostream.h>

#include "app/files.hpp"
#include "app/hand.hpp"
#include "app/json_text.hpp"
#include "app/project_file.hpp"
#include "app/reports.hpp"
#include "app/verbs.hpp"
#include "chart/runs.hpp"
#include "wording/reader.hpp"

namespace evencount::app {
namespace {

void print_band(const wording::ReadBand& band, std::ostream& out) {
  fmt::print(out, "{}: {} columns, {} along the edge, {} rows\n", band.name.empty() ? "Band" : band.name,
             band.chart.columns(), band.chart.edge(), band.rows);
  for (int step = 0; step < band.chart.edge(); ++step)
    fmt::print(out, "  {:>4}  {}\n", step,
               chart::to_text(chart::to_runs(band.chart.step(step)), band.letters));
}

/// Where a band that was read differs from the project's, in words; empty when it doesn't.
std::string difference(const wording::ReadBand& read, const chart::Chart& chart) {
  if (read.chart.columns() != chart.columns() || read.chart.edge() != chart.edge())
    return fmt::format("{} columns and {} along the edge, the project has {} and {}", read.chart.columns(),
                       read.chart.edge(), chart.columns(), chart.edge());
  for (int step = 0; step < read.chart.edge(); ++step)
    for (int column = 0; column < read.chart.columns(); ++column)
      if (read.chart.at({column, step}) != chart.at({column, step}))
        return fmt::format("column {}, step {} differs", column, step);
  return {};
}

/// Every band of the project must have been read, with its own chart, and no other.
int compare(const std::vector<wording::ReadBand>& bands, const project::Project& project, bool left_handed,
            const Console& console) {
  int faults = 0;
  const auto report = [&](const std::string& band, const std::string& fault) {
    fmt::print(console.err, "evencount: band {}: {}\n", band, fault);
    ++faults;
  };
  for (std::size_t i = 0; i < project.bands.size(); ++i) {
    if (i >= bands.size()) {
      report(project.bands[i].name, "not in the words");
      continue;
    }
    const std::string fault = bands[i].name != project.bands[i].name
                                  ? fmt::format("the words call it '{}'", bands[i].name)
                                  : difference(bands[i], left_handed ? chart::mirrored(project.bands[i].chart)
                                                                    : project.bands[i].chart);
    if (!fault.empty()) report(project.bands[i].name, fault);
  }
  for (std::size_t i = project.bands.size(); i < bands.size(); ++i)
    report(bands[i].name, "not in the project");
  if (faults == 0)
    fmt::print(console.err, "the words make every chart of the project: {} bands\n", bands.size());
  return faults == 0 ? exit_done : exit_findings;
}

}  // namespace

int read_verb(const ReadArguments& arguments, const Console& console) {
  const auto text = read_file(arguments.words);
  if (!text) return console.fail(text.problem());
  const auto left_handed = parse_left_handed(arguments.hand);
  if (!left_handed) return console.fail(left_handed.problem());
  wording::ReadOptions options;
  options.columns = arguments.columns;
  options.rows = arguments.rows;
  std::optional<project::Project> project;
  if (!arguments.against.empty()) {
    auto loaded = load_project(arguments.against);
    if (!loaded) return console.fail(loaded.problem());
    project = std::move(*loaded);
    options.legend = project::letters_of(*project);
  }
  const auto bands = wording::read_words(*text, options);
  if (!bands)
    return console.fail(bands.problem().within(arguments.words == "-" ? "standard input" : arguments.words));
  if (arguments.json) {
    Json answer = Json::array();
    for (const wording::ReadBand& band : *bands) answer.push_back(read_band_json(band));
    print(console.out, {{"bands", answer}});
  } else {
    for (const wording::ReadBand& band : *bands) print_band(band, console.out);
  }
  return project ? compare(*bands, *project, *left_handed, console) : exit_done;
}

}  // namespace evencount::app
