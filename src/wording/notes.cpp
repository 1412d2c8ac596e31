#include <fmt/format.h>

#include <algorithm>

#include "weave/technique.hpp"
#include "wording/words.hpp"

namespace evencount::wording {
namespace {

using weave::Act;

/// The number of the row in which the bead of a cell was strung.
int row_of(weave::Cell cell, const weave::Plan& plan) {
  return plan.lattice.along_halves(cell) + 1;
}

/// What happens at the end of one row that is not a plain turn.
struct Ending {
  bool figure_eight = false;
  bool loop = false;
};

Ending ending_of(const weave::Plan& plan, const weave::Row& row) {
  Ending ending;
  int turns_since_a_bead = 0;
  for (std::size_t i = row.first_stitch; i < row.end_stitch; ++i) {
    const weave::Stitch& stitch = plan.stitches[i];
    if (stitch.act == Act::pick_up || stitch.act == Act::under) turns_since_a_bead = 0;
    if (stitch.act == Act::turn) ++turns_since_a_bead;
    if (stitch.act == Act::turn && stitch.turn == weave::Turn::loop) ending.loop = true;
  }
  // Down through the beads below, back, and up again: no other turn comes back so often.
  ending.figure_eight = turns_since_a_bead >= 3;
  return ending;
}

/// "Row 3 ends", "Rows 3 and 9 end", "Row 3 and every second row after it, to row 21, end".
std::string which_rows(const std::vector<int>& rows) {
  if (rows.size() == 1) return fmt::format("Row {} ends", rows.front());
  bool every_second = rows.size() > 2;
  for (std::size_t i = 1; i < rows.size(); ++i) every_second = every_second && rows[i] == rows[i - 1] + 2;
  if (every_second)
    return fmt::format("Row {} and every second row after it, to row {}, end", rows.front(), rows.back());
  std::string text = fmt::format("Rows {}", rows.front());
  for (std::size_t i = 1; i < rows.size(); ++i)
    text += fmt::format("{}{}", i + 1 == rows.size() ? " and " : ", ", rows[i]);
  return text + " end";
}

}  // namespace

std::string technique_note(const weave::Plan& plan) {
  const auto technique = weave::find_technique(plan.technique);
  return technique ? std::string(technique->note) : std::string();
}

std::string closing_note(const weave::Plan& plan) {
  if (plan.closure == weave::Closure::sew)
    return "Bring the ends together and sew them side by side: column by column, go through the end bead of one "
           "side, back through its neighbour on the other, and through the first again, then on to the next column.";
  const auto zip = std::find_if(plan.rows.begin(), plan.rows.end(),
                                [](const weave::Row& row) { return row.kind == weave::RowKind::zip; });
  if (zip == plan.rows.end()) return {};
  int across = 0;
  int low = 0, high = 0;
  for (std::size_t i = zip->first_stitch; i < zip->end_stitch; ++i) {
    const weave::Stitch& stitch = plan.stitches[i];
    if (stitch.act == Act::turn) break;
    if (stitch.act != Act::join) continue;
    const int row = row_of(stitch.cell, plan);
    low = across == 0 ? row : std::min(low, row);
    high = std::max(high, row);
    ++across;
  }
  return fmt::format(
      "Bring the ends together so that the beads of row {} and of row {} interlock, and zip them: pass "
      "through {} beads to the {}, one from each end in turn, and draw the thread tight. Then come back once "
      "through the same beads.",
      low, high, across, zip->travel == weave::Travel::right ? "right" : "left");
}

std::string turn_note(const weave::Plan& plan) {
  std::vector<int> figure_eights, loops;
  for (const weave::Row& row : plan.rows) {
    if (!weave::has_beads(row.kind)) continue;
    const Ending ending = ending_of(plan, row);
    if (ending.figure_eight) figure_eights.push_back(row.first_number);
    if (ending.loop) loops.push_back(row.first_number);
  }
  std::string note;
  if (!figure_eights.empty())
    note += which_rows(figure_eights) +
            " with a figure-8 turn: go down through the beads below the last one, turn, and come back up "
            "through it from the other side, so that it is held.";
  if (!loops.empty())
    note += (note.empty() ? "" : " ") + which_rows(loops) +
            " with a loop: slip the needle under the thread that lies along the edge, then pass back through "
            "the last bead.";
  return note;
}

}  // namespace evencount::wording
