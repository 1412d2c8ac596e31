#include "weave/lattice.hpp"

#include <cstdlib>

namespace evencount::weave {

Site Lattice::site(Cell cell) const {
  switch (holes) {
    case Holes::across:
      return {{2 * cell.column, along_halves(cell)}, Axis::across};
    case Holes::along:
      return {{2 * cell.column, along_halves(cell)}, Axis::along};
    case Holes::round_squares:
      return {{cell.column, cell.step}, cell.step % 2 == 0 ? Axis::across : Axis::along};
  }
  return {};
}

double overhang(const Lattice& lattice) {
  return lattice.drop > 0 && lattice.columns > lattice.drop ? 0.5 : 0.0;
}

Spot exit_of(const Site& site, Travel travel) {
  Spot mouth = site.middle;
  switch (travel) {
    case Travel::left: --mouth.across; break;
    case Travel::right: ++mouth.across; break;
    case Travel::forth: ++mouth.along; break;
    case Travel::back: --mouth.along; break;
  }
  return mouth;
}

Spot apart(const Lattice& lattice, Spot from, Spot to, bool edge_round) {
  Spot way{to.across - from.across, to.along - from.along};
  if (lattice.round) {
    const int turn = lattice.turn();
    while (2 * way.across > turn) {
      way.across -= turn;
      way.along += lattice.rise;
    }
    while (2 * way.across <= -turn) {
      way.across += turn;
      way.along -= lattice.rise;
    }
  }
  if (edge_round) {
    const int length = 2 * lattice.edge;
    while (2 * way.along > length) way.along -= length;
    while (2 * way.along <= -length) way.along += length;
  }
  return way;
}

}  // namespace evencount::weave
