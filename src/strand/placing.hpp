#pragma once
/// Where everything that is strung lies in space: laid flat, and as worn.
///
/// Millimetres, seen from +y with z up. A thing's own directions: `along` the cord in the order of stringing, `outwards` off the
/// wearer, where its face is; outwards x along points to the inner of two cords.
///
/// flat   the cord runs from left to right (along -x), the inner cord above
/// worn   on a wrist: the chain of rigid parts (chain_round.hpp), the arm along z, the middle of what is strung in front. Round a neck
///        the same, and by finished length a ring, both hung up: the closing above, the middle below
/// Faces stand at the lean of two_cords.hpp. What the outer cord has more lies evenly in its gap.
///
/// Properties (tests/strand/placing_test.cpp):
///  (1) one thing a bead of use_of, extras with it (a piece with one bead on each cord is two things)
///  (2) along and outwards are unit and at right angles
///  (3) flat: lengths in a row are the length of what is strung
///  (4) worn by finished length: the middles lie on the circle of that length

#include <vector>

#include "strand/fitting.hpp"
#include "strand/two_cords.hpp"

namespace evencount::strand {

struct Place3 {
  double x = 0, y = 0, z = 0;
  bool operator==(const Place3&) const = default;
};

struct PlacedThing {
  int element = 0;  ///< index in Strung::elements
  int cord = 0;     ///< 0: on every cord that runs there; 1 the inner, 2 the outer
  Place3 middle, along, outwards;
  Length length;  ///< along the cord
};

struct PlacedStrand {
  std::vector<PlacedThing> things;
  std::vector<std::vector<Place3>> cords;  ///< each a line of points
};

[[nodiscard]] PlacedStrand placed_flat(const Strung& strung, const StrandFit& fit, const TwoCords& curve);

/// `lean` in degrees. Errors: those of chain_round.
[[nodiscard]] Result<PlacedStrand> placed_worn(const Strung& strung, const StrandFit& fit,
                                               const TwoCords& curve, double lean);

/// How far apart the cords run at a piece: by the nearest thing with two holes. 0 where one cord runs.
[[nodiscard]] Length apart_at(const Strung& strung, const std::vector<Piece>& pieces, std::size_t at);

/// The same of every piece of a closed loop: beyond what holds them apart they come together in a closing of one hole.
/// `starts` is piece_starts_um of the pieces.
[[nodiscard]] std::vector<Length> apart_in_loop(const Strung& strung, const std::vector<Piece>& pieces,
                                                const std::vector<std::int64_t>& starts);

}  // namespace evencount::strand
