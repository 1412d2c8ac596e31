#pragma once
/// Peyote worked round: tubes of even and odd count, and bezels.
///
/// The holes run round the tube: columns are counted round it, steps along it. All rounds go the same way, to the right.
///
/// Even count and bezels: rounds 1 and 2 are strung as a ring, which the needle closes by passing the first bead again. Each
/// round ends with a step-up: through the first bead of the round, so that every round begins one column further on.
/// Odd count: the ring is strung and the work goes on without an end of its own: it spirals, and each round rises by half a bead.
///
/// Bezels may have rounds on both sides of their ring: `Making::begin_at` is the lattice's row of round 1. When the rounds above
/// it, the wall and the front, are done, the needle goes down through the fabric to round 1 and works the rows below, the back.
/// Their cells may be left empty to draw the work in. A bead hangs between two beads of the neighbouring round; where the one that comes
/// first on the needle's way is missing there is no place for a bead, in any other place one may be left out: the needle then goes
/// through the next two beads without stringing one, a decrease.
/// Source: common practice, no source; the spiral follows from the count.

#include "weave/technique.hpp"

namespace evencount::weave {

/// Tubes of even and odd count, bezels.
[[nodiscard]] std::span<const Technique> tubular_peyote_techniques();

}  // namespace evencount::weave
