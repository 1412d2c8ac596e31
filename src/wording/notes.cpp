#include <fmt/format.h>

#include <algorithm>

#include "language/texts.hpp"
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

using language::Language;
using language::Texts;

/// "Row 3 ends", "Rows 3 and 9 end", "Row 3 and every second row after it, to row 21, end".
std::string which_rows(const std::vector<int>& rows, const Language& language) {
  if (rows.size() == 1) return language.say(&Texts::row_ends, {{"n", rows.front()}});
  bool every_second = rows.size() > 2;
  for (std::size_t i = 1; i < rows.size(); ++i) every_second = every_second && rows[i] == rows[i - 1] + 2;
  if (every_second)
    return language.say(&Texts::every_second_row_ends, {{"first", rows.front()}, {"last", rows.back()}});
  std::vector<std::string> numbers;
  for (const int row : rows) numbers.push_back(fmt::format("{}", row));
  return language.say(&Texts::rows_end, {{"list", language.list(numbers)}});
}

}  // namespace

std::string technique_note(const weave::Plan& plan, const Language& language) {
  const auto technique = weave::find_technique(plan.technique);
  return technique && technique->note ? std::string(language.text(technique->note)) : std::string();
}

std::string closing_note(const weave::Plan& plan, const Language& language) {
  if (plan.closure == weave::Closure::sew) return std::string(language.text(&Texts::closing_sewn));
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
  const bool right = zip->travel == weave::Travel::right;
  return language.say(&Texts::closing_zipped,
                      {{"low", low},
                       {"high", high},
                       {"n", across},
                       {"way", language.text(right ? &Texts::to_the_right : &Texts::to_the_left)}});
}

std::string turn_note(const weave::Plan& plan, const Language& language) {
  std::vector<int> figure_eights, loops;
  for (const weave::Row& row : plan.rows) {
    if (!weave::has_beads(row.kind)) continue;
    const Ending ending = ending_of(plan, row);
    if (ending.figure_eight) figure_eights.push_back(row.first_number);
    if (ending.loop) loops.push_back(row.first_number);
  }
  std::string note;
  if (!figure_eights.empty())
    note += language.say(&Texts::figure_eight_note, {{"rows_end", which_rows(figure_eights, language)}});
  if (!loops.empty())
    note += (note.empty() ? "" : " ") + language.say(&Texts::loop_note, {{"rows_end", which_rows(loops, language)}});
  return note;
}

}  // namespace evencount::wording
