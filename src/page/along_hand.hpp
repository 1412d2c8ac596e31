#pragma once
/// A band as one hand works it: rows, places and words. Private to this room.

#include <vector>

#include "page/sections.hpp"

namespace evencount::page {

enum class Side { right, left };

/// A line of the word chart with the places of its beads.
struct WorkedLine {
  weave::Row row;
  wording::WordLine words;
  std::vector<weave::Spot> places;  ///< of its beads in the order of stringing, as they are seen
};

struct Hand {
  Side side = Side::right;
  project::Band band;      ///< the band whose plan this is: for the left hand its chart is mirrored
  weave::Plan plan;        ///< of `band`
  weave::Plan seen;        ///< the plan as the maker sees it: for the left hand, left and right have changed places
  wording::WordChart words;  ///< of `seen`
  weave::ThreadUse thread;
  std::vector<WorkedLine> lines;
};

/// Errors: those of project::plan_of and weave::thread_use; bad_plan when the words do not read back to the band's chart, or hold another
/// number of beads than the plan.
[[nodiscard]] Result<Hand> make_hand(const project::Project& project, const project::Band& band, Side side,
                                     const language::Language& language);

/// Every direction across the piece turned round.
[[nodiscard]] weave::Plan sides_changed(weave::Plan plan);

/// The drawing in a mirror that stands beside it; texts stay legible.
/// Its regions stay.
[[nodiscard]] drawing::Drawing in_mirror(const drawing::Drawing& drawing);

}  // namespace evencount::page
