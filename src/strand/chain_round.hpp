#pragma once
/// A closed chain of rigid links round a wrist or neck.
///
/// Each link is a straight chord at the middle of the piece's thickness; the wrist is an ellipse, and no link
/// comes nearer to it
/// than half the thickness. Such a chain is never shorter than the smooth formula says (its convex hull
/// encloses the ellipse moved
/// outwards). How it is laid so that little is lost: docs/algorithms/strand.md.
///
/// Properties (tests/strand/chain_round_test.cpp):
///  (1) girth_inside <= inside_of(sum of the links): a polygon is never shorter than the smooth formula says
///  (2) n equal links round a circle: the regular polygon, pi (link / tan(pi / n) - thickness), within 1e-4 relative
///  (3) links k times as many and as short: the difference to the formula tends to 0
///  (4) all lengths k times as large: a girth k times as large, within 1e-6 relative
///  (5) no part of the closed chain lies nearer to the ellipse than half the thickness, and its links have
///  their lengths

#include <span>
#include <vector>

#include "base/result.hpp"
#include "base/units.hpp"
#include "form/point.hpp"

namespace evencount::strand {

/// The chain closed round the largest ellipse that was found.
struct ChainRound {
  Length girth;                    ///< of the ellipse
  Length half_width, half_height;  ///< its half axes
  std::vector<form::Point>
      joints;  ///< one a link, counterclockwise: link i leads from joints[i] to joints[i + 1]
};

/// The largest ellipse of that breadth over depth round which the links were found to lie in that order: every
/// one that is
/// returned is closed by the joints given, to 1e-6 mm; a slightly larger one may exist.
/// Errors: out_of_range (a link or the ratio not above zero, a thickness below 0, more than 2'000 links);
/// too_few_beads (fewer
/// than 3 links); cannot_close (no ellipse has room: the formula leaves none, or one link is about as long as
/// the rest).
[[nodiscard]] Result<ChainRound> chain_round(std::span<const Length> links, Length thickness, double ratio);

}  // namespace evencount::strand
