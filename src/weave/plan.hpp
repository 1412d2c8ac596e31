#pragma once
/// The plan: the ordered list of what the needle does.
///
/// Words, thread, counts, diagrams and pictures are all read off the plan. It is plain data; `replay` follows
/// it bead by bead without knowing how it was made.

#include <cstdint>
#include <string>
#include <vector>

#include "chart/chart.hpp"

namespace evencount::weave {

using chart::Bead;
using chart::Cell;

/// Which way the needle travels across the band. Column 0 lies on the left.
enum class Travel : std::uint8_t { left, right };

[[nodiscard]] constexpr Travel opposite(Travel travel) {
  return travel == Travel::left ? Travel::right : Travel::left;
}

/// What the needle does in one stitch.
enum class Act : std::uint8_t {
  start,    ///< begin a thread
  pick_up,  ///< string a bead, which takes its place in `cell`
  pass,     ///< go through the bead of `cell`, which is stitched already
  turn,     ///< come back: the next stitch travels the other way
  join,     ///< go through the bead of `cell` across the seam, drawing the two ends together
  finish,   ///< end the thread
};

/// How the needle comes back.
enum class Turn : std::uint8_t {
  edge,    ///< round the edge, into the next bead of the same column
  inside,  ///< within the fabric, into the next bead of the same column (part of a figure-8)
  loop,    ///< round the thread that lies along the edge, back into the same bead
};

struct Stitch {
  Act act = Act::pass;
  Travel travel =
      Travel::right;  ///< pick_up, pass, join: the direction through the bead; turn: the direction after it
  Turn turn = Turn::edge;      ///< for a turn
  Bead bead = chart::no_bead;  ///< for a pick_up
  Cell cell;                   ///< for pick_up, pass, join
  bool operator==(const Stitch&) const = default;
};

/// How the two ends of a band meet.
enum class Closure : std::uint8_t { open, zip };

[[nodiscard]] std::string_view closure_name(Closure closure);
/// Errors: unknown_name.
[[nodiscard]] Result<Closure> parse_closure(std::string_view name);

enum class RowKind : std::uint8_t { row, zip };

/// A stretch of stitches with a name in the words. Rows 1 and 2 of peyote are one stretch: they are strung
/// together.
struct Row {
  RowKind kind = RowKind::row;
  int first_number =
      1;  ///< the number printed; first_number < last_number only where rows are worked together
  int last_number = 1;
  Travel travel = Travel::right;
  std::size_t first_stitch = 0;  ///< in Plan::stitches
  std::size_t end_stitch = 0;    ///< one past the last
  bool operator==(const Row&) const = default;
};

/// "rows 1-2", "row 14", "zip".
[[nodiscard]] std::string row_name(const Row& row);

/// Where the beads of a band lie: columns one pitch apart, steps one pitch apart, odd columns `odd_shift` of
/// a step further. In a ring step `edge` is step 0 again.
struct Lattice {
  int columns = 0;
  int edge = 0;
  int odd_shift_halves = 1;  ///< in half steps: 1 for peyote, 0 for square grids
  bool operator==(const Lattice&) const = default;

  /// How far along the edge a cell lies, in half steps.
  [[nodiscard]] int along_halves(Cell cell) const {
    return 2 * cell.step + (cell.column % 2) * odd_shift_halves;
  }
};

struct Plan {
  std::string technique;  ///< the id of the technique that made it
  Lattice lattice;
  Closure closure = Closure::open;
  std::vector<Cell> empty_cells;  ///< cells of the lattice that take no bead, in order
  std::vector<Stitch> stitches;
  std::vector<Row> rows;
  bool operator==(const Plan&) const = default;
};

/// The beads picked up in one row, in the order of stringing.
[[nodiscard]] std::vector<Bead> beads_of(const Plan& plan, const Row& row);

/// How many beads of each kind the plan picks up; as long as the highest bead needs.
[[nodiscard]] std::vector<int> count_beads(const Plan& plan);

/// The highest row number of the plan.
[[nodiscard]] int row_count(const Plan& plan);

}  // namespace evencount::weave
