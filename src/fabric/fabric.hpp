#pragma once
/// Where the beads of a plan settle in space: flat, closed round a form, as tubes and rings.
///
/// The layouts here are exact: the lattice at its gauge, flat or rolled up. `relax` (relax.hpp) takes over where beads push each
/// other out of the way or thread draws them in. The model, and what it leaves out: docs/algorithms/fabric.md.
///
/// How things lie, in millimetres:
///  flat    x runs across from column 0, y against the steps, z to the viewer: seen from +z the piece lies as its chart is
///          drawn, column 0 on the left and step 0 at the top. The middle of cell (0, 0) is the origin (in right-angle weave the
///          corner of the first unit)
///  closed  the holes run along z, column 0 below, the middle column at 0; steps run counterclockwise in the section plane,
///          from `form::seam_place`
///  round   the axis is z, the middle of the piece at 0; steps run up, columns clockwise seen from +z, from the back (-y)
/// The outside of a closed or round piece shows its chart as the flat piece does, not mirrored.

#include <optional>
#include <span>
#include <variant>
#include <vector>

#include "bead/bead_size.hpp"
#include "bead/gauge.hpp"
#include "fabric/cylinder.hpp"
#include "form/bezel.hpp"
#include "form/form.hpp"
#include "weave/plan.hpp"

