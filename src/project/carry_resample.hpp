#pragma once
/// The ways of carrying a drawing over, one function each. Internal to the room: carry.hpp chooses between them and lists what changed.

#include "project/carry_overlap.hpp"

namespace evencount::project {

struct Drawn {
  chart::Chart chart;
  std::vector<std::optional<chart::Cell>> source;
  std::vector<char> by_line;  ///< which cells a claim decided; empty for none
  std::vector<LostTrail> lost;
  int period_across = 0, period_along = 0;
};

[[nodiscard]] Result<Drawn> resample(const chart::Chart& chart, const Frame& from, const Frame& to,
                                     bool keep_lines);
[[nodiscard]] Result<Drawn> repeat(const chart::Chart& chart, const Frame& from, const Frame& to);
[[nodiscard]] Result<Drawn> centre(const chart::Chart& chart, const Frame& from, const Frame& to,
                                   chart::Bead border);

/// Whether the drawing has a period in each direction in which the sizes differ, and both pieces end at the same place in it.
[[nodiscard]] bool goes_on_in_period(const chart::Chart& chart, const Frame& from, const Frame& to);

}  // namespace evencount::project
