#include "picture/lettering.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <random>
#include <set>

#include "weave/technique.hpp"

namespace evencount::picture {
namespace {

using chart::Bead;
using chart::Cell;
using chart::Chart;
using chart::Grid;
using Random = std::mt19937;

constexpr Bead ground = 0, ink = 1;

int pick(Random& random, int low, int high) {
  return low + static_cast<int>(random() % static_cast<unsigned>(high - low + 1));
}

LetteringStyle random_style(Random& random) {
  LetteringStyle style;
  style.running = static_cast<Running>(pick(random, 0, 2));
  const bool across = style.running == Running::across;
  style.alphabet = across ? static_cast<AlphabetName>(pick(random, 0, 1)) : AlphabetName::five_columns;
  style.line = static_cast<LineAlign>(pick(random, 0, 2));
  style.stack = static_cast<StackAlign>(pick(random, 0, 2));
  style.letter_space = across ? 2 * pick(random, 0, 2) + 1 : pick(random, 1, 4);
  if (pick(random, 0, 1) == 0) style.word_space = across ? 2 * pick(random, 0, 4) + 1 : pick(random, 1, 6);
  style.line_space = pick(random, 1, 4);
  style.narrow = pick(random, 0, 1) == 0;
  return style;
}

std::string random_text(Random& random, const Alphabet& alphabet) {
  std::string text;
  const int length = pick(random, 1, 8);
  for (int i = 0; i < length; ++i) {
    const int kind = pick(random, 0, 9);
    if (kind == 0 && i > 0) text += ' ';
    if (kind == 1 && i > 0) text += '\n';
    text +=
        alphabet
            .letters[static_cast<std::size_t>(pick(random, 0, static_cast<int>(alphabet.letters.size()) - 1))]
            .character;
  }
  return text;
}

/// A text in a window that it fits, with some room around it.
struct Sample {
  std::string text;
  LetteringStyle style;
  Window window;
};

Sample random_sample(Random& random) {
  Sample sample;
  sample.style = random_style(random);
  sample.text = random_text(random, *find_alphabet(sample.style.alphabet, sample.style.running));
  const LetteringSize size = lettering_size(sample.text, sample.style).value();
  // One step more: from a shifted column the letters may reach half a bead further.
  sample.window = {{pick(random, 0, 9), pick(random, 0, 9)},
                   size.columns + pick(random, 0, 6),
                   size.steps + 1 + pick(random, 0, 6)};
  return sample;
}

Lettering lettered(const Sample& sample) {
  const auto lettering = letter(sample.text, {}, sample.window, ink, sample.style);
  EXPECT_TRUE(lettering.ok()) << message(lettering.problem()) << " " << sample.text;
  return *lettering;
}

bool holds(const Window& window, Cell cell) {
  return cell.column >= window.first.column && cell.column < window.first.column + window.columns &&
         cell.step >= window.first.step && cell.step < window.first.step + window.steps;
}

/// A bead's place in half pitches: column and half step.
Dot spot(Cell cell) {
  return {cell.column, Grid{}.along_halves(cell)};
}

/// A drawing as it comes to lie, up to where.
std::set<Dot> turned(const LetterDrawing& drawing, Running running) {
  std::set<Dot> dots;
  for (const Dot dot : drawing.beads)
    dots.insert(running == Running::across ? dot
                : running == Running::down ? Dot{-dot.down, dot.across}
                                           : Dot{dot.down, -dot.across});
  return dots;
}

std::set<Dot> moved_to_origin(const std::set<Dot>& dots) {
  int left = 1 << 20, top = 1 << 20;
  for (const Dot dot : dots) left = std::min(left, dot.across), top = std::min(top, dot.down);
  std::set<Dot> moved;
  for (const Dot dot : dots) moved.insert({dot.across - left, dot.down - top});
  return moved;
}

TEST(Lettering, EveryBeadLiesInTheWindowAndNoLettersTouch) {
  Random random(1);
  for (int round = 0; round < 400; ++round) {
    const Sample sample = random_sample(random);
    const Lettering lettering = lettered(sample);
    SCOPED_TRACE(sample.text);
    std::map<Cell, std::size_t> owner;
    for (std::size_t i = 0; i < lettering.letters.size(); ++i)
      for (const Cell cell : lettering.letters[i].beads) {
        EXPECT_TRUE(holds(sample.window, cell));
        EXPECT_TRUE(owner.emplace(cell, i).second);
      }
    for (const auto& [cell, letter] : owner)
      for (const auto& [other, of] : owner) {
        if (letter == of) continue;
        const Dot a = spot(cell), b = spot(other);
        const int aside = std::abs(a.across - b.across), below = std::abs(a.down - b.down);
        EXPECT_FALSE((aside == 0 && below == 2) || (aside == 1 && below == 1));
      }
  }
}

TEST(Lettering, EachLetterHasTheBeadsOfItsDrawingWhereverItBegins) {
  Random random(2);
  for (int round = 0; round < 400; ++round) {
    const Sample sample = random_sample(random);
    const Alphabet& alphabet = *find_alphabet(sample.style.alphabet, sample.style.running);
    for (const PlacedLetter& letter : lettered(sample).letters) {
      std::set<Dot> dots;
      for (const Cell cell : letter.beads) dots.insert(spot(cell));
      const LetterDrawing& drawing = *find_letter(alphabet, letter.character, sample.style.narrow);
      EXPECT_EQ(moved_to_origin(dots), moved_to_origin(turned(drawing, sample.style.running)))
          << letter.character;
    }
  }
}

/// The stamp shows the letters and nothing else.
TEST(Lettering, TheStampIsTheLetters) {
  Random random(3);
  for (int round = 0; round < 200; ++round) {
    const Lettering lettering = lettered(random_sample(random));
    std::set<Cell> cells, stamped;
    for (const PlacedLetter& letter : lettering.letters)
      cells.insert(letter.beads.begin(), letter.beads.end());
    for (int step = 0; step < lettering.stamp.cells.edge(); ++step)
      for (int column = 0; column < lettering.stamp.cells.columns(); ++column)
        if (lettering.stamp.cells.at({column, step}) == ink)
          stamped.insert({lettering.at.column + column, lettering.at.step + step});
    EXPECT_EQ(cells, stamped);
    EXPECT_EQ(lettering.stamp.shift, lettering.at.column % 2);
  }
}

TEST(Lettering, PressedAndCopiedItIsTheSameStamp) {
  Random random(4);
  for (int round = 0; round < 200; ++round) {
    const Sample sample = random_sample(random);
    const Lettering lettering = lettered(sample);
    const Chart blank = Chart::make(sample.window.first.column + sample.window.columns + 3,
                                    sample.window.first.step + sample.window.steps + 3, ground)
                            .value();
    const auto edit = press_text(blank, {}, lettering.stamp, lettering.at);
    ASSERT_TRUE(edit.ok()) << message(edit.problem());
    EXPECT_EQ(edit->chart, write_text(blank, {}, sample.text, sample.window, ink, sample.style)->chart);
    const Cell last{lettering.at.column + lettering.stamp.cells.columns() - 1,
                    lettering.at.step + lettering.stamp.cells.edge() - 1};
    EXPECT_EQ(*chart::copy(edit->chart, {}, {lettering.at, last}, ground), lettering.stamp);
    EXPECT_EQ(chart::undone(*edit), blank);
  }
}

TEST(Lettering, AShiftedBeginningMovesTheWholeTextByHalfABead) {
  for (const AlphabetName alphabet : {AlphabetName::five_columns, AlphabetName::three_columns}) {
    const LetteringStyle style{.alphabet = alphabet, .line = LineAlign::begin, .stack = StackAlign::top};
    const std::string text = "Ab 8\nR\u00C9";
    const auto even = letter(text, {}, {{4, 2}, 60, 40}, ink, style),
               odd = letter(text, {}, {{5, 2}, 60, 40}, ink, style);
    ASSERT_TRUE(even.ok() && odd.ok());
    for (std::size_t i = 0; i < even->letters.size(); ++i) {
      std::set<Dot> moved, there;
      for (const Cell cell : even->letters[i].beads)
        moved.insert({spot(cell).across + 1, spot(cell).down + 1});
      for (const Cell cell : odd->letters[i].beads) there.insert(spot(cell));
      EXPECT_EQ(moved, there);
    }
  }
}

/// Mirrored from left to right is what is seen from the back: an odd number of columns has such a mirror, and the letters' beads follow it.
TEST(Lettering, AMirroredChartHoldsTheMirroredLetters) {
  const Window window{{1, 1}, 41, 9};
  const Chart blank = Chart::make(43, 12, ground).value();
  const Chart written = write_text(blank, {}, "EVEN 24", window, ink)->chart;
  const auto mirror = chart::apply(written, {}, chart::Symmetry::mirror_across);
  ASSERT_TRUE(mirror.ok());
  for (int step = 0; step < written.edge(); ++step)
    for (int column = 0; column < written.columns(); ++column)
      EXPECT_EQ(mirror->chart.at({42 - column, step}), written.at({column, step}));
  EXPECT_EQ(mirror->chart, chart::mirrored(written));
}

TEST(Lettering, DownAndUpAreEachOthersHalfTurn) {
  Random random(5);
  for (int round = 0; round < 200; ++round) {
    Sample sample = random_sample(random);
    sample.style.running = Running::down;
    sample.style.alphabet = AlphabetName::five_columns;
    sample.style.letter_space = pick(random, 1, 3);
    sample.style.word_space.reset();
    sample.text = random_text(random, *find_alphabet(AlphabetName::five_columns, Running::down));
    const LetteringSize size = lettering_size(sample.text, sample.style).value();
    // A half turn of the lattice needs an even number of columns.
    const int columns = 2 * ((size.columns + pick(random, 0, 7) + 1) / 2);
    sample.window = {{0, 0}, columns, size.steps + 1 + pick(random, 0, 5)};
    const Lettering down = lettered(sample);
    sample.style.running = Running::up;
    const Lettering up = lettered(sample);
    ASSERT_EQ(down.letters.size(), up.letters.size());
    for (std::size_t i = 0; i < down.letters.size(); ++i) {
      std::set<Cell> turned;
      for (const Cell cell : down.letters[i].beads)
        turned.insert({columns - 1 - cell.column, sample.window.steps - 1 - cell.step});
      EXPECT_EQ(turned, std::set<Cell>(up.letters[i].beads.begin(), up.letters[i].beads.end()))
          << sample.text;
    }
  }
}

struct Extent {
  int left, right, top, bottom;  ///< free columns and beads around the ink
};

Extent free_around(const Lettering& lettering, const Window& window) {
  return {lettering.at.column - window.first.column,
          window.first.column + window.columns - lettering.at.column - lettering.stamp.cells.columns(),
          lettering.at.step - window.first.step,
          window.first.step + window.steps - lettering.at.step - lettering.stamp.cells.edge()};
}

TEST(Lettering, AlignmentLeavesTheRoomWhereItSays) {
  for (const std::string text : {"H", "HEH", "E\nH"})  // letters that fill their boxes
    for (int columns = 24; columns < 28; ++columns)
      for (int first = 0; first < 2; ++first) {
        const Window window{{first, 3}, columns, 24};
        const auto around = [&](LineAlign line, StackAlign stack) {
          return free_around(*letter(text, {}, window, ink, {.line = line, .stack = stack}), window);
        };
        const Extent begin = around(LineAlign::begin, StackAlign::top),
                     middle = around(LineAlign::middle, StackAlign::middle),
                     end = around(LineAlign::end, StackAlign::bottom);
        EXPECT_EQ(begin.left, 0);
        EXPECT_EQ(begin.top, 0);
        EXPECT_EQ(end.right, 0);
        EXPECT_EQ(end.bottom, 0);
        EXPECT_LE(std::abs(middle.left - middle.right), 1);
        EXPECT_LE(std::abs(middle.top - middle.bottom), 1);
      }
}

TEST(Lettering, AlignmentAlongTheBandToo) {
  for (const Running running : {Running::down, Running::up})
    for (int columns = 8; columns < 12; ++columns)
      for (int first = 0; first < 2; ++first) {
        const Window window{{first, 2}, columns, 30};
        const auto around = [&](LineAlign line, StackAlign stack) {
          return free_around(
              *letter("EZE", {}, window, ink, {.running = running, .line = line, .stack = stack}), window);
        };
        const Extent begin = around(LineAlign::begin, StackAlign::top),
                     middle = around(LineAlign::middle, StackAlign::middle),
                     end = around(LineAlign::end, StackAlign::bottom);
        const bool down = running == Running::down;
        // A line begins on a level or a shifted bead: up to half a bead from the window's end.
        EXPECT_LE(down ? begin.top : begin.bottom, 1);
        EXPECT_LE(down ? end.bottom : end.top, 1);
        EXPECT_EQ(down ? begin.right : begin.left, 0);
        EXPECT_EQ(down ? end.left : end.right, 0);
        EXPECT_LE(std::abs(middle.left - middle.right), 1);
        EXPECT_LE(std::abs(middle.top - middle.bottom), 1);
      }
}

TEST(Lettering, SpacesAreAsAsked) {
  const auto columns = [](std::string_view text, const LetteringStyle& style) {
    return lettering_size(text, style).value().columns;
  };
  const auto steps = [](std::string_view text, const LetteringStyle& style) {
    return lettering_size(text, style).value().steps;
  };
  EXPECT_EQ(columns("H", {}), 5);
  EXPECT_EQ(columns("HH", {}), 11);
  EXPECT_EQ(columns("H H", {}), 13);
  EXPECT_EQ(columns("  H H  ", {}), 13);
  EXPECT_EQ(columns("HH", {.letter_space = 3}), 13);
  EXPECT_EQ(columns("H H", {.word_space = 7}), 17);
  EXPECT_EQ(columns("H  H", {.word_space = 7}), 25);
  EXPECT_EQ(steps("H", {}), 7);
  EXPECT_EQ(steps("H\nH", {}), 15);
  EXPECT_EQ(steps("H\nH", {.line_space = 4}), 18);
  EXPECT_EQ(steps("H\n\nH", {}), 23);
  EXPECT_EQ(steps("\u00C4", {}), 10);  // two beads of dots, one between
  EXPECT_EQ(steps("g", {}), 10);       // its tail
  const LetteringStyle three{.alphabet = AlphabetName::three_columns};
  EXPECT_EQ(columns("HELLO", three), 19);
  EXPECT_EQ(columns("MN", three), 11);
  EXPECT_EQ(columns("MN", {.alphabet = AlphabetName::three_columns, .narrow = true}), 7);
  const LetteringStyle down{.running = Running::down};
  EXPECT_EQ(columns("E", down), 5);
  EXPECT_EQ(columns("E\nE", down), 11);
  EXPECT_EQ(steps("E", down), 4);
  EXPECT_EQ(steps("EE", down), 9);
  EXPECT_EQ(steps("E E", down), 10);
}

/// lettering_size is what a window from a column that isn't shifted must have, and one less is too small.
TEST(Lettering, TheSizeIsTheLeastThatFits) {
  Random random(6);
  for (int round = 0; round < 200; ++round) {
    Sample sample = random_sample(random);
    if (sample.style.running == Running::across) sample.style.line = LineAlign::begin;
    // Down, the last column of the window is where the heads are.
    const LetteringSize size = lettering_size(sample.text, sample.style).value();
    const int even = sample.style.running == Running::down ? (size.columns - 1) % 2 : 0;
    sample.window = {{even, 0}, size.columns, size.steps};
    if (sample.style.running != Running::up) {
      EXPECT_TRUE(letter(sample.text, {}, sample.window, ink, sample.style).ok()) << sample.text;
    }
    for (const Window& small : {Window{{0, 0}, size.columns - 1, size.steps + 2},
                                Window{{0, 0}, size.columns + 2, size.steps - 1}}) {
      if (small.columns == 0 || small.steps == 0) continue;
      const auto refused = letter(sample.text, {}, small, ink, sample.style);
      ASSERT_FALSE(refused.ok()) << sample.text;
      EXPECT_EQ(refused.problem().code, ProblemCode::wrong_size);
    }
  }
}

TEST(Lettering, WhatDoesNotFitIsRefusedWithTheFigures) {
  const auto wide = letter("ANNABELLE", {}, {{0, 0}, 24, 30}, ink);
  ASSERT_FALSE(wide.ok());
  EXPECT_EQ(wide.problem().code, ProblemCode::wrong_size);
  EXPECT_EQ(message(wide.problem()),
            "text 'ANNABELLE': found 53 columns, expected at most 24 columns, the window's");
  const auto high = letter("A\nB", {}, {{0, 0}, 24, 12}, ink);
  EXPECT_EQ(
      message(high.problem()),
      "text 'A?B': found 15 beads along the edge, expected at most 12 beads along the edge, the window's");
  const auto one = letter("A\nANNA", {}, {{0, 0}, 22, 30}, ink);
  EXPECT_EQ(one.problem().where, "text 'ANNA'");
  const auto along = letter("MOON", {}, {{0, 0}, 6, 20}, ink, {.running = Running::down});
  EXPECT_EQ(
      message(along.problem()),
      "text 'MOON': found 24 beads along the edge, expected at most 20 beads along the edge, the window's");
  EXPECT_EQ(letter("A\nA", {}, {{0, 0}, 8, 20}, ink, {.running = Running::up}).problem().found, "11 columns");
}

TEST(Lettering, BadInputIsRefused) {
  const Window window{{0, 0}, 40, 20};
  const auto code = [&](std::string_view text, const Grid& grid, const Window& in,
                        const LetteringStyle& style) {
    const auto lettering = letter(text, grid, in, ink, style);
    EXPECT_FALSE(lettering.ok());
    return lettering.ok() ? ProblemCode::system_failure : lettering.problem().code;
  };
  EXPECT_EQ(code("", {}, window, {}), ProblemCode::bad_text);
  EXPECT_EQ(code(" \n  ", {}, window, {}), ProblemCode::bad_text);
  EXPECT_EQ(code("A\xC3", {}, window, {}), ProblemCode::bad_text);
  EXPECT_EQ(code("\u0416", {}, window, {}), ProblemCode::unknown_name);
  EXPECT_EQ(code("\u00C9", {}, window, {.running = Running::down}), ProblemCode::unknown_name);
  EXPECT_EQ(code("A", {}, window, {.alphabet = AlphabetName::three_columns, .running = Running::up}),
            ProblemCode::unknown_name);
  EXPECT_EQ(code("A", {.drop = 0}, window, {}), ProblemCode::wrong_size);
  EXPECT_EQ(code("A", {.drop = 2}, window, {}), ProblemCode::wrong_size);
  EXPECT_EQ(code("A", {}, window, {.letter_space = 2}), ProblemCode::out_of_range);
  EXPECT_EQ(code("A", {}, window, {.word_space = 4}), ProblemCode::out_of_range);
  EXPECT_EQ(code("A", {}, window, {.letter_space = -1}), ProblemCode::out_of_range);
  EXPECT_EQ(code("A", {}, window, {.line_space = 101}), ProblemCode::out_of_range);
  EXPECT_TRUE(letter("A", {}, window, ink, {.running = Running::down, .letter_space = 2}).ok());
  for (const Window& bad :
       {Window{{-1, 0}, 9, 9}, Window{{0, -1}, 9, 9}, Window{{0, 0}, 0, 9}, Window{{0, 0}, 9, 0},
        Window{{0, 0}, 2'000'000'000, 9}, Window{{0, 2'000'000'000}, 9, 2'000'000'000}})
    EXPECT_EQ(code("A", {}, bad, {}), ProblemCode::out_of_range);
  EXPECT_EQ(code(std::string(100'000, 'M'), {}, window, {}), ProblemCode::wrong_size);
}

/// Bytes of any kind are written or refused, and what is written lies in the window.
TEST(Lettering, AnyBytesAreTaken) {
  Random random(7);
  const Window window{{1, 1}, 60, 40};
  int written = 0, refused = 0;
  for (int round = 0; round < 3000; ++round) {
    std::string bytes;
    for (int i = pick(random, 1, 6); i > 0; --i)
      bytes += static_cast<char>(pick(random, 0, 2) == 0 ? pick(random, 0, 255) : pick(random, 32, 126));
    LetteringStyle style;
    style.alphabet = static_cast<AlphabetName>(pick(random, 0, 1));
    style.running = static_cast<Running>(pick(random, 0, 2));
    const auto lettering = letter(bytes, {}, window, ink, style);
    ++(lettering.ok() ? written : refused);
    if (!lettering) continue;
    for (const PlacedLetter& letter : lettering->letters)
      for (const Cell cell : letter.beads) ASSERT_TRUE(holds(window, cell));
  }
  EXPECT_GT(written, 300);
  EXPECT_GT(refused, 300);
}

TEST(Lettering, NothingOfATextIsLost) {
  const Chart blank = Chart::make(12, 24, ground).value();
  const Window across_the_seam{{0, 20}, 12, 9};
  EXPECT_EQ(write_text(blank, {}, "A", across_the_seam, ink).problem().code, ProblemCode::out_of_range);
  const auto ring = write_text(blank, {.edge_round = true}, "A", across_the_seam, ink);
  ASSERT_TRUE(ring.ok()) << message(ring.problem());
  EXPECT_EQ(ring->changes.size(),
            find_letter(*find_alphabet(AlphabetName::five_columns, Running::across), "A")->beads.size());
  EXPECT_EQ(write_text(blank, {}, "A", {{8, 0}, 5, 9}, ink).problem().code, ProblemCode::out_of_range);
  Chart holed = blank;
  for (int step = 0; step < 24; ++step) holed.set({4, step}, chart::no_bead);
  EXPECT_EQ(write_text(holed, {}, "E", {{0, 0}, 12, 9}, ink).problem().code, ProblemCode::wrong_size);
  EXPECT_TRUE(write_text(holed, {}, "E", {{5, 0}, 7, 9}, ink).ok());
}

/// The techniques whose columns alternate are those that drawn letters are for.
TEST(Lettering, PeyoteAndBrickTakeThem) {
  for (const weave::Technique& technique : weave::techniques()) {
    const int drop = technique.lattice(12, 12).drop;
    EXPECT_EQ(letter("A", {.drop = drop}, {{0, 0}, 12, 12}, ink).ok(), drop == 1) << technique.id;
  }
}

}  // namespace
}  // namespace evencount::picture
