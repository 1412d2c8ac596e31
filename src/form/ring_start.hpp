#pragma once
/// A ring start: beads strung round a form like a necklace, as tubular peyote and bezels begin.
///
/// The holes run round the form, so the pitch round it is the gauge's column pitch, not the edge pitch. The
/// first two rounds are strung as one ring, which therefore needs an even number of beads.

#include "bead/bead_size.hpp"
#include "bead/gauge.hpp"
#include "form/form.hpp"

namespace evencount::form {

struct RingStart {
  int beads = 0;      ///< even, at least 4
  double strain = 0;  ///< closing chord / gauge.column - 1, at the position where the ring sits tightest
  bool operator==(const RingStart&) const = default;
};

/// The even number of beads whose closing chord, on the section moved outwards by half a bead, is nearest to
/// the column pitch (by ratio). Errors: those of section; out_of_range (a bead or gauge not above zero, or
/// more than 100,000 beads); too_few_beads (not even 4 go round).
[[nodiscard]] Result<RingStart> ring_start(const Form& form, const bead::Size& bead,
                                           const bead::Gauge& gauge);

}  // namespace evencount::form
