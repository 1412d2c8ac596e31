#include "project/picture_band.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "chart/letters.hpp"
#include "colour/difference.hpp"
#include "weave/technique.hpp"

namespace evencount::project {
namespace {

using picture::CellWindow;

/// The window's cells that hold a bead, step after step.
std::vector<chart::Cell> cells_with_beads(const chart::Chart& chart, const CellWindow& window) {
  std::vector<chart::Cell> cells;
  for (int step = window.first.step; step < window.first.step + window.steps; ++step)
    for (int column = 0; column < window.columns; ++column)
      if (chart.at({column, step}) != chart::no_bead) cells.push_back({column, step});
  return cells;
}

/// The grid of a band's cells. Errors: unknown_name; wrong_size (beads that do not fill the piece).
Result<chart::Grid> filled_grid(const Band& band) {
  const auto technique = weave::find_technique(band.technique);
  if (!technique) return technique.problem();
  const weave::Lattice lattice = technique->lattice(band.chart.columns(), band.chart.edge());
  if (lattice.holes == weave::Holes::round_squares)
    return Problem{ProblemCode::wrong_size, "technique", band.technique, "a technique whose beads fill the piece"};
  return weave::grid_of(lattice, band.closure);
}

Result<Done> check_window(const chart::Chart& chart, const CellWindow& window) {
  const auto& [first, columns, steps] = window;
  if (first.column == 0 && columns == chart.columns() && first.step >= 0 && steps >= 1 && steps <= chart.edge() - first.step)
    return Done{};
  return Problem{ProblemCode::wrong_size, "window",
                 fmt::format("columns {} to {}, steps {} to {}", first.column, first.column + columns - 1, first.step,
                             first.step + steps - 1),
                 fmt::format("all {} columns, within steps 0 to {}", chart.columns(), chart.edge() - 1)};
}

/// A part of a ring is not round.
chart::Grid grid_within(chart::Grid grid, const chart::Chart& chart, const CellWindow& window) {
  grid.edge_round = grid.edge_round && window.steps == chart.edge();
  return grid;
}

/// Mixes or smooths as asked, and gives the bead of each cell.
Result<std::vector<int>> finished(const CellWindow& window, const chart::Grid& grid, const bead::Gauge& gauge,
                                  std::span<const colour::Rgb> cells, std::span<const picture::StockColour> stock,
                                  const PictureOptions& options, PictureBand& made) {
  if (options.after == AfterChoice::nothing) return made.choice.bead_of_cell;
  const picture::CellLattice lattice{window.columns, window.steps, grid, gauge.edge / gauge.column};
  if (static_cast<int>(cells.size()) != lattice.cells())
    return Problem{ProblemCode::wrong_size, "window", fmt::format("{} empty cells", lattice.cells() - static_cast<int>(cells.size())),
                   "a window without empty cells, to mix or smooth it"};
  if (options.after == AfterChoice::mix) {
    auto mixed = picture::diffuse(lattice, cells, stock, made.choice, options.mixing);
    if (!mixed) return mixed.problem();
    made.mixed = std::move(*mixed);
    return made.mixed->bead_of_cell;
  }
  auto smoothed = picture::smooth(lattice, cells, stock, made.choice, options.smoothing);
  if (!smoothed) return smoothed.problem();
  made.smoothed = std::move(*smoothed);
  return made.smoothed->bead_of_cell;
}

/// The legend's place of an offered bead, added under the first free letter when it is new.
chart::Bead legend_place(std::vector<LegendEntry>& legend, const OfferedBead& offered, const std::string& bead) {
  const auto same = std::find_if(legend.begin(), legend.end(), [&](const LegendEntry& entry) {
    return entry.colour == offered.stock.colour && entry.bead == bead && entry.finish == offered.finish;
  });
  if (same != legend.end()) return static_cast<chart::Bead>(same - legend.begin());
  const auto taken = [&](const std::string& letter) {
    return std::any_of(legend.begin(), legend.end(), [&](const LegendEntry& entry) { return entry.letter == letter; });
  };
  int position = 0;
  while (taken(chart::letter_name(position))) ++position;
  LegendEntry entry;
  entry.letter = chart::letter_name(position);
  entry.name = offered.name;
  entry.colour = offered.stock.colour;
  entry.finish = offered.finish;
  entry.bead = bead;
  legend.push_back(std::move(entry));
  return static_cast<chart::Bead>(legend.size() - 1);
}

/// Where each chosen bead of the offer stands in the legend, the most used one added first.
std::vector<chart::Bead> legend_places(std::vector<LegendEntry>& legend, std::span<const OfferedBead> offer,
                                       const std::vector<int>& bead_of_cell, const std::string& bead) {
  std::vector<int> uses(offer.size(), 0), order(offer.size());
  for (const int one : bead_of_cell) ++uses[static_cast<std::size_t>(one)];
  std::iota(order.begin(), order.end(), 0);
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
    return uses[static_cast<std::size_t>(a)] > uses[static_cast<std::size_t>(b)];
  });
  std::vector<chart::Bead> place(offer.size(), 0);
  for (const int one : order) {
    const auto o = static_cast<std::size_t>(one);
    if (uses[o] > 0) place[o] = legend_place(legend, offer[o], bead);
  }
  return place;
}

