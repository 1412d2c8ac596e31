#include <algorithm>
#include <functional>

#include "base/text.hpp"
#include "project/operation_reader.hpp"
#include "weave/technique.hpp"

namespace evencount::project {
namespace {

using chart::Bead;
using chart::Cell;
using chart::Chart;
using chart::Edit;
using chart::Grid;
using chart::Stretch;
using chart::Symmetry;

/// A stroke on a chart of this grid.
using Stroke = std::function<Result<Edit>(const Chart& chart, const Grid& grid)>;

Result<weave::Lattice> lattice_of(const Band& band) {
  const auto technique = weave::find_technique(band.technique);
  if (!technique) return technique.problem();
  return technique->lattice(band.chart.columns(), band.chart.edge());
}

/// The symmetries to draw in as well: two of them bring the third, their product.
std::vector<Symmetry> all_of(std::vector<Symmetry> asked) {
  std::sort(asked.begin(), asked.end());
  asked.erase(std::unique(asked.begin(), asked.end()), asked.end());
  if (asked.size() == 2) asked = {Symmetry::mirror_across, Symmetry::mirror_along, Symmetry::half_turn};
  return asked;
}

/// The stroke, and the stroke as it is seen in each symmetry.
Result<Chart> drawn(const Chart& chart, const Grid& grid, const std::vector<Symmetry>& symmetries,
                    const Stroke& stroke) {
  auto first = stroke(chart, grid);
  if (!first) return first.problem();
  Chart now = std::move(first->chart);
  for (const Symmetry symmetry : all_of(symmetries)) {
    const auto seen = chart::apply(now, grid, symmetry);
    if (!seen) return seen.problem();
    const auto edit = stroke(seen->chart, grid);
    if (!edit) return edit.problem();
    auto back = chart::apply(edit->chart, grid, symmetry);
    if (!back) return back.problem();
    now = std::move(back->chart);
  }
  return now;
}

int changed_cells(const Chart& before, const Chart& after) {
  const auto old = before.cells(), now = after.cells();
  int count = 0;
  for (std::size_t i = 0; i < old.size(); ++i) count += old[i] != now[i];
  return count;
}

/// Draws on a band. `sentence` gets how many beads changed.
template <typename Sentence>
Result<Applied> draw(const Project& project, OperationReader& reader, int band, const Stroke& stroke,
                     Sentence sentence) {
  const std::vector<Symmetry> mirror = reader.mirror();
  if (!reader.finish()) return reader.problem();
  Applied applied{project, {}};
  Band& changed = applied.project.bands[static_cast<std::size_t>(band)];
  const auto lattice = lattice_of(changed);
  if (!lattice) return lattice.problem();
  auto chart = drawn(changed.chart, weave::grid_of(*lattice, changed.closure), mirror, stroke);
  if (!chart) return chart.problem();
  applied.sentence = sentence(counted(changed_cells(changed.chart, *chart), "bead")) + on_band(project, band);
  changed.chart = std::move(*chart);
  return applied;
}

Result<Applied> set_cells(const Project& project, OperationReader& reader) {
  const int band = reader.band();
  const std::vector<Cell> cells = reader.cells("cells");
  const Bead bead = reader.letter_or_empty("letter");
  if (reader.report().failed()) return reader.problem();
  const auto lattice = lattice_of(project.bands[static_cast<std::size_t>(band)]);
  if (!lattice) return lattice.problem();
  const auto stroke = [&](const Chart& chart, const Grid&) -> Result<Edit> {
    Edit edit{chart, {}, {}};
    for (const Cell cell : cells) {
      if (!chart.contains(cell) || !lattice->holds_bead(cell))
        return Problem{ProblemCode::out_of_range, "/cells",
                       fmt::format("column {}, step {}", cell.column, cell.step), "a cell of the band"};
      edit.chart.set(cell, bead);
    }
    return edit;
  };
  return draw(project, reader, band, stroke, [&](const std::string& beads) {
    return bead == chart::no_bead ? "took " + beads + " out"
                                  : fmt::format("drew {} of {}", beads, letter_name(project, bead));
  });
}

/// The figures between two cells.
using Figure = Result<Edit> (*)(const Chart& chart, const Grid& grid, Stretch stretch, Bead bead,
                                bool filled);

Result<Applied> draw_figure(const Project& project, OperationReader& reader, std::string_view name,
                            Figure figure) {
  const int band = reader.band();
  const Stretch stretch{reader.cell("from"), reader.cell("to")};
  const Bead bead = reader.letter("letter");
  const bool filled = name != "line" && reader.flag("filled");
  const auto stroke = [&](const Chart& chart, const Grid& grid) {
    return figure(chart, grid, stretch, bead, filled);
  };
  return draw(project, reader, band, stroke, [&](const std::string& beads) {
    return fmt::format("drew a{} {}{} with {} ({})", name == "ellipse" && !filled ? "n" : "",
                       filled ? "filled " : "", name, letter_name(project, bead), beads);
  });
}

Result<Applied> line(const Project& project, OperationReader& reader) {
  return draw_figure(project, reader, "line",
                     [](const Chart& chart, const Grid& grid, Stretch stretch, Bead bead, bool) {
                       return chart::draw_line(chart, grid, stretch, bead);
                     });
}

Result<Applied> rectangle(const Project& project, OperationReader& reader) {
  return draw_figure(project, reader, "rectangle", &chart::draw_rectangle);
}

Result<Applied> ellipse(const Project& project, OperationReader& reader) {
  return draw_figure(project, reader, "ellipse", &chart::draw_ellipse);
}

Result<Applied> fill(const Project& project, OperationReader& reader) {
  const int band = reader.band();
  const Cell at = reader.cell("at");
  const Bead bead = reader.letter("letter");
  const auto stroke = [&](const Chart& chart, const Grid& grid) {
    return chart::flood_fill(chart, grid, at, bead);
  };
  return draw(project, reader, band, stroke, [&](const std::string& beads) {
    return fmt::format("filled {} with {}", beads, letter_name(project, bead));
  });
}

Result<Applied> replace_letter(const Project& project, OperationReader& reader) {
  const Bead from = reader.letter("from"), to = reader.letter("to");
  const std::optional<int> only = reader.has("band") ? std::optional(reader.band()) : std::nullopt;
  if (!reader.finish()) return reader.problem();
  Applied applied{project, {}};
  int count = 0;
  for (std::size_t i = 0; i < project.bands.size(); ++i) {
    if (only && static_cast<std::size_t>(*only) != i) continue;
    auto edit = chart::replace_bead(project.bands[i].chart, from, to);
    count += changed_cells(project.bands[i].chart, edit.chart);
    applied.project.bands[i].chart = std::move(edit.chart);
  }
  applied.sentence =
      fmt::format("replaced {} of {} by {}{}", counted(count, "bead"), letter_name(project, from),
                  letter_name(project, to), only ? on_band(project, *only) : "");
  return applied;
}

Result<Applied> stamp(const Project& project, OperationReader& reader) {
  const int band = reader.band(), from_band = reader.band("from_band");
  const Cell at = reader.cell("at");
  const Stretch stretch{reader.cell("from"), reader.cell("to")};
  const std::optional<Bead> leave = reader.letter_if("leave");
  if (reader.report().failed()) return reader.problem();
  const Band& source = project.bands[static_cast<std::size_t>(from_band)];
  const auto from = lattice_of(source), to = lattice_of(project.bands[static_cast<std::size_t>(band)]);
  if (!from) return from.problem();
  if (!to) return to.problem();
  const Grid grid = weave::grid_of(*from, source.closure);
  if (from->drop != to->drop)
    return Problem{ProblemCode::wrong_size, "/from_band", quote(source.name),
                   "a band whose columns are shifted in the same way"};
  const auto piece = chart::copy(source.chart, grid, stretch, leave);
  if (!piece) return piece.problem();
  const auto stroke = [&](const Chart& chart, const Grid& onto) {
    return chart::press(chart, onto, *piece, at);
  };
  return draw(project, reader, band, stroke, [&](const std::string& beads) {
    return fmt::format("stamped a piece{} ({})",
                       from_band == band || source.name.empty() ? "" : " of " + source.name, beads);
  });
}

Result<Applied> repeat(const Project& project, OperationReader& reader) {
  const int band = reader.band();
  const Stretch stretch{reader.cell("from"), reader.cell("to")};
  const auto stroke = [&](const Chart& chart, const Grid& grid) {
    return chart::repeat(chart, grid, stretch);
  };
  return draw(project, reader, band, stroke, [](const std::string& beads) {
    return "repeated a piece over the whole band (" + beads + ")";
  });
}

Result<Applied> flip(const Project& project, OperationReader& reader) {
  const int band = reader.band();
  const std::string name = reader.text("symmetry");
  const auto symmetry = name == "mirror_across"  ? Symmetry::mirror_across
                        : name == "mirror_along" ? Symmetry::mirror_along
                                                 : Symmetry::half_turn;
  if (name != "mirror_across" && name != "mirror_along" && name != "half_turn")
    reader.refuse(ProblemCode::unknown_name, "symmetry", quote(name),
                  "mirror_across, mirror_along or half_turn");
  const auto stroke = [&](const Chart& chart, const Grid& grid) {
    return chart::apply(chart, grid, symmetry);
  };
  return draw(project, reader, band, stroke, [&](const std::string&) -> std::string {
    return symmetry == Symmetry::half_turn
               ? "turned the drawing by half a turn"
               : fmt::format("mirrored the drawing {}", name == "mirror_across" ? "across" : "along");
  });
}

Result<Applied> shift(const Project& project, OperationReader& reader) {
  const int band = reader.band();
  const auto steps = reader.whole_if("steps", -chart::most_edge, chart::most_edge);
  const auto columns = reader.whole_if("columns", -chart::most_columns, chart::most_columns);
  if (steps.has_value() == columns.has_value())
    reader.refuse(ProblemCode::missing_field, "steps", "none or two ways to shift", "steps or columns");
  const auto stroke = [&](const Chart& chart, const Grid& grid) {
    return steps ? chart::shift_steps(chart, grid, *steps)
                 : chart::shift_columns(chart, grid, columns.value_or(0));
  };
  return draw(project, reader, band, stroke, [&](const std::string&) {
    return "moved the drawing by " +
           (steps ? counted(*steps, "step") : counted(columns.value_or(0), "column"));
  });
}

constexpr OperationRow rows[] = {
    {"set", set_cells},   {"line", line},   {"rectangle", rectangle},
    {"ellipse", ellipse}, {"fill", fill},   {"replace_letter", replace_letter},
    {"flip", flip},       {"shift", shift}, {"stamp", stamp},
    {"repeat", repeat},
};

}  // namespace

std::span<const OperationRow> drawing_operations() {
  return rows;
}

}  // namespace evencount::project
