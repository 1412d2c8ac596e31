#pragma once
/// How a chart looks at viewing distance, by the sum over all pairs of cells: slow, and sharing nothing with src/picture/viewing.cpp.

#include <cmath>
#include <vector>

#include "colour/srgb.hpp"
#include "picture/cell_lattice.hpp"

namespace evencount::picture::oracle {

/// Where a cell's middle lies, in sides of a square as large as a cell.
struct Middle {
  double across, along;
};

inline Middle middle_of(const CellLattice& lattice, int column, int step) {
  const bool shifted = lattice.grid.drop > 0 && column / lattice.grid.drop % 2 == 1;
  const double side = std::sqrt(lattice.step_length);  // in widths of a column
  return {column / side, (step + (shifted ? 0.5 : 0.0)) * lattice.step_length / side};
}

/// The weight of one cell in the look of another: of all its images, where the lattice goes round.
inline double weight(const CellLattice& lattice, int cell, int other) {
  const auto [across, along] = middle_of(lattice, cell % lattice.columns, cell / lattice.columns);
  const auto [other_across, other_along] =
      middle_of(lattice, other % lattice.columns, other / lattice.columns);
  const double round_across = lattice.columns / std::sqrt(lattice.step_length),
               round_along = lattice.edge * std::sqrt(lattice.step_length);
  const int across_images = lattice.grid.columns_round ? 20 : 0,
            along_images = lattice.grid.edge_round ? 20 : 0;
  double sum = 0;
  for (int i = -across_images; i <= across_images; ++i)
    for (int j = -along_images; j <= along_images; ++j) {
      const double x = other_across + i * round_across - across, y = other_along + j * round_along - along;
      const double square = x * x + y * y;
      if (square <= 9 + 1e-9) sum += std::exp(-square / 2);
    }
  return sum;
}

inline std::vector<colour::Linear> blurred(const CellLattice& lattice,
                                           const std::vector<colour::Linear>& light) {
  std::vector<colour::Linear> seen;
  for (int cell = 0; cell < lattice.cells(); ++cell) {
    colour::Linear sum;
    double weights = 0;
    for (int other = 0; other < lattice.cells(); ++other) {
      const double w = weight(lattice, cell, other);
      const colour::Linear& one = light[static_cast<std::size_t>(other)];
      sum.red += w * one.red, sum.green += w * one.green, sum.blue += w * one.blue;
      weights += w;
    }
    seen.push_back({sum.red / weights, sum.green / weights, sum.blue / weights});
  }
  return seen;
}

}  // namespace evencount::picture::oracle
