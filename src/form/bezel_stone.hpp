#pragma once
/// A stone as a bezel sees it, and how a designer writes it down:
/// `stone:DIAMETER,girdle=MM,dome=MM,back=MM` or `stone:WIDTHxHEIGHT,…`.
///
/// | key | what it is |
/// | --- | --- |
/// | the size | over the girdle, where the stone is widest: one diameter, or the two axes of an oval |
/// | `girdle` | height of the upright edge there; 0 (a sharp edge) when left out. On a flat back it is measured from the back |
/// | `dome` | height of the front above the girdle |
/// | `back` | `flat`, or the depth of a pointed back below the girdle |
///
/// `stone:14,girdle=0.5,dome=2.2,back=2.3` is a pointed-back crystal, `stone:18x13,girdle=1,dome=5,back=flat` an oval
/// cabochon. The keys may come in any order. Sizes are millimetres unless they carry a unit (`0.55in`).
///
/// Properties (tests/form/bezel_test.cpp): parse_stone(to_notation(s)) == s for every sound stone whose sizes are
/// a whole number of ten-thousandths of a millimetre.

#include <string>
#include <string_view>

#include "base/units.hpp"

namespace evencount::form {

enum class BackShape { pointed, flat };

/// The side that is seen, and the other.
enum class StoneSide { front, back };

struct Stone {
  Length width;   ///< over the girdle
  Length height;  ///< the other axis; equal to `width` when the stone is round
  Length girdle;  ///< height of the upright edge, 0 or more
  Length dome;    ///< the front above the girdle
  BackShape back = BackShape::pointed;
  Length back_depth;  ///< of a pointed back below the girdle; 0 when flat

  bool operator==(const Stone&) const = default;
};

[[nodiscard]] inline bool is_round(const Stone& stone) {
  return stone.width == stone.height;
}

/// Errors: bad_text (no `stone:`, a part that is not KEY=SIZE, a size that is no length, the wrong number of sizes),
/// unknown_name (a key), duplicate_name (a key twice), missing_field (dome or back), and those of check_stone.
[[nodiscard]] Result<Stone> parse_stone(std::string_view text);

/// Errors: out_of_range: a size that is not finite, a width or height outside the room's smallest_size to largest_size, a
/// girdle below 0, a dome not above 0 or higher than half the shorter width (it would bulge out beyond the girdle), a pointed back
/// not deeper than 0, a flat one with a depth, any of them above largest_size.
[[nodiscard]] Result<Done> check_stone(const Stone& stone);

/// "stone:14,girdle=0.5,dome=2.2,back=2.3"; millimetres without a unit, at most four decimals.
[[nodiscard]] std::string to_notation(const Stone& stone);

/// "round stone 14 mm, girdle 0.5 mm, dome 2.2 mm, pointed back 2.3 mm".
[[nodiscard]] std::string describe(const Stone& stone);

}  // namespace evencount::form
