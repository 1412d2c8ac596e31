#pragma once
/// Closing a ring of equal chords on a convex curve.
///
/// A zipped band's edge beads lie with their centres on the form's section moved outwards by half a bead; N
/// of them close into a ring when N equal chords lead once round that curve and back to the first bead. Each
/// chord is taken to the first point ahead at its distance. The chord that closes depends a little on where
/// the first bead sits.
///
/// A thin curve can make the walk jump: where chords longer than about twice the radius of a tip reach it, the first
/// point ahead leaps past the tip. No n equal chords may close from such a start; its closing chord is then the smallest that
/// leads home or past it, which is the ring with one chord a little shorter than the others, and `close_ring` fails there.
/// 11/0 beads meet it on `lens:30x2x9`, but not on `lens:17x5x9` (23 to 27 of them, tried at 500 starts).
///
/// Properties (tests/form/closure_test.cpp):
///  (1) closing_chord(circle(d), n) == d sin(pi / n), within 1e-9 relative
///  (2) closing_chord is unchanged by rotating, mirroring and subdividing the curve, and scales with it, within 1e-8 relative
///  (3) strictly decreasing in n, from the same start, between rings that close_ring gives; never increasing
///  (4) the same from any bead of the ring that close_ring gives, within 1e-8 relative
///  (5) n * chord < perimeter of a ring that close_ring gives
///  (6) closing_range bounds closing_chord from every start, within 5e-5 relative (5e-4 for a dome, whose two sharp edges
///      put kinks between the starts that are tried), and both bounds are attained at the places given, within 1e-6; within
///      2e-3 where some start has no ring
/// Against the slow walk of tests/oracle/form_closing_oracle.hpp: within 1e-8 relative.
///
/// Errors of all: too_few_beads (n < 3), cannot_close (close_ring: see above; else only when chords find no next point,
/// for 3 or 4 beads on a thin curve that has not been moved outwards).

#include <optional>
#include <vector>

#include "form/convex_curve.hpp"

namespace evencount::form {

class Track;

/// The chord of the ring of n beads that has one at `start`. Within 1e-8 relative.
[[nodiscard]] Result<Length> closing_chord(const ConvexCurve& curve, int n, Position start = {});

/// The smallest and largest closing chord over all starts, and starts that have them.
struct ClosingRange {
  Length smallest;
  Length largest;
  Position smallest_at;
  Position largest_at;
  bool operator==(const ClosingRange&) const = default;
};

[[nodiscard]] Result<ClosingRange> closing_range(const ConvexCurve& curve, int n);
/// The same on a prepared curve, for many n on one curve. `near` is a guess at one closing chord, which only saves time.
[[nodiscard]] Result<ClosingRange> closing_range(const Track& track, int n, std::optional<Length> near = {});

/// A guess at the closing chord of n beads from that of m: what the chords leave out of the way round goes with 1 / n^2.
/// On a smooth curve within 1e-4.
[[nodiscard]] Length likely_chord(Length perimeter, int m, Length chord_of_m, int n);

/// The ring itself: where the n beads sit, counterclockwise, the first at `start`.
struct Ring {
  Length chord;
  std::vector<Placed> beads;
};

[[nodiscard]] Result<Ring> close_ring(const ConvexCurve& curve, int n, Position start = {});

}  // namespace evencount::form
