#pragma once
/// One moment of a plan as a diagram that a beader who has never done it can follow.

#include "drawing/marks.hpp"
#include "project/project.hpp"
#include "weave/moments.hpp"

namespace evencount::drawing {

struct StepStyle {
  Length bead_length = millimetres(7);  ///< of a bead as it is drawn, along its hole
  Length most_width = millimetres(80);  ///< a wider diagram is drawn with smaller beads; the numbers stay
  const language::Language* language = &language::english();  ///< of "tail", "new", "old"
};

/// The beads in the moment's window that are in place when it ends, in the gauge's proportion, drawn apart along their holes so
/// that the thread is seen between them. Beads strung in the moment are outlined strongly in their full colour, the others paler;
/// beads beyond the window are hinted at. The moment's thread is a thick line from bead to bead, dashed within beads, with an
/// arrowhead out of each and a number at each in order: white on dark where a bead is strung, dark on white where one
/// is gone through. The thread before it is a thin paler line. A needle leads it, a tail begins it, a cut ends it. At a
/// seam both ends are drawn with a gap between them, their rows named; a tube is unrolled round the moment.
///
/// Properties (tests/drawing/step_drawing_test.cpp), for every moment of every technique:
///  (1) every mark lies on the sheet, strokes included
///  (2) there is a number for each bead gone through, 1 up in order, and no two numbers' discs overlap
///  (3) each bead strung in the moment is drawn in its full legend colour, with a strong outline
///  (4) it is no wider than most_width, unless beads of 3.2 mm would have to be smaller still
///  (5) the same plan and moment give the same drawing
[[nodiscard]] Drawing step_drawing(const project::Project& project, const project::Band& band,
                                   const weave::Plan& plan, const weave::Moment& moment,
                                   const StepStyle& style = {});

}  // namespace evencount::drawing
