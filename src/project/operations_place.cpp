#include <algorithm>

#include "base/text.hpp"
#include "chart/runs.hpp"
#include "picture/lettering.hpp"
#include "project/operation_reader.hpp"
#include "project/resized_band.hpp"
#include "weave/technique.hpp"

namespace evencount::project {
namespace {

using chart::Bead;
using chart::Cell;
using chart::Chart;
using chart::Edit;
using chart::Grid;

Result<Grid> grid_of(const Band& band) {
  const auto technique = weave::find_technique(band.technique);
  if (!technique) return technique.problem();
  return weave::grid_of(technique->lattice(band.chart.columns(), band.chart.edge()), band.closure);
}

/// The project with another chart on one band.
Result<Applied> with_chart(const Project& project, int band, Result<Edit> edit, std::string sentence) {
  if (!edit) return edit.problem();
  Applied applied{project, std::move(sentence) + on_band(project, band)};
  auto resized = with_size_of(project.bands[static_cast<std::size_t>(band)], std::move(edit->chart));
  if (!resized) return resized.problem();
  applied.project.bands[static_cast<std::size_t>(band)] = std::move(*resized);
  return applied;
}

/// Steps or columns that come or go.
struct Lines {
  int band = 0, at = 0, count = 0;
};

Lines read_lines(OperationReader& reader) {
  const int band = reader.band();
  return {band, reader.whole("at", 0, chart::most_edge), reader.whole("count", 1, chart::most_edge)};
}

Result<Applied> insert_lines(const Project& project, OperationReader& reader, bool columns) {
  const Lines lines = read_lines(reader);
  const Bead bead = reader.letter("letter");
  if (!reader.finish()) return reader.problem();
  const Band& band = project.bands[static_cast<std::size_t>(lines.band)];
  const auto grid = grid_of(band);
  if (!grid) return grid.problem();
  auto edit = columns ? chart::insert_columns(band.chart, *grid, lines.at, lines.count, bead)
                      : chart::insert_steps(band.chart, lines.at, lines.count, bead);
  return with_chart(project, lines.band, std::move(edit),
                    "put in " + counted(lines.count, columns ? "column" : "step"));
}

Result<Applied> delete_lines(const Project& project, OperationReader& reader, bool columns) {
  const Lines lines = read_lines(reader);
  if (!reader.finish()) return reader.problem();
  const Band& band = project.bands[static_cast<std::size_t>(lines.band)];
  const auto grid = grid_of(band);
  if (!grid) return grid.problem();
  auto edit = columns ? chart::delete_columns(band.chart, *grid, lines.at, lines.count)
                      : chart::delete_steps(band.chart, lines.at, lines.count);
  return with_chart(project, lines.band, std::move(edit),
                    "took out " + counted(lines.count, columns ? "column" : "step"));
}

Result<Applied> insert_steps(const Project& project, OperationReader& reader) {
  return insert_lines(project, reader, false);
}
Result<Applied> insert_columns(const Project& project, OperationReader& reader) {
  return insert_lines(project, reader, true);
}
Result<Applied> delete_steps(const Project& project, OperationReader& reader) {
  return delete_lines(project, reader, false);
}
Result<Applied> delete_columns(const Project& project, OperationReader& reader) {
  return delete_lines(project, reader, true);
}

/// A piece given as lines of runs, one a step.
Result<Chart> read_piece(const Project& project, const std::vector<std::string>& lines) {
  const auto letters = letters_of(project);
  std::vector<std::vector<Bead>> steps;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    // The first line says how wide the piece is: each run begins with its count.
    int columns = steps.empty() ? 0 : static_cast<int>(steps.front().size());
    for (const std::string_view run :
         split(steps.empty() ? std::string_view(lines[i]) : std::string_view(), ' '))
      columns += static_cast<int>(std::min<std::int64_t>(
          parse_integer(run.substr(0, run.find_first_not_of("0123456789"))).value_or(0),
          chart::most_columns));
    auto step = chart::parse_runs(lines[i], letters, std::min(columns, chart::most_columns));
    if (!step) return step.problem().within(fmt::format("/lines/{}", i));
    steps.push_back(std::move(*step));
  }
  if (steps.empty()) return Problem{ProblemCode::missing_field, "/lines", "no lines", "one line a step"};
  auto chart = Chart::make(static_cast<int>(steps.front().size()), static_cast<int>(steps.size()));
  if (!chart) return chart.problem().within("/lines");
  for (int step = 0; step < chart->edge(); ++step)
    for (int column = 0; column < chart->columns(); ++column)
      chart->set({column, step}, steps[static_cast<std::size_t>(step)][static_cast<std::size_t>(column)]);
  return chart;
}

Result<Applied> press(const Project& project, OperationReader& reader) {
  const int band = reader.band();
  const Cell at = reader.cell("at");
  const std::vector<std::string> lines = reader.fields().texts("lines", chart::most_edge);
  const int shift = reader.whole("shift", 0, 3);
  if (!reader.finish()) return reader.problem();
  const auto grid = grid_of(project.bands[static_cast<std::size_t>(band)]);
  if (!grid) return grid.problem();
  auto piece = read_piece(project, lines);
  if (!piece) return piece.problem();
  return with_chart(project, band,
                    chart::press(project.bands[static_cast<std::size_t>(band)].chart, *grid,
                                 {std::move(*piece), shift}, at),
                    "pasted a piece");
}

Result<picture::LetteringStyle> read_style(OperationReader& reader) {
  picture::LetteringStyle style;
  const std::string alphabet = reader.text_or("alphabet", "five"),
                    running = reader.text_or("running", "across");
  if (alphabet == "three")
    style.alphabet = picture::AlphabetName::three_columns;
  else if (alphabet != "five")
    reader.refuse(ProblemCode::unknown_name, "alphabet", quote(alphabet), "five or three");
  if (running == "down")
    style.running = picture::Running::down;
  else if (running == "up")
    style.running = picture::Running::up;
  else if (running != "across")
    reader.refuse(ProblemCode::unknown_name, "running", quote(running), "across, down or up");
  if (reader.report().failed()) return reader.problem();
  return style;
}

Result<Applied> text(const Project& project, OperationReader& reader) {
  const int band = reader.band();
  const std::string words = reader.text("text");
  const Bead bead = reader.letter("letter");
  const Cell at = reader.has("at") ? reader.cell("at") : Cell{};
  const auto columns = reader.whole_if("columns", 1, chart::most_columns),
             steps = reader.whole_if("steps", 1, chart::most_edge);
  const auto style = read_style(reader);
  if (!style) return style.problem();
  if (!reader.finish()) return reader.problem();
  const Band& there = project.bands[static_cast<std::size_t>(band)];
  const auto grid = grid_of(there);
  if (!grid) return grid.problem();
  const picture::Window window{at, columns.value_or(there.chart.columns() - at.column),
                               steps.value_or(there.chart.edge() - at.step)};
  std::string shown = words.substr(0, words.find('\n'));
  return with_chart(project, band, picture::write_text(there.chart, *grid, words, window, bead, *style),
                    fmt::format("wrote {}", quote(shown)));
}

constexpr OperationRow rows[] = {
    {"insert_steps", insert_steps},
    {"insert_columns", insert_columns},
    {"delete_steps", delete_steps},
    {"delete_columns", delete_columns},
    {"press", press},
    {"text", text},
};

}  // namespace

std::span<const OperationRow> placing_operations() {
  return rows;
}

}  // namespace evencount::project
