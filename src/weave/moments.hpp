#pragma once
/// The moments of a plan that a beader wants to see drawn: where something happens for the first time.
///
/// They are found in the stitches and rows alone; nothing here knows a technique by its name.
///
/// Properties (tests/weave/moments_test.cpp), for every technique:
///  (1) 0 <= first_stitch < end_stitch <= plan.stitches.size(), and the moment goes through at least one bead;
///  (2) they are in the order of their first stitch, the start first, the end of the thread last, at most two of a kind;
///  (3) all beads that it goes through lie in its window, which lies in the piece (round lattices wrap, and a moment at a seam
///      sees both ends);
///  (4) the largest of the circled figures of its text is the number of beads it goes through, the first is 1.

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "language/language.hpp"
#include "weave/unrolled.hpp"

namespace evencount::weave {

enum class MomentKind : std::uint8_t {
  start,         ///< the first beads on the thread
  ring,          ///< the first round closes
  turn,          ///< from the first row into the next
  stitch,        ///< an ordinary stitch
  under,         ///< an ordinary stitch that goes under a thread of the row before
  increase,      ///< a row that begins or ends further out
  decrease,      ///< a row that begins further in, or a bead that is left out
  figure_eight,  ///< an end bead held by going through the beads below it, there and back
  loop,          ///< an end bead held by going round the thread along the edge
  step_up,       ///< from the end of a round into the next
  weft,          ///< back over the warps
  new_thread,    ///< a new length begins
  zip,           ///< the two ends interlock
  sew,           ///< the two ends are sewn together
  finish,        ///< the end of the thread
};

/// "start", "figure-8", "step up": for messages and tests.
[[nodiscard]] std::string_view moment_name(MomentKind kind);

/// A part of the unrolled piece: cells (column, step) with first_column <= column < end_column and so for the steps.
/// Columns may lie outside the lattice where it is round, and steps past its end where the two ends meet.
struct Window {
  int first_column = 0, end_column = 0;
  int first_step = 0, end_step = 0;
  bool operator==(const Window&) const = default;

  [[nodiscard]] bool holds(Cell cell) const {
    return cell.column >= first_column && cell.column < end_column && cell.step >= first_step &&
           cell.step < end_step;
  }
};

struct Moment {
  MomentKind kind = MomentKind::start;
  std::string title;  ///< "The zip"
  /// What the hands do, in a sentence or two. ① ② ③ stand for the beads that the needle goes through, in their order.
  std::string text;
  std::size_t first_stitch = 0;  ///< in Plan::stitches
  std::size_t end_stitch = 0;    ///< one past the last
  std::size_t new_from =
      0;          ///< beads strung before it are there already: where a new thread follows the old one's way
  Window window;  ///< what to show of the piece
  bool at_seam = false;             ///< the ends meet: steps go on past the last one with the first
  std::string last_end, first_end;  ///< at a seam, what lies on its two sides: "row 48" and "row 1"
  bool operator==(const Moment&) const = default;
};

/// At most this many beads are gone through in a moment, as one has to see where each number stands; of a straight run of more
/// than `longest_run` beads only the first `shown_of_run`. The text tells the whole.
inline constexpr int most_beads_of_a_moment = 16, longest_run = 8, shown_of_run = 7;

/// How moments are told.
struct MomentStyle {
  const language::Language* language = &language::english();
  bool sides_changed = false;  ///< left is told as right and the other way about: the plan is shown in a mirror
};

/// `new_thread_rows` as in ThreadUse. The plan must be one that replays.
[[nodiscard]] std::vector<Moment> moments(const Plan& plan, std::span<const int> new_thread_rows = {},
                                          const MomentStyle& style = {});

/// The stitch of the bead out of which the needle comes at the beginning of a moment; the moment's first stitch where there is
/// none: at the start, and where a new thread comes in. The moment's `visits` are taken from there on.
[[nodiscard]] std::size_t lead_in(const Plan& plan, const Moment& moment);

}  // namespace evencount::weave
