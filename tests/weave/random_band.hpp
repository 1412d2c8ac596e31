#pragma once
/// Seeded bands for the properties of plans.

#include <random>

#include "weave/technique.hpp"

namespace evencount::weave::testing_support {

using Random = std::mt19937;

inline int pick(Random& random, int low, int high) {
  return low + static_cast<int>(random() % static_cast<unsigned>(high - low + 1));
}

/// A chart with a random bead, of so many kinds, in every cell that can hold one.
inline chart::Chart filled_chart(Random& random, const Lattice& lattice, int kinds = 5) {
  auto chart = chart::Chart::make(lattice.columns, lattice.edge, chart::no_bead).value();
  for (int step = 0; step < lattice.edge; ++step)
    for (int column = 0; column < lattice.columns; ++column)
      if (lattice.holds_bead({column, step}))
        chart.set({column, step}, static_cast<Bead>(pick(random, 0, kinds - 1)));
  return chart;
}

struct Band {
  chart::Chart chart;
  Closure closure = Closure::open;
};

/// Odd and even counts, open and zipped, sometimes without the last row.
inline Band random_band(Random& random, int most_columns, int most_edge) {
  const int columns = pick(random, 2, most_columns), edge = pick(random, 1, most_edge);
  Band band{chart::Chart::make(columns, edge).value()};
  const bool odd_rows = edge > 1 && pick(random, 0, 3) == 0;
  if (!odd_rows && edge >= 3 && pick(random, 0, 1) == 0) band.closure = Closure::zip;
  for (int step = 0; step < edge; ++step) {
    for (int column = 0; column < columns; ++column) {
      const bool empty = odd_rows && step == edge - 1 && column % 2 == 1;
      band.chart.set({column, step}, empty ? chart::no_bead : static_cast<Bead>(pick(random, 0, 4)));
    }
  }
  return band;
}

inline Plan plan_of(const Band& band) {
  return make_plan(flat_peyote_for(band.chart.columns()).id, band.chart, {band.closure}).value();
}

}  // namespace evencount::weave::testing_support
