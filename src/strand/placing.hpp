#pragma once
/// Where everything that is strung lies in space: laid flat, on a table, and as worn.
///
/// Millimetres, seen from +y with z up. A thing's own directions: `along` the cord in the order of stringing, `outwards` off the
/// wearer, where its face is; outwards x along points to the inner of two cords.
///
/// flat   the cord runs from left to right (along -x), the inner cord above
/// worn   on a wrist: the chain of rigid parts (chain_round.hpp), the arm along z, the middle of what is strung in front. Round a neck
///        the same, and by finished length a ring, both hung up: the closing above, the middle below
/// table  for a wrist the row, its clasp opened; else the ring. Faces to +y, where up is; everything rests on the table, y = 0, or is
///        held up by its neighbours. Laid flat the ring's face doesn't lean, whatever its cords' lengths would have it do
/// Faces stand at the lean of two_cords.hpp. What the outer cord has more lies evenly in its gap.
///
/// Properties (tests/strand/placing_test.cpp):
///  (1) one thing a bead of use_of, extras with it (a piece with one bead on each cord is two things)
///  (2) along and outwards are unit and at right angles
///  (3) flat: lengths in a row are the length of what is strung
///  (4) worn by finished length: what is on one cord, or on the inner of two, lies on the circle of that length
///  (5) cords run through the holes: beside a thing's middle and its holes' mouths, within half its hole. On a table not through a
///      hole of 0.6 mm in a long bead beside a ball many times as thick: the line from mouth to mouth passes it by 0.5 mm
///  (6) table: nothing reaches below it, and the forms and the thickest things rest on it
///  (7) the body has the wearer's measure round it and keeps within the loop
///  (8) table: what isn't level leans as steeply as the way from the middle before it to the one after it; at an open end, its own

#include <optional>
#include <vector>

#include "strand/fitting.hpp"
#include "strand/two_cords.hpp"

namespace evencount::strand {

struct Place3 {
  double x = 0, y = 0, z = 0;
  bool operator==(const Place3&) const = default;
};

/// Which part of a clasp: all of it, or opened the half that follows the last piece or comes before the first.
enum class ClaspHalf { both, after, before };

struct PlacedThing {
  int element = 0;  ///< index in Strung::elements
  int cord = 0;     ///< 0: on every cord that runs there; 1 the inner, 2 the outer
  Place3 middle, along, outwards;
  Length length;  ///< along the cord
  ClaspHalf half = ClaspHalf::both;
};

/// What a piece is worn on: an oval, its axis at right angles to both.
struct Body {
  Place3 middle, half_width, half_depth;  ///< half axes
  bool operator==(const Body&) const = default;
};

struct PlacedStrand {
  std::vector<PlacedThing> things;
  std::vector<std::vector<Place3>> cords;  ///< each a line of points, into the closing's loops
  std::optional<Body> body;                ///< worn on a wrist or neck
};

[[nodiscard]] PlacedStrand placed_flat(const Strung& strung, const StrandFit& fit, const TwoCords& curve);

/// `lean` in degrees. Errors: those of chain_round.
[[nodiscard]] Result<PlacedStrand> placed_worn(const Strung& strung, const StrandFit& fit,
                                               const TwoCords& curve, double lean);

[[nodiscard]] PlacedStrand placed_on_table(const Strung& strung, const StrandFit& fit, const TwoCords& curve);

/// How far apart the cords run at a piece: by the nearest thing with two holes. 0 where one cord runs.
[[nodiscard]] Length apart_at(const Strung& strung, const std::vector<Piece>& pieces, std::size_t at);

/// The same of every piece of a closed loop: beyond what holds them apart they come together in a closing of one hole.
/// `starts` is piece_starts_um of the pieces.
[[nodiscard]] std::vector<Length> apart_in_loop(const Strung& strung, const std::vector<Piece>& pieces,
                                                const std::vector<std::int64_t>& starts);

}  // namespace evencount::strand
