#pragma once
/// Two cords on a curve, and which way faces hang.
///
/// Two cords held apart by what has two holes, laid on a curve, differ in length: where the loop turns by an
/// angle, the outer one runs
/// further by apart x angle x cos(lean), where `lean` is how steeply the loop's face stands on the plane of
/// the loop: 90 degrees for a
/// bracelet, whose two cords go round the wrist side by side and are equally long; 0 for a collar that lies
/// flat. The loop is taken to
/// turn evenly along its length. What has two holes does not bend: its turn is made in the gaps on both sides of it.
///
/// Properties (tests/strand/two_cords_test.cpp):
///  (1) at the end of every gap the extra beads so far, counted from the middle, are within half a bead of
///  what is needed
///  (2) a strand that reads the same from both ends has extras that do
///  (3) lean 90: none. Whole loop flat: apart x 2 pi needed in all
///  (4) lean_of(needed in all at lean) == lean

#include <vector>

#include "strand/strung.hpp"

namespace evencount::strand {

/// More beads on the outer cord in one gap between things with two holes.
struct OuterExtra {
  int after = 0;    ///< index of the piece the gap follows, in pieces_of; -1: the closing
  int element = 0;  ///< of which bead: the gap's most frequent, of equals the first
  int count = 0;
  Length needed;  ///< what the gap needs by itself
  bool operator==(const OuterExtra&) const = default;
};

/// How a face hangs.
enum class Hanging {
  held,   ///< two holes on two cords: it keeps its face
  turns,  ///< one hole: it can turn round the cord
  flips,  ///< two holes on one cord, or `both`: it turns with the cord, front or back
};
[[nodiscard]] std::string_view hanging_name(Hanging hanging);

struct Drape {
  int piece = 0;  ///< index in pieces_of
  Hanging hanging = Hanging::held;
  bool operator==(const Drape&) const = default;
};

struct TwoCords {
  Length needed;                   ///< how much longer the outer cord is to be
  Length given;                    ///< what the extra beads make
  std::vector<OuterExtra> extras;  ///< gaps that take some
  std::optional<double> lean_without,
      lean_with;             ///< degrees the faces stand at, without and with the extras; none with one cord
  std::vector<Drape> faces;  ///< of every form
};

/// A bracelet's faces look outwards; a necklace's lie on the slope of the breast, 30 degrees from memory.
inline constexpr double bracelet_lean = 90, necklace_lean = 30;

/// `lean` in degrees, 0 to 90. Errors: out_of_range.
[[nodiscard]] Result<TwoCords> two_cords(const Strung& strung, const Counts& counts, double lean);

/// How steeply the faces stand when the outer cord is that much longer where the loop turns by `turn` radians:
/// 90 for none.
[[nodiscard]] double lean_of(Length longer, Length apart, double turn);

}  // namespace evencount::strand