/// Mean and 95th percentile of the differences, the percentile as StockChoice has it.
void measure(PictureBand& made, std::span<const colour::Rgb> cells, std::span<const picture::StockColour> stock,
             const std::vector<int>& bead_of_cell) {
  std::vector<double> differences;
  differences.reserve(cells.size());
  for (std::size_t i = 0; i < cells.size(); ++i)
    differences.push_back(colour::ciede2000(colour::to_lab_d65(cells[i]),
                                            colour::to_lab_d65(stock[static_cast<std::size_t>(bead_of_cell[i])].colour)));
  std::sort(differences.begin(), differences.end());
  made.mean = std::accumulate(differences.begin(), differences.end(), 0.0) / static_cast<double>(differences.size());
  const auto rank = static_cast<std::size_t>(std::ceil(0.95 * static_cast<double>(differences.size())));
  made.percentile_95 = differences[rank - 1];
}

}  // namespace

CellWindow whole_window(const chart::Chart& chart) {
  return {{0, 0}, chart.columns(), chart.edge()};
}

Result<CellWindow> face_window(const Project& project, const Band& band, form::Side side) {
  const FormEntry* around = band.form ? find_form(project, *band.form) : nullptr;
  const bead::Size* size = find_bead(project, band.bead);
  if (around == nullptr || size == nullptr || !weave::closes_round_edge(band.closure))
    return Problem{ProblemCode::missing_field, "band " + band.name, "no form that it is closed round", "one, to have faces"};
  const auto faces = form::faces(around->form, size->diameter, band.chart.edge());
  if (!faces) return faces.problem().within("band " + band.name);
  for (const form::Window& window : faces->windows)
    if (window.side == side) return CellWindow{{0, window.first_step}, band.chart.columns(), window.steps};
  return Problem{ProblemCode::unknown_name, "band " + band.name,
                 fmt::format("{} without room for a whole step", form::side_name(side)), "a larger form, or smaller beads"};
}

Result<std::vector<colour::Rgb>> picture_cells(const Project& project, const Band& band, const CellWindow& window,
                                               const picture::Image& image, const picture::Placement& placement) {
  if (const auto inside = check_window(band.chart, window); !inside) return inside.problem();
  const auto grid = filled_grid(band);
  if (!grid) return grid.problem();
  if (find_bead(project, band.bead) == nullptr)
    return Problem{ProblemCode::unknown_name, "bead", band.bead, "one of the project's beads"};
  picture::Placement placed = placement;
  const chart::Grid within = grid_within(*grid, band.chart, window);
  placed.meets_itself = within.edge_round;
  const auto light = picture::sample(image, window, within, gauge_of(project, band), placed);
  if (!light) return light.problem();
  const std::vector<colour::Rgb> all = picture::to_rgb(*light);
  std::vector<colour::Rgb> cells;
  for (const chart::Cell cell : cells_with_beads(band.chart, window))
    cells.push_back(all[static_cast<std::size_t>((cell.step - window.first.step) * window.columns + cell.column)]);
  return cells;
}

Result<PictureBand> picture_band(const Project& project, const Band& band, const CellWindow& window,
                                 const picture::Image& image, std::span<const OfferedBead> offer,
                                 const PictureOptions& options) {
  const auto cells = picture_cells(project, band, window, image, options.placement);
  if (!cells) return cells.problem();
  std::vector<picture::StockColour> stock;
  for (const OfferedBead& offered : offer) stock.push_back(offered.stock);
  auto choice = picture::choose_stock(*cells, stock, options.colours, options.choice);
  if (!choice) return choice.problem();

  PictureBand made{.band = band, .legend = project.legend, .choice = std::move(*choice)};
  const chart::Grid grid = grid_within(*filled_grid(band), band.chart, window);
  const auto beads = finished(window, grid, gauge_of(project, band), *cells, stock, options, made);
  if (!beads) return beads.problem();
  measure(made, *cells, stock, *beads);
  const auto place = legend_places(made.legend, offer, *beads, band.bead);
  if (made.legend.size() > most_legend_entries)
    return Problem{ProblemCode::out_of_range, "legend", fmt::format("{} beads", made.legend.size()),
                   fmt::format("at most {} in one project", most_legend_entries)};
  const std::vector<chart::Cell> where = cells_with_beads(band.chart, window);
  for (std::size_t i = 0; i < where.size(); ++i) made.band.chart.set(where[i], place[static_cast<std::size_t>((*beads)[i])]);
  if (const auto plan = plan_of(made.band); !plan) return plan.problem();
  return made;
}

Project with_band(Project project, PictureBand made) {
  project.legend = std::move(made.legend);
  const auto same = std::find_if(project.bands.begin(), project.bands.end(),
                                 [&](const Band& band) { return band.name == made.band.name; });
  if (same != project.bands.end())
    *same = std::move(made.band);
  else
    project.bands.push_back(std::move(made.band));
  return project;
}

}  // namespace evencount::project
