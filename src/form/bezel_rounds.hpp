#pragma once
/// Where the drawn-in rounds of a bezel lie over a stone. Internal to the room.
///
/// Everything happens in the stone's meridian: `radius_mm` is a ring's mean radius (its way round / 2 pi; on an oval all
/// rings are curves parallel to the outline, so that one number says it all), heights are measured from the girdle's middle
/// towards the side that is drawn in. The model: docs/algorithms/bezel.md.

#include <span>
#include <vector>

#include "form/bezel_stone.hpp"

namespace evencount::form {

/// What the beads of a ring have to clear.
class Meridian {
 public:
  /// The stone must be sound; `outline_mm` is the length of its girdle.
  Meridian(const Stone& stone, double outline_mm);

  /// The mean radius of the girdle.
  [[nodiscard]] double girdle_mm() const { return girdle_mm_; }
  [[nodiscard]] double half_edge_mm() const { return half_edge_mm_; }
  /// No ring parallel to an oval's outline is smaller: its ends would have no radius left. 0 for a round stone.
  [[nodiscard]] double smallest_mm() const { return smallest_mm_; }

  /// The least height at which a bead's centre can lie at this radius; minus infinity outside the girdle.
  [[nodiscard]] double clear_height_mm(StoneSide side, double radius_mm, double half_bead_mm) const;

 private:
  double girdle_mm_;
  double half_width_mm_;  // along the shorter axis, where the stone is steepest
  double half_edge_mm_;
  double smallest_mm_;
  double dome_mm_;
  double back_mm_;  // 0: flat
};

/// What a round is made of.
struct RoundBeads {
  int beads = 0;
  double column_mm = 0;
  double edge_mm = 0;
  double half_bead_mm = 0;
};

/// Where a round lies.
struct LaidRound {
  double radius_mm = 0;
  double height_mm = 0;
  double natural_mm = 0;  ///< the radius at which its beads and those of the round under it touch
  double lean = 0;        ///< radians from upright to flat (pi / 2) on the way from the round under it
};

/// The radius of the ring that two neighbouring rounds make: as many equal chords as they have beads together, each the mean
/// column pitch.
[[nodiscard]] double natural_radius_mm(const RoundBeads& under, const RoundBeads& round);

/// The rounds one after another, from the last round of the wall (its beads, its radius; height 0), as if no stone were there.
[[nodiscard]] std::vector<LaidRound> lay_free(const Meridian& stone, const RoundBeads& wall, double wall_mm,
                                              std::span<const RoundBeads> rounds);

/// The same from a wall that ends at `height_mm`, pushed outwards where the stone is in the way.
[[nodiscard]] std::vector<LaidRound> lay_over(const Meridian& stone, StoneSide side, const RoundBeads& wall,
                                              double wall_mm, double height_mm,
                                              std::span<const RoundBeads> rounds);

/// How high the wall must end above the girdle's middle for freely laid rounds to clear the stone: level with the girdle's edge
/// when there are none.
[[nodiscard]] double wall_needed_mm(const Meridian& stone, StoneSide side, std::span<const LaidRound> laid,
                                    std::span<const RoundBeads> rounds);

}  // namespace evencount::form
