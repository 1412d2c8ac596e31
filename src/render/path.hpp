#pragma once
/// The light that comes along one ray: path tracing.
///
/// At every matt, coated or metal spot one soft box is sampled and one direction followed; the two are weighed by the power heuristic.
/// The dome comes by the followed directions alone: it is even, there is nothing to aim at. Glass bends, and splits the ray: near the camera
/// both parts are followed, farther on chance takes one. The camera does not see the boxes, only what they light.
///
/// Properties (tests/render/path_test.cpp):
///  (1) white furnace: in even light of radiance 1, surfaces that lose nothing can't be seen, within 1 %
///  (2) energy is never gained: no picture of any scene in that light has a mean above 1, within 1 %
///  (3) with and without aiming at the boxes the mean is the same, within 1.5 %
///  (4) with and without following both parts of a split ray, and spreading what is found by chance, within 3 %

#include "render/tracer.hpp"

namespace evencount::render {

struct PathOptions {
  int most_turns = 64;  ///< surfaces met along a path; light goes long ways in glass
  double brightest =
      12;  ///< what one path may add after its first matt surface; keeps rare paths from leaving bright dots
  /// Turns from the camera at which glass sends on both what it mirrors and what it lets through. A lamp in a mirror of 4 % is a rare
  /// and bright find by chance, and what most of a glass bead's noise comes of.
  int splitting_turns = 3;
  /// A soft box brighter than that is as much larger and darker for what comes to it through glass by chance: the same light, found more often.
  /// Only the bright patterns that glass throws get softer by it (after A. Kaplanyan, C. Dachsbacher, "Path Space Regularization for
  /// Holistic and Robust Light Transport", 2013; from memory).
  double brightest_by_chance = 4;
  bool aim_at_boxes = true;  ///< only tests turn it off
};

/// Which path it is.
struct PathNumber {
  std::uint32_t pixel = 0, sample = 0, seed = 0;
};

/// What a path brings, and what it met first: for the filter.
struct Seen {
  Spectrum light;
  Spectrum colour = grey(1);  ///< of the first surface, what it throws back of even light
  Vec3 normal;                ///< zero: nothing was met
  double depth_mm = 0;
  int rays = 0;
};

/// Set 0 of the pixel's points is the caller's: place in the pixel and in the lens.
[[nodiscard]] Seen look_along(const Scene& scene, const Tracer& tracer, Ray ray, PathNumber number,
                              const PathOptions& options);

}  // namespace evencount::render
