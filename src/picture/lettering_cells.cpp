#include "picture/lettering_cells.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>

namespace evencount::picture {

// A bead lies where column + half step is even, both counted from the chart's corner. `down` counts the columns backwards from the
// window's last, `up` the half steps from its last.
Frame frame_of(const Window& window, Running running) {
  const int halves = 2 * window.steps;
  switch (running) {
    case Running::across:
      return {window.columns, halves, window.first.column % 2};
    case Running::down:
      return {halves, window.columns, (window.first.column + window.columns - 1) % 2};
    case Running::up:
      return {halves, window.columns, (window.first.column + 1) % 2};
  }
  return {};
}

chart::Cell cell_of(const Window& window, Running running, int along_line, int down) {
  int column = along_line, half = down;
  if (running == Running::down) {
    column = window.columns - 1 - down;
    half = along_line;
  } else if (running == Running::up) {
    column = down;
    half = 2 * window.steps - 1 - along_line;
  }
  return {window.first.column + column, window.first.step + half / 2};
}

Result<Done> check_window(const Window& window) {
  const bool inside = window.first.column >= 0 && window.first.step >= 0 && window.columns >= 1 &&
                      window.steps >= 1 && window.first.column < chart::most_columns &&
                      window.columns <= chart::most_columns && window.first.step < chart::most_edge &&
                      window.steps <= chart::most_edge;
  if (inside) return Done{};
  return Problem{ProblemCode::out_of_range, "window",
                 fmt::format("{} columns and {} steps from column {}, step {}", window.columns, window.steps,
                             window.first.column, window.first.step),
                 "columns and steps of a chart, at least one of each"};
}

Result<const Alphabet*> alphabet_for(const LetteringStyle& style) {
  if (const Alphabet* alphabet = find_alphabet(style.alphabet, style.running)) return alphabet;
  return Problem{ProblemCode::unknown_name, "text along the band",
                 fmt::format("the {}-column alphabet", alphabet_id(style.alphabet)),
                 "an alphabet with letters on their side: five"};
}

Result<Lettering> stamped(std::vector<PlacedLetter> letters, chart::Bead bead, const chart::Grid& grid) {
  constexpr int far = std::numeric_limits<int>::max();
  chart::Cell first{far, far}, last{0, 0};
  for (const PlacedLetter& letter : letters)
    for (const chart::Cell cell : letter.beads) {
      first = {std::min(first.column, cell.column), std::min(first.step, cell.step)};
      last = {std::max(last.column, cell.column), std::max(last.step, cell.step)};
    }
  if (grid.drop > 1)
    first.column -= first.column % grid.drop;  // a stamp begins with a whole group of columns
  auto cells = chart::Chart::make(last.column - first.column + 1, last.step - first.step + 1, chart::no_bead);
  if (!cells) return cells.problem();
  for (const PlacedLetter& letter : letters)
    for (const chart::Cell cell : letter.beads)
      cells->set({cell.column - first.column, cell.step - first.step}, bead);
  return Lettering{{std::move(*cells), grid.shift_of(first.column)}, first, std::move(letters)};
}

}  // namespace evencount::picture
