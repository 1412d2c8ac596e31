#pragma once
/// A peyote bezel: tubular peyote that holds a stone.
///
/// Beads are strung round the girdle with their holes running round it, an even number; every further round holds half
/// of them. Rounds go up the girdle as a wall; then rounds of smaller or fewer beads are drawn in on the front and the back
/// until the stone can't fall out. How the rounds lie, the constants and what is left out: docs/algorithms/bezel.md.
///
/// Properties (tests/form/bezel_test.cpp):
///  (1) the beads are the sum over the rounds; start and wall rounds hold ring_beads / 2 each
///  (2) radii never grow from the wall inwards, on both sides, while the beads drawn in are not longer than the wall's
///  (3) where nothing is pushed outwards, a further round drawn in never lessens the capture; without one, the stone falls out
///  (4) stone, beads, gauges and margins all k times as large: the same rounds, k times the lengths, the same strains
///  (5) an oval with equal axes is a round stone
///  (6) no bead lies inside the stone, within 1e-9 of its size

#include <optional>
#include <string>
#include <vector>

#include "bead/bead_size.hpp"
#include "bead/gauge.hpp"
#include "form/bezel_stone.hpp"

namespace evencount::form {

/// The beads of a round that is drawn in.
struct DrawIn {
  bead::Size bead;
  bead::Gauge gauge;
  int fewer = 0;  ///< beads fewer than in the round before it, 0 or more
};

struct BezelRequest {
  Stone stone;
  bead::Size bead;  ///< of the ring and the wall
  bead::Gauge gauge;
  /// From the wall inwards, the same on both sides; the last one stands for all rounds after it. Empty: nothing is drawn in.
  std::vector<DrawIn> draw_in;
  std::optional<int> ring_beads;    ///< even; none: as ring_start chooses
  std::optional<int> wall_rounds;   ///< with the two that are strung as the ring, so 2 or more; none: chosen
  std::optional<int> front_rounds;  ///< drawn in, 0 or more; none: chosen
  std::optional<int> back_rounds;
  Length least_margin = millimetres(0.3);  ///< from memory: what thread and lot leave of a drawn-in ring
  Length most_play = millimetres(0.3);     ///< from memory: more than that rattles
};

/// Two strung rounds slip past each other until a third of the same beads lies in their gaps: a chosen wall has at least three
/// rounds. Common practice, no source.
inline constexpr int fewest_chosen_wall_rounds = 3;
/// The first drawn-in round lies between the wall's beads; only the second makes a ring of its own: a chosen side has at least two.
/// Common practice, no source; one that is given is judged as it is.
inline constexpr int fewest_chosen_draw_in_rounds = 2;
/// As many drawn-in rounds as are tried on each side; more is a cap, not a bezel (from memory).
inline constexpr int most_chosen_draw_in_rounds = 8;
/// The most of anything that may be given.
inline constexpr int most_given_rounds = 1000;

enum class RoundRole { start, wall, draw_in };

/// "start", "wall", "draw_in".
[[nodiscard]] std::string_view role_name(RoundRole role);

struct BezelRound {
  int number = 0;  ///< from 1, in the order worked: the ring, the wall, the front, the back
  std::string bead;
  int beads = 0;
  RoundRole role = RoundRole::start;
  std::optional<StoneSide> side;  ///< of a round that is drawn in
  Length radius;                  ///< of the bead centres; on an oval their way round / 2 pi
  Length natural;                 ///< where its beads and those of the round before it touch in a ring
  Length height;                  ///< of the bead centres above the girdle's middle; the back is below zero
  double strain =
      0;  ///< of a start or wall round: closing chord / column pitch - 1 round the girdle, below zero is slack.
          ///< Drawn in: radius / natural - 1, the gaps that stay between its beads because the stone or the
          ///< fabric keeps the ring from closing further
  bool operator==(const BezelRound&) const = default;
};

struct BezelBeads {
  std::string bead;
  int count = 0;
  bool operator==(const BezelBeads&) const = default;
};

struct Bezel {
  int ring_beads = 0;
  int wall_rounds = 0;
  int front_rounds = 0;
  int back_rounds = 0;
  std::vector<BezelRound> rounds;
  Length
      capture_front;  ///< how far the innermost edge of the last round lies inside the girdle, along the normal all round
  Length capture_back;
  bool holds_front = false;  ///< capture_front >= least_margin
  bool holds_back = false;
  std::string reason_front;  ///< for people; empty when that side holds
  std::string reason_back;
  std::optional<Length>
      play;  ///< along the axis, when both sides hold: above zero the stone can move so far; below zero the
             ///< wall is too low by so much and the rounds are pushed outwards
  std::vector<BezelBeads> beads;  ///< by size, in the order first used
  int bead_count = 0;
  bool operator==(const Bezel&) const = default;
};

[[nodiscard]] constexpr bool holds(const Bezel& bezel) {
  return bezel.holds_front && bezel.holds_back;
}

/// The bezel with what is given, and the rest chosen: the fewest rounds with which both sides hold and the play is within
/// +- most_play, and of those the least play either way; where there is none, the least play that holds, in steps of most_play, with
/// the fewest rounds; where nothing holds, the most capture. A stone that falls out is an answer, not a problem.
///
/// Errors: those of check_stone; out_of_range (a bead, gauge or margin that is not above 0, an odd ring, rounds below 0 or above
/// most_given_rounds, a wall below 2, given rounds drawn in without beads for them, `fewer` below 0, beads too small for the
/// stone); too_few_beads (not even 4 beads go round, or a given round is left with fewer than 2); those of closing_range.
[[nodiscard]] Result<Bezel> bezel(const BezelRequest& request);

}  // namespace evencount::form
