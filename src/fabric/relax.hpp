#pragma once
/// Letting beads and thread settle: position-based relaxation.
///
/// Round after round, every link that is too long draws its two mouths together, every two beads that overlap push each other apart,
/// and every bead in the form is pushed off it; each by just as much as sets that one right, shifting and turning the beads as rigid
/// bodies would be. It stops when all is within tolerance, or after most_rounds: then the residual tells how far it got. Always in
/// the same order, and so with the same result.
///
/// Properties (tests/fabric/relax_test.cpp):
///  (1) a fabric within tolerance that isn't drawn tight stays as it is, to the last bit
///  (2) the same start gives the same bytes
///  (3) turning, moving or mirroring the start (and obstacle) does so to the result, within 1e-6 mm
///  (4) the residual is that of the beads as they are returned: residual_of says the same

#include "fabric/fabric.hpp"
#include "fabric/obstacle.hpp"

namespace evencount::fabric {

struct RelaxOptions {
  double overlap_tolerance =
      0.005;  ///< as Residual::worst_overlap. A third of what cylinder beads scatter by (src/bead/bead_size.cpp)
  double link_tolerance =
      0.005;  ///< as Residual::worst_link. Thread gives that much without being felt (form/fit.hpp: 0.5 %)
  double inside_tolerance_mm = 0.005;  ///< as Residual::worst_inside_form_mm
  int most_rounds = 3000;
  /// Draw the thread as short as the beads let it, before it is held: for rounds that are drawn in.
  bool draw_tight = false;
  Obstacle obstacle;  ///< empty: nothing in the way
};

/// Beads keep their order and sizes. A fabric without beads comes back as it is.
[[nodiscard]] Fabric relax(const Fabric& start, const RelaxOptions& options);

/// How far a fabric is from what its beads and thread allow.
[[nodiscard]] Residual residual_of(const Fabric& fabric, const Obstacle& obstacle = {});

}  // namespace evencount::fabric
