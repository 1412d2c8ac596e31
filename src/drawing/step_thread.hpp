#pragma once
/// The thread of a step diagram as curves on the sheet: private to this room.

#include <array>
#include <optional>
#include <vector>

#include "drawing/step_layout.hpp"
#include "drawing/step_scene.hpp"

namespace evencount::drawing {

using Strand = std::vector<Point>;

/// The thread between two beads. What `beneath` crosses lies over it.
struct Link {
  Strand over, beneath, rest;
  [[nodiscard]] Strand whole() const;
};

/// Draws links round the beads that are shown.
class Linker {
 public:
  Linker(const weave::Lattice& lattice, const StepLayout& layout, const std::vector<ShownBead>& beads,
         bool at_seam);

  [[nodiscard]] Link link(const Pass& from, const Pass& to, const Between& between) const;

 private:
  [[nodiscard]] bool on_bead(Point point) const;
  /// How far the thread can bulge out of a mouth: less where a bead stands.
  [[nodiscard]] double room_mm(Point middle, Point out, double wanted_mm) const;
  [[nodiscard]] Strand round_turn(Point from, Point to, Point out, double bulge_mm) const;
  [[nodiscard]] Strand outside(const Pass& from, const Pass& to) const;
  [[nodiscard]] Link round_thread(const Pass& from, const Pass& to, const EdgeThread& caught) const;

  const weave::Lattice& lattice_;
  const StepLayout& layout_;
  std::vector<Rectangle> barrels_;
  bool at_seam_;
};

/// A curve from one point and direction to another, in short straight pieces.
[[nodiscard]] Strand curve(Point from, Point from_pull, Point to_pull, Point to);
/// The dashes of a strand.
[[nodiscard]] std::vector<Strand> dashes(const Strand& strand, double on_mm, double off_mm);
[[nodiscard]] double length_of(const Strand& strand);
/// The point so far along a strand and the direction there.
[[nodiscard]] std::array<Point, 2> along(const Strand& strand, double mm);

}  // namespace evencount::drawing
