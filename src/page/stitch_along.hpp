#pragma once
/// The stitch-along page: a project as one HTML file that a maker opens on a telephone, without a network, and follows row by row.
///
/// The file holds everything it shows. It asks nothing of any other place: its policy (Content-Security-Policy) allows the style and the
/// script it carries, by their SHA-256, pictures within the file, and nothing else. Without its script it is a page of words to read and
/// print.
///
/// Properties (tests/page/stitch_along_test.cpp, tests/page/along_in_browser.mjs):
///  (1) the words in the file read back (wording::read_words) to the chart of every band; those for the left hand to chart::mirrored
///  (2) each row's places, with the beads that its words name, make the same chart
///  (3) the same project gives the same bytes
///  (4) no text of a project is taken for markup, script or style, and none turns the direction of what stands beside it
///  (5) of one design the parts of the file agree: the counts of rows, of colours and of the supplies; else there is no file

#include <string>
#include <vector>

#include "language/language.hpp"
#include "project/project.hpp"

namespace evencount::page {

/// A band that has no left-handed mode, and why.
struct NoLeftHand {
  std::string band;
  std::string reason;
  bool operator==(const NoLeftHand&) const = default;
};

struct StitchAlong {
  std::string html;
  std::vector<NoLeftHand> without_left_hand;
};

/// The page of a project.
///
/// For the left hand the engine plans chart::mirrored in the band's own technique, and the page shows that plan in a mirror: whoever works
/// it from the other side gets a band that looks like the right-handed one. Where the technique can't make the mirrored chart (a shape
/// that leans to one side), the band has no left-handed mode, and the page says so.
///
/// Errors: proof_failed while the project has errors, as for a booklet; bad_plan when the counts disagree or the words do not read back
/// (a fault of ours that must not reach a maker); those of project::supply_list and to_svg.
[[nodiscard]] Result<StitchAlong> stitch_along(const project::Project& project,
                                               const language::Language& language = language::english());

}  // namespace evencount::page
