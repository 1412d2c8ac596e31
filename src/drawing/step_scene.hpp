#pragma once
/// What a step diagram shows, before it has a size: beads, and the needle's way through them. Private to this room.

#include <optional>
#include <vector>

#include "weave/moments.hpp"

namespace evencount::drawing {

/// A bead that is shown.
struct ShownBead {
  weave::Cell cell;    ///< of the lattice
  weave::Spot middle;  ///< unrolled
  weave::Bead bead = chart::no_bead;
  std::size_t strung_at = 0;
  bool beyond = false;  ///< past the window: only hinted at
};

/// Once through a bead.
struct Pass {
  weave::Cell cell;
  weave::Spot middle;  ///< unrolled
  weave::Travel travel = weave::Travel::right;
  double lane_mm = 0;  ///< off the middle of the hole, on the sheet
  std::size_t stitch = 0;
  bool strung = false;
};

/// Thread that runs from the bead of `cell` to the next one along, at the mouth on the side `out`.
struct EdgeThread {
  weave::Cell cell;
  weave::Travel out = weave::Travel::right;
  bool operator==(const EdgeThread&) const = default;
};

/// What the needle does between two beads.
struct Between {
  std::optional<weave::Turn> turn;
  std::optional<EdgeThread> caught;  ///< it goes round this
  std::optional<EdgeThread> laid;    ///< it lies there itself from now on
};

/// Two beads that follow each other on the thread.
struct Step {
  std::size_t from = 0, to = 0;  ///< stitches
  Between between;
};

struct StepScene {
  std::vector<ShownBead>
      beads;  ///< in the window, and one beyond it all round, that are strung before the moment ends
  std::vector<Step> steps;   ///< of the thread up to there, as far as they touch shown beads or the moment
  std::vector<Pass> passes;  ///< the moment's, after its lead-in where there is one
  bool has_lead = false;
};

[[nodiscard]] StepScene step_scene(const weave::Plan& plan, const weave::Moment& moment);

}  // namespace evencount::drawing
