#include "weave/unrolled.hpp"

namespace evencount::weave {
namespace {

int floor_divide(int a, int b) {
  return a / b - (a % b < 0 ? 1 : 0);
}

int modulo(int a, int b) {
  return a - b * floor_divide(a, b);
}

/// How far an unrolled column is shifted along, in half steps.
int shift_of(const Lattice& lattice, int column) {
  return lattice.drop == 0 ? 0 : modulo(floor_divide(column, lattice.drop), 2);
}

}  // namespace

Cell unrolled_cell(const Lattice& lattice, Spot middle) {
  if (lattice.holes == Holes::round_squares) return {middle.across, middle.along};
  const int column = floor_divide(middle.across, 2);
  return {column, floor_divide(middle.along - shift_of(lattice, column), 2)};
}

Spot middle_of(const Lattice& lattice, Cell unrolled) {
  if (lattice.holes == Holes::round_squares) return {unrolled.column, unrolled.step};
  return {2 * unrolled.column, 2 * unrolled.step + shift_of(lattice, unrolled.column)};
}

std::optional<Cell> shown_cell(const Lattice& lattice, Cell unrolled, bool at_seam) {
  Spot middle = middle_of(lattice, unrolled);
  Cell cell = unrolled;
  if (lattice.round) {
    const int turns = floor_divide(unrolled.column, lattice.columns);
    cell.column -= turns * lattice.columns;
    middle.along += turns * lattice.rise;
    const int halves = middle.along - shift_of(lattice, cell.column);
    if (modulo(halves, 2) != 0) return std::nullopt;
    cell.step = floor_divide(halves, 2);
  }
  if (at_seam && cell.step >= lattice.edge) cell.step -= lattice.edge;
  const bool inside =
      cell.column >= 0 && cell.column < lattice.columns && cell.step >= 0 && cell.step < lattice.edge;
  if (!inside || !lattice.holds_bead(cell)) return std::nullopt;
  return cell;
}

std::vector<Visit> visits(const Plan& plan, std::size_t first, std::size_t end, bool at_seam) {
  const Lattice& lattice = plan.lattice;
  std::vector<Visit> all;
  Spot left_at;
  for (std::size_t i = first; i < end && i < plan.stitches.size(); ++i) {
    const Stitch& stitch = plan.stitches[i];
    if (!goes_through(stitch.act)) continue;
    const Site site = lattice.site(stitch.cell);
    Spot middle = site.middle;
    if (lattice.round && !all.empty()) {
      const Spot mouth = exit_of(site, opposite(stitch.travel)), way = apart(lattice, left_at, mouth);
      middle.across += left_at.across + way.across - mouth.across;
      middle.along += left_at.along + way.along - mouth.along;
    }
    if (at_seam && stitch.cell.step < lattice.edge / 2) middle.along += 2 * lattice.edge;
    left_at = exit_of({middle, site.axis}, stitch.travel);
    all.push_back({i, stitch.cell, middle, stitch.travel});
  }
  return all;
}

}  // namespace evencount::weave
