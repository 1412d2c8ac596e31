#pragma once
/// How much thread a plan takes, in how many lengths, and how often each bead is passed.

#include <vector>

#include "bead/bead_size.hpp"
#include "bead/gauge.hpp"
#include "bead/thread.hpp"
#include "weave/plan.hpp"

namespace evencount::weave {

/// What the maker works with. Defaults: common practice, no source (tail 15 cm on bands, working length at
/// most 1.5 m).
struct ThreadHabits {
  Length tail = centimetres(15);             ///< left at each end of each length
  Length working_length = centimetres(150);  ///< no length is cut longer than this; at least 4 tails
  int reinforced_rows = 0;                   ///< rows at each end that are gone through once more; 0 or more
  bool operator==(const ThreadHabits&) const = default;
};

/// What a loom's warp threads need beyond the piece at each end, to tie them on: from memory.
inline constexpr Length warp_allowance = centimetres(20);

struct ThreadUse {
  Length path;                  ///< through the holes and across the gaps of the flat piece, reinforcing in it, without tails
  Length cut;                   ///< path, tails and warps: what is cut in all
  std::vector<Length> lengths;  ///< each length to cut, tails in it; never empty
  std::vector<int> new_thread_rows;  ///< the row number where each length after the first begins
  std::vector<int> passes;  ///< for each cell, step after step: how often the thread goes through its bead
  int most_passes = 0;
  Length left;               ///< on the last length beyond its tail, had it been cut at the working length
  int warps = 0;             ///< warp threads, where the piece is woven on them: one more than columns, the outer two doubled
  Length warp_length;        ///< of each
  int capacity = 0;  ///< how many passes a bead of this hole takes (bead::passes_that_fit)
  bool operator==(const ThreadUse&) const = default;
};

/// Thread of a flat piece, or of a tube, pulled taut.
///
/// A stitch through a bead takes the bead's length. Between two beads the thread runs straight from one hole's mouth to the
/// next, leaning in each against the near wall: it can lie (hole - thread) / 2 off the hole's middle, so that much is
/// saved at both mouths, each aside from its own hole: round a corner of right-angle weave once across and once along. Past
/// the outside of a bead the thread goes from its mouth out to its outer face, along it, and in again. A loop runs down one bead
/// along the edge and back; round a warp, or under the thread of the row before, the needle goes there and back; from one row on
/// warps to the next it goes out round the outer warp. Beads lie on the lattice at the gauge.
/// This is the least the thread can take; the tails hold what a looser hand needs.
///
/// Properties: path grows with every stitch; cut == path + 2 * tail * lengths.size() + warps * warp_length;
/// the sum of passes == the number of pick-ups, passes and joins when no rows are reinforced.
/// Errors: out_of_range (a working length under 4 tails, a tail or reinforced rows below 0, or one row longer than a length allows).
[[nodiscard]] Result<ThreadUse> thread_use(const Plan& plan, const bead::Size& size, const bead::Gauge& gauge,
                                           const bead::Thread& thread, const ThreadHabits& habits = {});

}  // namespace evencount::weave
