#pragma once
/// Beaded pictures to finish: crops of the pictures of tests/cases/picture, and random ones under rules.

#include <algorithm>
#include <map>

#include "oracle/choice_oracle.hpp"
#include "picture/cell_lattice.hpp"
#include "picture/sample.hpp"
#include "pictures.hpp"
#include "support/sanitized.hpp"

namespace evencount::picture {

struct Beaded {
  CellLattice lattice;
  std::vector<colour::Rgb> cells;
  std::vector<StockColour> stock;
  StockChoice choice;
};

/// A picture of tests/cases/picture with the best 12 of its stock.
inline Beaded load_beaded(const std::string& picture, int columns, int edge, chart::Grid grid) {
  const std::string cases = EVENCOUNT_CASES_DIR "/picture/";
  Beaded beaded{.lattice = {columns, edge, grid}};
  const std::string size = std::to_string(columns) + "x" + std::to_string(edge);
  beaded.cells = load_ppm(cases + picture + "." + size + ".ppm");
  beaded.stock = load_stock(cases + "stock2000.txt");
  beaded.choice = choose_stock(beaded.cells, beaded.stock, 12).value();
  return beaded;
}

inline CellWindow random_window(Random& random, const CellLattice& lattice, int least) {
  CellWindow window{.columns = least + pick(random, lattice.columns - least + 1),
                    .steps = least + pick(random, lattice.edge - least + 1)};
  window.first.column = pick(random, lattice.columns - window.columns + 1);
  window.first.step = pick(random, lattice.edge - window.steps + 1);
  return window;
}

/// The numbers of a window's cells, step after step.
inline std::vector<std::size_t> cells_of(const CellWindow& window, const CellLattice& lattice) {
  std::vector<std::size_t> cells;
  for (int step = 0; step < window.steps; ++step)
    for (int column = 0; column < window.columns; ++column)
      cells.push_back(static_cast<std::size_t>((window.first.step + step) * lattice.columns +
                                               window.first.column + column));
  return cells;
}

/// A part of a picture as a picture of its own, with the whole's beads.
inline Beaded crop(const Beaded& whole, const CellWindow& window) {
  Beaded part{.lattice = whole.lattice, .stock = whole.stock};
  part.lattice.columns = window.columns, part.lattice.edge = window.steps;
  part.choice.chosen = whole.choice.chosen;
  for (const std::size_t cell : cells_of(window, whole.lattice)) {
    part.cells.push_back(whole.cells[cell]);
    part.choice.bead_of_cell.push_back(whole.choice.bead_of_cell[cell]);
  }
  return part;
}

/// A small random picture on a random lattice, with rules and limits, and beads that need not be the nearest.
inline Beaded random_beaded(Random& random, int most, int limited) {
  for (;;) {
    Beaded beaded{.lattice = {1 + pick(random, most),
                              1 + pick(random, most),
                              {pick(random, 3), pick(random, 2) == 0, pick(random, 2) == 0}}};
    const int cells = beaded.lattice.cells();
    beaded.cells = random_cells(random, cells);
    beaded.stock = random_stock(random, 8, 3, limited, cells);
    ChoiceOptions quick;
    quick.effort = {.prove = false, .swaps = 5, .dual_rounds = 5, .nodes = 0};
    const Result<StockChoice> choice = choose_stock(beaded.cells, beaded.stock, 2 + pick(random, 5), quick);
    if (!choice) continue;  // too few beads, or too many required
    beaded.choice = *choice;
    // Any exchange of two cells' beads leaves the limits kept.
    if (pick(random, 2) == 0)
      for (int times = 0; times < cells / 4; ++times)
        std::swap(beaded.choice.bead_of_cell[static_cast<std::size_t>(pick(random, cells))],
                  beaded.choice.bead_of_cell[static_cast<std::size_t>(pick(random, cells))]);
    return beaded;
  }
}

inline std::vector<colour::Rgb> charted(const Beaded& beaded, std::span<const int> bead_of_cell) {
  std::vector<colour::Rgb> colours;
  for (const int bead : bead_of_cell) colours.push_back(beaded.stock[static_cast<std::size_t>(bead)].colour);
  return colours;
}

inline double mean_of(const Beaded& beaded, std::span<const int> bead_of_cell) {
  double sum = 0;
  const auto colours = charted(beaded, bead_of_cell);
  for (std::size_t cell = 0; cell < colours.size(); ++cell)
    sum += oracle::difference(beaded.cells[cell], colours[cell]);
  return sum / static_cast<double>(colours.size());
}

/// Why an assignment breaks the rules, counted here; empty when it does not.
inline std::string broken_rule(const Beaded& beaded, std::span<const int> bead_of_cell) {
  std::map<int, int> before, after;
  for (const int bead : beaded.choice.bead_of_cell) ++before[bead];
  for (const int bead : bead_of_cell) ++after[bead];
  const std::vector<int>& chosen = beaded.choice.chosen;
  for (const auto& [bead, cells] : after) {
    const StockColour& one = beaded.stock[static_cast<std::size_t>(bead)];
    if (std::find(chosen.begin(), chosen.end(), bead) == chosen.end()) return "not chosen";
    if (one.at_most && cells > *one.at_most) return "over the limit";
  }
  for (const auto& [bead, cells] : before)
    if (beaded.stock[static_cast<std::size_t>(bead)].rule == StockRule::required && after[bead] == 0)
      return "a required bead is gone";
  if (bead_of_cell.size() != beaded.cells.size()) return "another number of cells";
  return "";
}

}  // namespace evencount::picture
