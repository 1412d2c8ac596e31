#pragma once
/// Between text as one reads it and the cells of a chart. Internal to the room.

#include <vector>

#include "picture/lettering.hpp"

namespace evencount::picture {

/// A window as one reads text in it. Places count along a line, lines down from it; one way they count columns, the other half
/// steps. A bead lies where place + line + parity is even.
struct Frame {
  int along_line = 0;
  int down = 0;
  int parity = 0;
};

[[nodiscard]] Frame frame_of(const Window& window, Running running);

/// The cell of a place in the frame where a bead lies.
[[nodiscard]] chart::Cell cell_of(const Window& window, Running running, int along_line, int down);

[[nodiscard]] inline bool step_after_step(chart::Cell a, chart::Cell b) {
  return a.step != b.step ? a.step < b.step : a.column < b.column;
}

/// Errors: out_of_range (no cells, or beyond a chart's sizes).
[[nodiscard]] Result<Done> check_window(const Window& window);

/// Errors: unknown_name, where there are no drawings for text that runs this way.
[[nodiscard]] Result<const Alphabet*> alphabet_for(const LetteringStyle& style);

/// The letters in the smallest stamp that holds them and can be pressed. There must be a bead. Errors: out_of_range (beyond a chart's sizes).
[[nodiscard]] Result<Lettering> stamped(std::vector<PlacedLetter> letters, chart::Bead bead,
                                        const chart::Grid& grid);

}  // namespace evencount::picture
