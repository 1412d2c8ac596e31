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

Box box_of(const Lattice& lattice, Cell cell) {
  if (lattice.holes != Holes::round_squares) return {1.0 * cell.column, lattice.along_halves(cell) / 2.0, 1, 1};
  const bool across = cell.step % 2 == 0;
  constexpr double half = side_thickness / 2, long_side = 1 - side_thickness;
  const double width = across ? long_side : side_thickness, height = across ? side_thickness : long_side;
  return {half + cell.column / 2.0 - width / 2, half + cell.step / 2.0 - height / 2, width, height};
}

double pitches(const Lattice& lattice, int cells) {
  return lattice.holes == Holes::round_squares ? cells / 2.0 : 1.0 * cells;
}

Box extent(const Lattice& lattice) {
  if (lattice.holes == Holes::round_squares)
    return {0, 0, (lattice.columns - 1) / 2.0 + side_thickness, (lattice.edge - 1) / 2.0 + side_thickness};
  const double overhang = lattice.drop > 0 && lattice.columns > lattice.drop ? 0.5 : 0.0;
  return {0, 0, 1.0 * lattice.columns, lattice.edge + overhang};
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
