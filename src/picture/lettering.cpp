#include "picture/lettering.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"
#include "picture/lettering_cells.hpp"

namespace evencount::picture {
namespace {

using chart::Cell;

/// A letter's place in its line: places from the line's begin.
struct Set {
  const LetterDrawing* drawing;
  int at;
};

struct Line {
  std::string_view text;
  std::vector<Set> letters;
  int width = 0;
  int top = 0, bottom = 0;  ///< of its box
};

/// Where the first place of a line's first line lies, as one reads.
struct Origin {
  int along_line = 0, down = 0;
};

bool upright(const LetteringStyle& style) {
  return style.running == Running::across;
}

int word_space(const LetteringStyle& style) {
  constexpr int across = 3, along = 2;  // half a letter's width: from memory
  return style.word_space.value_or(upright(style) ? across : along);
}

/// Free places for a number of spaces between two letters, 0 within a word. Always odd.
int free_places(const LetteringStyle& style, int spaces) {
  if (upright(style)) return spaces == 0 ? style.letter_space : spaces * (word_space(style) + 1) - 1;
  return 2 * (spaces == 0 ? style.letter_space : spaces * word_space(style)) + 1;
}

Result<Done> check(const LetteringStyle& style) {
  constexpr int widest_space = 100;  // far beyond any use; keeps sums small
  const auto good = [&](int space, int least) { return space >= least && space <= widest_space; };
  const int between = style.letter_space, words = word_space(style);
  if (!good(between, 1) || !good(words, 1) || !good(style.line_space, 1))
    return Problem{ProblemCode::out_of_range, "spaces of a text",
                   fmt::format("{}, {} and {}", between, words, style.line_space),
                   fmt::format("1 to {} between letters, words and lines", widest_space)};
  if (upright(style) && (between % 2 == 0 || words % 2 == 0))
    return Problem{ProblemCode::out_of_range, "spaces of a text",
                   fmt::format("{} and {} columns", between, words),
                   "odd numbers of columns between letters and words, so that all letters of a line begin on "
                   "level columns"};
  return Done{};
}

Result<std::vector<Line>> set_lines(std::string_view text, const Alphabet& alphabet,
                                    const LetteringStyle& style) {
  std::vector<Line> lines;
  for (const std::string_view part : split(text, '\n')) {
    const auto letters = letters_of(alphabet, part, style.narrow);
    if (!letters) return letters.problem();
    Line line{.text = part, .bottom = alphabet.height};
    int spaces = 0;
    for (const LetterDrawing* drawing : *letters) {
      if (!drawing) {
        ++spaces;
        continue;
      }
      const int at = line.letters.empty() ? 0 : line.width + free_places(style, spaces);
      line.letters.push_back({drawing, at});
      line.width = at + drawing->width;
      line.top = std::min(line.top, drawing->top);
      line.bottom = std::max(line.bottom, drawing->bottom);
      spaces = 0;
    }
    lines.push_back(std::move(line));
  }
  if (std::all_of(lines.begin(), lines.end(), [](const Line& line) { return line.letters.empty(); }))
    return Problem{ProblemCode::bad_text, "text", text.empty() ? "nothing" : "nothing but spaces", "letters"};
  return lines;
}

template <typename Align>
int aligned(int free, Align align) {
  if (align == Align{}) return 0;
  return align == Align::middle ? free / 2 : free;
}

Problem too_large(std::string_view text, std::string_view what, int needed, int there) {
  return {ProblemCode::wrong_size, "text " + quote(text), fmt::format("{} {}", needed, what),
          fmt::format("at most {} {}, the window's", there, what)};
}

bool is_even(int number) {
  return number % 2 == 0;
}

/// Upright lines: any column to begin on; the lines of beads follow its shift.
Result<std::vector<Origin>> place_upright(std::string_view text, const std::vector<Line>& lines,
                                          const Frame& frame, const LetteringStyle& style) {
  std::vector<Origin> origins;
  int next = 0;  // the first half step that is free for the box of a line
  for (const Line& line : lines) {
    if (line.width > frame.along_line) return too_large(line.text, "columns", line.width, frame.along_line);
    Origin origin{aligned(frame.along_line - line.width, style.line), next - line.top};
    if (!is_even(origin.along_line + origin.down + frame.parity)) ++origin.down;
    origins.push_back(origin);
    next = origin.down + line.bottom + 2 * (style.line_space + 1);
  }
  const int first = (origins.front().down + lines.front().top) / 2,
            last = (origins.back().down + lines.back().bottom) / 2;
  const int steps = last - first + 1, there = frame.down / 2;
  if (steps > there) return too_large(text, "beads along the edge", steps, there);
  const int by = aligned(there - steps, style.stack) - first;
  for (Origin& origin : origins) origin.down += 2 * by;
  return origins;
}

/// Lines along the band: any column, and the half steps follow its shift.
Result<std::vector<Origin>> place_along(std::string_view text, const std::vector<Line>& lines,
                                        const Frame& frame, const LetteringStyle& style) {
  std::vector<Origin> origins;
  int next = 0;
  for (const Line& line : lines) {
    origins.push_back({0, next - line.top});
    next = origins.back().down + line.bottom + 1 + style.line_space;
  }
  const int columns = next - style.line_space;
  if (columns > frame.down) return too_large(text, "columns", columns, frame.down);
  const int by = aligned(frame.down - columns, style.stack);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    origins[i].down += by;
    const int first = is_even(origins[i].down + frame.parity) ? 0 : 1;
    const int free = frame.along_line - first - lines[i].width;
    if (free < 0)
      return too_large(lines[i].text, "beads along the edge", (first + lines[i].width + 1) / 2,
                       frame.along_line / 2);
    const int at = aligned(free, style.line);
    origins[i].along_line = first + at - at % 2;
  }
  return origins;
}

Result<Done> check_columns(const chart::Grid& grid) {
  if (grid.drop == 1) return Done{};
  return Problem{ProblemCode::wrong_size, "drawn letters",
                 grid.drop == 0 ? "columns that all lie level" : "columns that are shifted in pairs",
                 "columns every second of which lies half a bead further on (peyote, brick)"};
}

}  // namespace

