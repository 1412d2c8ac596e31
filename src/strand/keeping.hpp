#pragma once
/// Whether everything holds: bands stay on their forms, cords pass their holes, ends are made fast.
///
/// Findings are plain data; the proof shows them. Each names the smallest change that mends it.
///
/// A band that slides is held on each side by the first of these that it meets before more than half of it has
/// left its form:
///  - beads on every cord, one on each or one on both, as large as form/staying_on.hpp asks. The second of its
///  three sizes is enough while
///    half of the band is on the form when its edge meets the middle of the bead, whatever lies between; else
///    the third
///  - the band of a neighbouring form, or a bare form or bar, that it has no room to go over. Neighbouring
///  bands are taken to
///    rest in the middle of their forms
///
/// Properties (tests/strand/keeping_test.cpp):
///  (1) a strand read from its other end has the same findings at the mirrored pieces
///  (2) a larger stop bead, a thinner cord or a larger hole never adds a finding of its own kind
///  (3) the change that a finding names, made, takes the finding away

#include <string>
#include <string_view>
#include <vector>

#include "strand/strung.hpp"

namespace evencount::strand {

enum class FindingCode {
  band_not_held,       ///< nothing near enough keeps a sliding band on its form
  stop_only_catches,   ///< what is there is touched, but the band can be pushed over it
  stops_push_apart,    ///< beads on the two cords have no room beside each other next to a form
  cord_does_not_pass,  ///< the cord does not go through a hole as often as it must
  knot_slips,          ///< a knot goes through the hole that it leans on
  holes_apart_differ,  ///< neighbours whose two holes are differently far apart
  end_not_fast,        ///< nothing makes the cord fast where it meets the closing
  wire_not_closed,     ///< wire can't be knotted end to end
};
[[nodiscard]] std::string_view finding_name(FindingCode code);

struct Finding {
  FindingCode code = FindingCode::band_not_held;
  int piece = -1;     ///< index in pieces_of; -1: the closing
  std::string where;  ///< "Full moon (piece 12), before": before and after in the order of stringing
  std::string found;
  std::string expected;
  std::string mend;  ///< the smallest change
  Length
      size;  ///< what the change needs: a stop's diameter, a hole's or cord's, a gap's; 0 where it is no size
  bool operator==(const Finding&) const = default;
};
/// "WHERE: FOUND; EXPECTED. MEND."
[[nodiscard]] std::string message(const Finding& finding);

/// How often the cord goes through each piece: once, twice through crimps, `both` and what joins two cords,
/// and twice through what
/// lies within 20 mm of a crimp on wire, whose tail is hidden there (from memory). One entry a piece of
/// pieces_of, then the closing where there is one.
[[nodiscard]] std::vector<int> cord_passes(const Strung& strung, const Counts& counts);

/// Every finding, in the order of the pieces, the closing's last.
/// Errors: those of form::smallest_stop_bead.
[[nodiscard]] Result<std::vector<Finding>> findings_of(const Strung& strung, const Counts& counts);

/// The thickest cord that goes so many times through a hole by the rule of bead::passes_that_fit, its end as
/// thick as itself; and the
/// smallest hole for a cord.
[[nodiscard]] Length thickest_for(Length hole, int passes);
[[nodiscard]] Length smallest_hole_for(Length cord, int passes);

}  // namespace evencount::strand
