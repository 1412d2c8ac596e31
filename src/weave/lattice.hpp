#pragma once
/// Where the beads of a piece lie: which way their holes run, and how far apart they are in half pitches.
///
/// A lattice knows nothing of thread. Positions in millimetres come from it and the gauge: `across` counts half column
/// pitches, `along` half edge pitches. A bead reaches one half pitch from its middle to each mouth of its hole, so that the
/// mouths of beads that follow each other through their holes coincide.

#include <cstdint>
#include <optional>

#include "chart/chart.hpp"

namespace evencount::weave {

using chart::Bead;
using chart::Cell;

/// Which way the needle travels through a bead. Column 0 lies on the left, step 0 at the near end.
enum class Travel : std::uint8_t {
  left,
  right,
  forth,  ///< towards higher steps
  back,   ///< towards lower steps
};

[[nodiscard]] constexpr Travel opposite(Travel travel) {
  switch (travel) {
    case Travel::left: return Travel::right;
    case Travel::right: return Travel::left;
    case Travel::forth: return Travel::back;
    case Travel::back: return Travel::forth;
  }
  return travel;
}

/// The way a hole runs.
enum class Axis : std::uint8_t { across, along };

[[nodiscard]] constexpr Axis axis_of(Travel travel) {
  return travel == Travel::left || travel == Travel::right ? Axis::across : Axis::along;
}

/// A point of the lattice, in half pitches.
struct Spot {
  int across = 0;
  int along = 0;
  bool operator==(const Spot&) const = default;
};

/// A bead's place.
struct Site {
  Spot middle;
  Axis axis = Axis::across;
  bool operator==(const Site&) const = default;
};

/// How the holes of a piece lie.
enum class Holes : std::uint8_t {
  across,        ///< all across the piece: peyote, brick, square stitch, loom
  along,         ///< all along it: herringbone
  round_squares  ///< in squares of four that share their sides: right-angle weave. Odd columns of even steps run across, even
                 ///< columns of odd steps along; the other cells are the squares' middles and corners and hold no bead
};

/// Property: site(c) differs from site(d) for different cells c, d that can hold a bead.
struct Lattice {
  int columns = 0;
  int edge = 0;
  /// Columns that are shifted together by half a step: every second group of so many lies half a bead further on.
  /// 1 for peyote and brick, 2 for two-drop, 0 where nothing is shifted.
  int drop = 1;
  Holes holes = Holes::across;
  bool round = false;  ///< a tube or ring: past the last column comes column 0 again
  int rise = 0;        ///< half steps that a round has risen when it comes to column 0 again: 1 for odd-count tubes
  bool operator==(const Lattice&) const = default;

  /// How far along the edge a cell lies, in half steps.
  [[nodiscard]] int along_halves(Cell cell) const {
    return 2 * cell.step + (drop == 0 ? 0 : (cell.column / drop) % 2);
  }

  /// Whether a bead can lie there.
  [[nodiscard]] bool holds_bead(Cell cell) const {
    return holes != Holes::round_squares || (cell.column + cell.step) % 2 == 1;
  }

  [[nodiscard]] Site site(Cell cell) const;

  /// Half pitches from the middle of column 0 to its middle again, once round; for round lattices.
  [[nodiscard]] int turn() const { return 2 * columns; }
};

/// A box in pitches: `across` counts columns, `along` beads along the edge; (0, 0) is the piece's corner at column 0 and step 0.
struct Box {
  double across = 0, along = 0;  ///< its near corner
  double width = 0, height = 0;
  bool operator==(const Box&) const = default;
};

/// The room of a cell in the flat piece: one pitch each way, or in right-angle weave a side of a square, `side_thickness` thick.
/// Property: the boxes of different cells that can hold a bead do not overlap.
[[nodiscard]] Box box_of(const Lattice& lattice, Cell cell);
inline constexpr double side_thickness = 0.3;  ///< of a unit; to look at only, from memory

/// The pitches that so many columns or steps take: half as many in right-angle weave, whose cells are half units.
[[nodiscard]] double pitches(const Lattice& lattice, int cells);

/// The whole flat piece, in pitches; half a bead longer than its steps where columns are shifted.
[[nodiscard]] Box extent(const Lattice& lattice);

/// The mouth of a bead's hole through which a needle leaves that travels this way; it enters through `exit_of` of the opposite.
[[nodiscard]] Spot exit_of(const Site& site, Travel travel);

/// How far it is from `from` to `to`. On a round lattice the way round is taken that is shorter across; `edge_round` does the same
/// along the edge, for a band whose ends meet.
[[nodiscard]] Spot apart(const Lattice& lattice, Spot from, Spot to, bool edge_round = false);

}  // namespace evencount::weave
