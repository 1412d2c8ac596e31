#pragma once
/// The numbers of a step diagram and the needle, placed where they hide least: private to this room.

#include "drawing/step_thread.hpp"

namespace evencount::drawing {

/// A number's disc: two figures of the smallest size that is printed fit in it.
inline constexpr double disc_radius_mm = 2.1, number_pt = 8;

/// A place where a number could stand: on the thread within its bead.
struct Disc {
  Point centre;
  Point on_thread;  ///< where a line leads from the disc when it stands off
};

/// What discs and needle should not hide.
struct Surroundings {
  std::vector<Point> thread;  ///< points of the moment's thread
  std::vector<Point> heads;   ///< the arrowheads
  std::vector<Rectangle> beads;
};

/// A disc for each strand, in order. Property: no two are nearer than the sum of their radii and `disc_gap_mm`.
inline constexpr double disc_gap_mm = 0.15;
[[nodiscard]] std::vector<Disc> place_discs(const std::vector<Strand>& strands, const Surroundings& around);

/// Where the needle points, of directions near `ahead`: so that it lies on as little as may be. `length_mm` from `from`.
[[nodiscard]] Point needle_direction(Point from, Point ahead, double length_mm, const Surroundings& around,
                                     const std::vector<Disc>& discs);

}  // namespace evencount::drawing
