#include "project/neighbours.hpp"

#include <algorithm>

#include "weave/technique.hpp"

namespace evencount::project {

Neighbours::Neighbours(const Project& project)
    : entries_(project.legend.size()), pairs_(entries_ * entries_, false) {
  for (const Band& band : project.bands)
    if (const auto technique = weave::find_technique(band.technique))
      add(band.chart, technique->lattice(band.chart.columns(), band.chart.edge()));
}

bool Neighbours::meet(std::size_t a, std::size_t b) const {
  return pairs_[std::min(a, b) * entries_ + std::max(a, b)];
}

void Neighbours::add(const chart::Chart& chart, const weave::Lattice& lattice) {
  const bool units = lattice.holes == weave::Holes::round_squares;
  for (int step = 0; step < chart.edge(); ++step)
    for (int column = 0; column < chart.columns(); ++column) {
      const chart::Bead bead = chart.at({column, step});
      const auto add_if_any = [&](chart::Cell beside) {
        if (chart.contains(beside)) add(bead, chart.at(beside));
      };
      add_if_any({column, step + 1});
      add_if_any({column + 1, step});
      // The next column lies half a bead further on or back; round a unit the beads meet at its corners.
      const int shift = lattice.along_halves({column + 1, 0}) - lattice.along_halves({column, 0});
      if (shift > 0 || units) add_if_any({column + 1, step - 1});
      if (shift < 0 || units) add_if_any({column + 1, step + 1});
    }
}

void Neighbours::add(chart::Bead a, chart::Bead b) {
  if (a < entries_ && b < entries_) pairs_[std::min(a, b) * entries_ + std::max(a, b)] = true;
}

}  // namespace evencount::project