namespace evencount::fabric {

using chart::Bead;
using chart::Cell;

struct SettledBead {
  Cell cell;
  Bead bead = 0;
  Cylinder shape;  ///< its axis runs along the hole, towards higher columns or higher steps
  bool operator==(const SettledBead&) const = default;
};

/// A mouth of a bead's hole: by the bead's place in Fabric::beads, and which end of its axis.
struct Mouth {
  std::size_t bead = 0;
  int end = 1;  ///< 1 or -1: middle + end x half length x axis
  bool operator==(const Mouth&) const = default;
};

[[nodiscard]] inline Vec3 place_of(const Cylinder& bead, int end) {
  return bead.middle + (end * bead.half_length_mm) * bead.axis;
}

/// A stretch of thread between two mouths. It bends and goes slack, but does not stretch.
struct Link {
  Mouth from;
  Mouth to;
  /// As it is in the flat piece at its gauge, where beads larger than the gauge's push the pitches apart. Where the piece bends
  /// thread is let out: in a round piece it is as long as on a tube whose beads don't meet at their inner rims, in a closed one as
  /// on a circle of edge pitches, where that is longer.
  double length_mm = 0;
  bool across_seam = false;  ///< holds only where the piece is closed: zipped or sewn, or round
  bool operator==(const Link&) const = default;
};

/// How far a fabric is from what beads and thread allow. All 0: beads don't overlap, no thread is stretched, nothing is in the form.
struct Residual {
  double worst_overlap = 0;  ///< of two beads, as a share of the smaller one's diameter
  double worst_link =
      0;  ///< by how much a link is longer than its length, as a share of it; for links shorter
          ///< than the smaller bead's radius, of that radius
  double worst_inside_form_mm = 0;  ///< how deep a bead's side lies in the form, where one was given
  int rounds = 0;                   ///< of relaxation; 0 for exact layouts
  bool operator==(const Residual&) const = default;
};

struct Fabric {
  std::vector<SettledBead> beads;  ///< in the order of stringing
  std::vector<Link> links;         ///< in the order of the thread, each pair of mouths once
  bool closed = false;             ///< whether the links across the seam hold
  Residual residual;
  bool operator==(const Fabric&) const = default;
};

/// The mouths that the thread joins, and how much of it lies between them. A loop holds its bead to the bead before it in the same
/// column, a needle that goes under a thread to the two beads that it lies between. Errors: those of settle_flat.
[[nodiscard]] Result<std::vector<Link>> links_of(const weave::Plan& plan, std::span<const bead::Size> sizes,
                                                 const bead::Gauge& gauge);

/// A round of relaxation takes 0.9 us a bead, and there are 3,000 of them at the most (docs/algorithms/fabric.md): five minutes. A wall
/// piece of 250 by 400 beads has as many.
inline constexpr std::size_t most_settled_beads = 100'000;

// All functions below take the sizes by bead index, one for each bead of the legend, and the gauge of the bead that the piece is
// mostly made of. Errors of all: out_of_range (a bead without a size, sizes or a gauge that are not above zero; in `settle`, more beads than
// most_settled_beads); bad_plan (no beads,
// or a needle that passes a cell without one: nothing that replay accepts).

/// The piece as it lies on the table before it is closed; round pieces cut open.
///
/// Properties (tests/fabric/flat_test.cpp): (1) middles are the lattice's sites times half the gauge's pitches, exactly;
/// (2) no link is longer than its length while the beads have one size.
[[nodiscard]] Result<Fabric> settle_flat(const weave::Plan& plan, std::span<const bead::Size> sizes,
                                         const bead::Gauge& gauge);

/// A zipped or sewn band round a form: the beads of even half steps are N equal chords on the section moved outwards by half a
/// bead, and so are those of odd half steps, half a bead on (form::faces). Beads of another size stand on the form at their own
/// radius. Without a form, round nothing: the circle on which N chords are the edge pitch.
///
/// Properties (tests/fabric/closed_test.cpp): (3) neighbours of one parity lie the closing chord of form/closure.hpp apart, within
/// 1e-9 mm where close_ring closes; (4) no bead lies inside the form.
/// Errors: also those of form::faces; wrong_size (an open or round plan).
[[nodiscard]] Result<Fabric> settle_closed(const weave::Plan& plan, std::span<const bead::Size> sizes,
                                           const bead::Gauge& gauge, const std::optional<form::Form>& form);

/// A tube or ring worked round: column by column a polygon, one height for each half step.
///
/// Without a form the polygon's chord is the gauge's column pitch, or where beads would meet at their inner rims as much more as
/// parts them, and a piece that rises (an odd count) is the flat piece rolled
/// up slantwise, without shear. Round a form the polygon is the ring of equal chords on its section moved outwards by half a
/// bead, whatever slack or strain that leaves.
///
/// Properties (tests/fabric/tube_test.cpp): (5) neighbouring columns at one height lie the chord apart, within 1e-9 mm;
/// (6) past the last column comes column 0, risen by the lattice's rise.
/// Errors: also those of form::close_ring; wrong_size (a plan that is not round); too_few_beads (fewer than 3 columns).
[[nodiscard]] Result<Fabric> settle_round(const weave::Plan& plan, std::span<const bead::Size> sizes,
                                          const bead::Gauge& gauge, const std::optional<form::Form>& form);

/// A round piece with each round at a given radius, and at a given height above z = 0, the girdle's middle: `rounds[k]` is the plan's
/// round k + 1.
/// Errors: also wrong_size (a plan that is not round, or has more rounds than given).
[[nodiscard]] Result<Fabric> settle_rounds(const weave::Plan& plan, std::span<const bead::Size> sizes,
                                           const bead::Gauge& gauge,
                                           std::span<const form::BezelRound> rounds);

/// A stone in its bezel: a round stone, and where form::bezel lays the rounds round it.
struct SetStone {
  form::Stone stone;
  std::vector<form::BezelRound> rounds;
};

/// What a piece goes round: nothing, a form, or a stone.
using Around = std::variant<std::monostate, form::Form, SetStone>;

/// The piece as it will be: an open plan flat (on a form too), a zipped or sewn one closed, a round one round; then relaxed where the
/// layout leaves beads overlapping or thread stretched. Round pieces with beads of several sizes or fewer beads to a round are
/// drawn tight, a form or stone in the way. On a form all others stay on their chords: how tight or slack they are is the fit's to say.
/// Errors: those of the layouts; not_convex and out_of_range (a stone that is oval or not sound).
[[nodiscard]] Result<Fabric> settle(const weave::Plan& plan, std::span<const bead::Size> sizes,
                                    const bead::Gauge& gauge, const Around& around = {});

}  // namespace evencount::fabric
