#include "picture/cell_lattice.hpp"

#include <fmt/format.h>

namespace evencount::picture {

int CellLattice::cell_at(int column, int along_halves) const {
  const int halves = 2 * edge;
  if (grid.columns_round) column = (column % columns + columns) % columns;
  if (column < 0 || column >= columns) return -1;
  int past = along_halves - grid.shift_of(column);
  if (grid.edge_round) past = (past % halves + halves) % halves;
  if (past < 0 || past % 2 != 0 || past / 2 >= edge) return -1;
  return past / 2 * columns + column;
}

Result<Done> check_lattice(const CellLattice& lattice) {
  if (Result<chart::Chart> chart = chart::Chart::make(lattice.columns, lattice.edge); !chart)
    return chart.problem().within("lattice");
  if (lattice.grid.drop < 0)
    return Problem{ProblemCode::out_of_range, "lattice: drop", fmt::format("{}", lattice.grid.drop),
                   "0 or more"};
  if (!(lattice.step_length >= 0.25 && lattice.step_length <= 4))
    return Problem{ProblemCode::out_of_range, "lattice: step length", fmt::format("{}", lattice.step_length),
                   "0.25 to 4 widths of a column"};
  return Done{};
}

Neighbours::Neighbours(const CellLattice& lattice) {
  const chart::Chart chart = chart::Chart::make(lattice.columns, lattice.edge).value();
  start.push_back(0);
  for (int step = 0; step < lattice.edge; ++step)
    for (int column = 0; column < lattice.columns; ++column) {
      for (const chart::Cell cell : chart::neighbours(chart, lattice.grid, {column, step}))
        touching.push_back(cell.step * lattice.columns + cell.column);
      start.push_back(touching.size());
    }
}

}  // namespace evencount::picture
