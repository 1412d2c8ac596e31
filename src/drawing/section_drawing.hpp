#pragma once
/// A band on its form, seen along the holes: the section with every bead in its place.

#include "bead/bead_size.hpp"
#include "drawing/marks.hpp"
#include "form/fit.hpp"

namespace evencount::drawing {

struct SectionStyle {
  Length largest_side = millimetres(120);  ///< of the drawn section: it is enlarged to that
};

/// The section of the fit's form to scale, its best candidate's beads round it: those seen square on from the front, those on
/// the tapered edge and those on the back in three colours, the seam, the sizes of the form, and the slack (or what is
/// missing) as a bar of its own length. Beads are circles of the bead's diameter, as far apart as the ring's chord:
/// they touch the form, and overlap each other only by what the strain says.
/// Errors: those of form::faces.
[[nodiscard]] Result<Drawing> section_drawing(const form::Fit& fit, const bead::Size& bead,
                                              const SectionStyle& style = {});

}  // namespace evencount::drawing
