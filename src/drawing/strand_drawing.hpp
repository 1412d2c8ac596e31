#pragma once
/// What is strung, to scale: laid out flat, and as it is worn.
///
/// Properties (tests/drawing/strand_drawing_test.cpp):
///  (1) flat: bodies of pieces lie one after another, in all as long as what is strung, and as high as they
///  are across
///  (2) worn: one body a rigid link, each as long as its link; none nearer the wrist than it lies
///  (3) every mark lies on its sheet

#include "drawing/marks.hpp"
#include "project/project.hpp"
#include "strand/fitting.hpp"
#include "strand/two_cords.hpp"

namespace evencount::drawing {

struct StrandStyle {
  Length longest_row =
      millimetres(250);  ///< of the flat layout; it goes on in the next row between two pieces
  bool heading = true;   ///< the size and the length above; off where a page says them
};

/// The layout flat and to true size, in rows from left to right: cords, every piece, bands with the front of
/// their faces in their colours, the
/// wearer's size and the length above. The extra beads of the outer cord, which is the lower one, are shown by
/// their count below the gap.
[[nodiscard]] Drawing strand_flat(const project::Project& project, const strand::Strung& strung,
                                  const strand::StrandFit& fit, const strand::TwoCords& curve,
                                  const StrandStyle& style = {});

/// As worn, to true size. On a wrist or neck: seen along the arm, the chain of rigid parts round the wearer's
/// ellipse with the ease that is left. By finished
/// length: the loop laid out in a ring as it lies, its faces outwards. Errors: those of strand::chain_round.
[[nodiscard]] Result<Drawing> strand_worn(const project::Project& project, const strand::Strung& strung,
                                          const strand::StrandFit& fit);

}  // namespace evencount::drawing