Result<Lettering> letter(std::string_view text, const chart::Grid& grid, const Window& window,
                         chart::Bead bead, const LetteringStyle& style) {
  if (auto good = check(style); !good) return good.problem();
  const auto alphabet = alphabet_for(style);
  if (!alphabet) return alphabet.problem();
  const auto lines = set_lines(text, **alphabet, style);
  if (!lines) return lines.problem();
  if (auto good = check_columns(grid); !good) return good.problem();
  if (auto good = check_window(window); !good) return good.problem();
  const Frame frame = frame_of(window, style.running);
  const auto origins =
      upright(style) ? place_upright(text, *lines, frame, style) : place_along(text, *lines, frame, style);
  if (!origins) return origins.problem();
  std::vector<PlacedLetter> letters;
  for (std::size_t i = 0; i < lines->size(); ++i)
    for (const Set& set : (*lines)[i].letters) {
      PlacedLetter placed{set.drawing->character, static_cast<int>(i), {}};
      for (const Dot dot : set.drawing->beads)
        placed.beads.push_back(cell_of(window, style.running, (*origins)[i].along_line + set.at + dot.across,
                                       (*origins)[i].down + dot.down));
      std::sort(placed.beads.begin(), placed.beads.end(), step_after_step);
      letters.push_back(std::move(placed));
    }
  return stamped(std::move(letters), bead, grid);
}

Result<LetteringSize> lettering_size(std::string_view text, const LetteringStyle& style) {
  if (auto good = check(style); !good) return good.problem();
  const auto alphabet = alphabet_for(style);
  if (!alphabet) return alphabet.problem();
  const auto lines = set_lines(text, **alphabet, style);
  if (!lines) return lines.problem();
  const Frame frame = frame_of({{0, 0}, chart::most_columns, chart::most_edge}, style.running);
  LetteringStyle first = style;
  first.line = LineAlign::begin;
  first.stack = StackAlign::top;
  const auto origins =
      upright(style) ? place_upright(text, *lines, frame, first) : place_along(text, *lines, frame, first);
  if (!origins) return origins.problem();
  int along_line = 0;
  for (std::size_t i = 0; i < lines->size(); ++i)
    along_line = std::max(along_line, (*origins)[i].along_line + (*lines)[i].width);
  const int down = origins->back().down + lines->back().bottom + 1;
  if (upright(style)) return LetteringSize{along_line, (down + 1) / 2};
  return LetteringSize{down, (along_line + 1) / 2};
}

Result<chart::Edit> press_text(const chart::Chart& chart, const chart::Grid& grid, const chart::Stamp& stamp,
                               Cell at) {
  const Cell last{at.column + stamp.cells.columns() - 1, at.step + stamp.cells.edge() - 1};
  const bool around = grid.edge_round && stamp.cells.edge() <= chart.edge();
  if (at.column < 0 || at.step < 0 || last.column >= chart.columns() ||
      (last.step >= chart.edge() && !around))
    return Problem{ProblemCode::out_of_range, "text",
                   fmt::format("columns to {} and steps to {}", last.column, last.step),
                   fmt::format("columns to {} and steps to {}", chart.columns() - 1, chart.edge() - 1)};
  for (int step = 0; step < stamp.cells.edge(); ++step)
    for (int column = 0; column < stamp.cells.columns(); ++column)
      if (const Cell there{at.column + column, (at.step + step) % chart.edge()};
          stamp.cells.at({column, step}) != chart::no_bead && chart.at(there) == chart::no_bead)
        return Problem{ProblemCode::wrong_size, "text",
                       fmt::format("no bead at column {}, step {}", there.column, there.step),
                       "a bead under every bead of a letter"};
  return chart::press(chart, grid, stamp, {at.column, at.step % chart.edge()});
}

Result<chart::Edit> write_text(const chart::Chart& chart, const chart::Grid& grid, std::string_view text,
                               const Window& window, chart::Bead bead, const LetteringStyle& style) {
  const auto lettering = letter(text, grid, window, bead, style);
  if (!lettering) return lettering.problem();
  return press_text(chart, grid, lettering->stamp, lettering->at);
}

}  // namespace evencount::picture
