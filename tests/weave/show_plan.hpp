#pragma once
/// Plans as short text, to compare them with ones written out by hand.

#include <fmt/format.h>

#include <string>
#include <string_view>

#include "weave/plan.hpp"

namespace evencount::weave::testing_support {

/// A plan in a line a row: "+c,s" picks up, "c,s" passes, "*c,s" joins, "_c,s" goes under the thread after that bead, "E I L O W"
/// turn (edge, inside, loop, outside, warp); '<', '>', 'v' (forth) or '^' (back) shows the travel of each row's mark, and with
/// `ways` that through each bead too.
inline std::string show(const Plan& plan, bool ways = false) {
  constexpr std::string_view arrows = "<>v^", turns = "EILOW";
  std::string text;
  for (std::size_t i = 0; i < plan.stitches.size(); ++i) {
    for (const Row& row : plan.rows)
      if (row.first_stitch == i)
        text += fmt::format("\n{} {}", row_name(row), arrows[static_cast<std::size_t>(row.travel)]);
    const Stitch& stitch = plan.stitches[i];
    std::string cell = fmt::format("{},{}", stitch.cell.column, stitch.cell.step);
    if (ways) cell += arrows[static_cast<std::size_t>(stitch.travel)];
    switch (stitch.act) {
      case Act::start:
        text += " start";
        break;
      case Act::finish:
        text += " finish";
        break;
      case Act::pick_up:
        text += " +" + cell;
        break;
      case Act::pass:
        text += " " + cell;
        break;
      case Act::join:
        text += " *" + cell;
        break;
      case Act::under:
        text += " _" + cell;
        break;
      case Act::turn:
        text += std::string(" ") + turns[static_cast<std::size_t>(stitch.turn)];
        break;
    }
  }
  return text + "\n";
}

}  // namespace evencount::weave::testing_support
