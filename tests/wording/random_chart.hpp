#pragma once
/// Seeded charts for the properties of the words.

#include <random>
#include <string>
#include <vector>

#include "chart/chart.hpp"
#include "chart/letters.hpp"

namespace evencount::wording::testing_support {

using Random = std::mt19937;

/// The same on every compiler, unlike std::uniform_int_distribution.
inline int pick(Random& random, int low, int high) {
  return low + static_cast<int>(random() % static_cast<unsigned>(high - low + 1));
}

inline std::vector<std::string> legend_of(int beads) {
  std::vector<std::string> letters;
  for (int i = 0; i < beads; ++i) letters.push_back(chart::letter_name(i));
  return letters;
}

struct RandomChart {
  chart::Chart chart;
  int beads = 1;
};

/// A chart that can be planned: runs of random length, perhaps without the last row.
inline RandomChart random_chart(Random& random, int most_columns, int most_edge, int most_beads) {
  const int columns = pick(random, 2, most_columns), edge = pick(random, 1, most_edge);
  RandomChart made{chart::Chart::make(columns, edge).value(), pick(random, 1, most_beads)};
  const bool odd_rows = edge > 1 && pick(random, 0, 3) == 0;
  const int sameness = pick(random, 0, 9);
  chart::Bead bead = 0;
  for (int step = 0; step < edge; ++step) {
    for (int column = 0; column < columns; ++column) {
      if (pick(random, 0, 9) >= sameness) bead = static_cast<chart::Bead>(pick(random, 0, made.beads - 1));
      const bool left_out = odd_rows && step == edge - 1 && column % 2 == 1;
      made.chart.set({column, step}, left_out ? chart::no_bead : bead);
    }
  }
  return made;
}

}  // namespace evencount::wording::testing_support
