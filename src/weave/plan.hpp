#pragma once
/// The plan: the ordered list of what the needle does.
///
/// Words, thread, counts, diagrams and pictures are all read off the plan. It is plain data; `replay` follows
/// it bead by bead without knowing how it was made.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "chart/grid.hpp"
#include "weave/lattice.hpp"

namespace evencount::weave {

/// What the needle does in one stitch.
enum class Act : std::uint8_t {
  start,    ///< begin a thread
  pick_up,  ///< string a bead, which takes its place in `cell`
  pass,     ///< go through the bead of `cell`, which is stitched already
  under,    ///< go under the thread between the bead of `cell` and the next one along the edge, which runs on the needle's side of
            ///< them; then it comes back
  turn,     ///< come back: the next stitch travels the other way
  join,     ///< go through the bead of `cell` across the seam, drawing the two ends together
  finish,   ///< end the thread
};

/// Whether the thread goes through the bead of the stitch's cell.
[[nodiscard]] constexpr bool goes_through(Act act) {
  return act == Act::pick_up || act == Act::pass || act == Act::join;
}

/// How the needle comes back.
enum class Turn : std::uint8_t {
  edge,     ///< round the edge of the piece as it is so far, into the next bead
  inside,   ///< within the fabric, into the next bead
  loop,     ///< round the thread that lies along the edge, back into the same bead
  outside,  ///< past the outside of the last bead, or of the one that comes, so that the thread encloses it
  warp,     ///< round the outer warp thread, back into the same bead
};

struct Stitch {
  Act act = Act::pass;
  /// pick_up, pass, join: the direction through the bead; turn and under: the direction after it.
  Travel travel = Travel::right;
  Turn turn = Turn::edge;      ///< for a turn
  Bead bead = chart::no_bead;  ///< for a pick_up
  Cell cell;                   ///< for pick_up, pass, under, join
  bool operator==(const Stitch&) const = default;
};

/// How the two ends of a piece meet.
enum class Closure : std::uint8_t {
  open,   ///< they don't
  zip,    ///< edge beads that interlock, drawn together
  sew,    ///< the end beads, sewn together side by side
  round,  ///< worked round from the start: a tube, a bezel
};

/// Whether the last step lies beside step 0: zipped or sewn.
[[nodiscard]] constexpr bool closes_round_edge(Closure closure) {
  return closure == Closure::zip || closure == Closure::sew;
}

/// The lattice as those see it who draw on its chart.
[[nodiscard]] chart::Grid grid_of(const Lattice& lattice, Closure closure);

[[nodiscard]] std::string_view closure_name(Closure closure);
/// Errors: unknown_name.
[[nodiscard]] Result<Closure> parse_closure(std::string_view name);

enum class RowKind : std::uint8_t { row, round, zip, sew };

/// How an end of a row lies against the row before it, where that isn't what the technique does anyway.
enum class RowEnd : std::uint8_t { plain, increase, decrease };

/// A stretch of stitches with a name in the words. Rows 1 and 2 of peyote are one stretch: they are strung
/// together.
struct Row {
  RowKind kind = RowKind::row;
  int first_number =
      1;  ///< the number printed; first_number < last_number only where rows are worked together
  int last_number = 1;
  Travel travel = Travel::right;  ///< of its first bead, or for holes along the piece the way the row goes across
  RowEnd begins = RowEnd::plain;
  RowEnd ends = RowEnd::plain;
  bool on_back = false;  ///< a round worked downwards from the ring
  std::size_t first_stitch = 0;  ///< in Plan::stitches
  std::size_t end_stitch = 0;    ///< one past the last
  bool operator==(const Row&) const = default;
};

/// Whether beads are picked up in it: a row or a round.
[[nodiscard]] constexpr bool has_beads(RowKind kind) {
  return kind == RowKind::row || kind == RowKind::round;
}

/// "rows 1-2", "row 14", "round 3", "zip", "sewn join".
[[nodiscard]] std::string row_name(const Row& row);

struct Plan {
  std::string technique;  ///< the id of the technique that made it
  Lattice lattice;
  Closure closure = Closure::open;
  int strung_together = 1;  ///< the most beads that one stitch strings after the first row: 1 for peyote, 3 for right-angle weave
  bool on_warps = false;    ///< rows hang on warp threads, not on each other
  std::vector<Cell> empty_cells;  ///< cells of the lattice that could hold a bead and take none, step after step
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
