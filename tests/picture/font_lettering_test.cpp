#include "picture/font_lettering.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <set>

#include "picture/legibility.hpp"

namespace evencount::picture {
namespace {

using chart::Cell;
using Random = std::mt19937;

int pick(Random& random, int low, int high) {
  return low + static_cast<int>(random() % static_cast<unsigned>(high - low + 1));
}

constexpr chart::Bead ink = 1;
const bead::Gauge gauge{millimetres(1.35), millimetres(1.66), "test"};

/// A picture of cells, each pixel a part of one: `fine` pixels to a column and twice as many to a bead.
Coverage picture_of(const std::set<Cell>& cells, const chart::Grid& grid, int columns, int steps, int fine) {
  const int halves = 2 * steps + 1;
  Coverage coverage{
      columns * fine, halves * fine, columns * gauge.column.mm(), halves * gauge.edge.mm() / 2, {}};
  coverage.shares.assign(static_cast<std::size_t>(coverage.width) * coverage.height, 0.0f);
  for (const Cell cell : cells)
    for (int y = 0; y < 2 * fine; ++y)
      for (int x = 0; x < fine; ++x)
        coverage.shares[static_cast<std::size_t>(grid.along_halves(cell) * fine + y) * coverage.width +
                        cell.column * fine + x] = 1.0f;
  return coverage;
}

std::set<Cell> cells_of(const FontLettering& lettering) {
  std::set<Cell> cells;
  for (int step = 0; step < lettering.stamp.cells.edge(); ++step)
    for (int column = 0; column < lettering.stamp.cells.columns(); ++column)
      if (lettering.stamp.cells.at({column, step}) != chart::no_bead)
        cells.insert({lettering.at.column + column, lettering.at.step + step});
  return cells;
}

/// Cells that touch the left, the right and both ends of a piece, so that only one place in its window is right.
std::set<Cell> random_cells(Random& random, int columns, int steps) {
  std::set<Cell> cells{{0, 0}, {columns - 1, steps - 1}};
  for (int i = 0; i < columns * steps / 3; ++i)
    cells.insert({pick(random, 0, columns - 1), pick(random, 0, steps - 1)});
  return cells;
}

Coverage random_blots(Random& random) {
  Coverage coverage{60, 40, 60 * 0.2, 40 * 0.2, std::vector<float>(2400, 0.0f)};
  for (int blot = 0; blot < 6; ++blot) {
    const int x0 = pick(random, 0, 45), y0 = pick(random, 0, 30);
    for (int y = y0; y < y0 + 10; ++y)
      for (int x = x0; x < x0 + 15; ++x)
        coverage.shares[static_cast<std::size_t>(y) * 60 + x] =
            static_cast<float>(pick(random, 0, 100)) / 100;
  }
  return coverage;
}

TEST(FontLettering, CellsThatAreCoveredExactlyAreTheCells) {
  Random random(1);
  for (const int drop : {0, 1, 2})
    for (int round = 0; round < 60; ++round) {
      const chart::Grid grid{.drop = drop};
      const int columns = 2 * pick(random, 2, 5), steps = pick(random, 3, 9), fine = pick(random, 1, 6);
      const std::set<Cell> cells = random_cells(random, columns, steps);
      const InkSums sums(picture_of(cells, grid, columns, steps, fine));
      for (const double threshold : {0.05, 0.5, 0.95}) {
        const auto covered =
            covered_cells(sums, {0, 0, columns * gauge.column.mm(), (steps + 0.5) * gauge.edge.mm()}, grid,
                          gauge.column.mm(), gauge.edge.mm(), threshold);
        EXPECT_EQ(std::set<Cell>(covered.begin(), covered.end()), cells);
      }
    }
}

/// Wherever the picture is cut off around its ink, it is found where the beads are: there the cells meet it without doubt.
TEST(FontLettering, ThePictureIsMovedToWhereItMeetsTheBeads) {
  Random random(2);
  for (int round = 0; round < 40; ++round) {
    const chart::Grid grid;
    const int columns = 2 * pick(random, 2, 5), steps = pick(random, 3, 9);
    const std::set<Cell> cells = random_cells(random, columns, steps);
    FontText text;
    text.text = picture_of(cells, grid, columns, steps, 4);
    const Window window{{2, 3}, columns + 2, steps + 2};
    const auto lettering =
        letter_in_font(text, grid, gauge, window, ink, {.line = LineAlign::begin, .stack = StackAlign::top});
    ASSERT_TRUE(lettering.ok()) << message(lettering.problem());
    std::set<Cell> moved;
    for (const Cell cell : cells) moved.insert({cell.column + 2, cell.step + 3});
    EXPECT_EQ(cells_of(*lettering), moved);
  }
}

TEST(FontLettering, ALowerThresholdTakesNoBeadAway) {
  Random random(3);
  for (int round = 0; round < 60; ++round) {
    const InkSums sums(random_blots(random));
    const BoxMm place{3.1 + round * 0.01, 2.7, 12, 8};
    std::set<Cell> last;
    for (const double threshold : {1.0, 0.8, 0.5, 0.3, 0.05}) {
      const auto covered = covered_cells(sums, place, {}, gauge.column.mm(), gauge.edge.mm(), threshold);
      const std::set<Cell> cells(covered.begin(), covered.end());
      EXPECT_TRUE(std::includes(cells.begin(), cells.end(), last.begin(), last.end()));
      last = cells;
    }
  }
}

TEST(FontLettering, EveryBeadLiesInTheWindow) {
  Random random(4);
  for (int round = 0; round < 120; ++round) {
    FontText text;
    text.text = random_blots(random);
    const FontStyle style{static_cast<Running>(pick(random, 0, 2)),
                          static_cast<LineAlign>(pick(random, 0, 2)),
                          static_cast<StackAlign>(pick(random, 0, 2)), 0.2};
    const Window window{{pick(random, 0, 5), pick(random, 0, 5)}, pick(random, 9, 14), pick(random, 8, 12)};
    const auto lettering = letter_in_font(text, {.drop = pick(random, 0, 2)}, gauge, window, ink, style);
    if (!lettering) {
      EXPECT_EQ(lettering.problem().code, ProblemCode::wrong_size);
      continue;
    }
    for (const Cell cell : cells_of(*lettering)) {
      EXPECT_TRUE(cell.column >= window.first.column && cell.column < window.first.column + window.columns);
      EXPECT_TRUE(cell.step >= window.first.step && cell.step < window.first.step + window.steps);
    }
  }
}

/// Up is down by half a turn, where the window and the middle allow it: an even number of columns, and moves that a half turn has too.
TEST(FontLettering, UpIsDownByHalfATurn) {
  Random random(5);
  for (int round = 0; round < 40; ++round) {
    const int columns = 2 * pick(random, 2, 5), steps = pick(random, 4, 9);
    FontText text;
    text.text = rotated(picture_of(random_cells(random, columns, steps), {}, columns, steps, 4), Running::up);
    const Window window{{0, 0}, columns + 2, steps + 2};
    FontStyle style{.running = Running::down, .line = LineAlign::begin, .stack = StackAlign::bottom};
    const auto down = letter_in_font(text, {}, gauge, window, ink, style);
    style.running = Running::up;
    const auto up = letter_in_font(text, {}, gauge, window, ink, style);
    ASSERT_TRUE(down.ok() && up.ok());
    std::set<Cell> turned;
    for (const Cell cell : cells_of(*down))
      turned.insert({window.columns - 1 - cell.column, window.steps - 1 - cell.step});
    EXPECT_EQ(cells_of(*up), turned);
  }
}

/// A part of a picture has the same ink wherever the turned picture has it.
TEST(FontLettering, ATurnedBoxHoldsTheSameInk) {
  Random random(8);
  for (int round = 0; round < 100; ++round) {
    const Coverage upright = random_blots(random);
    const BoxMm box{pick(random, 0, 80) / 10.0, pick(random, 0, 50) / 10.0, pick(random, 1, 40) / 10.0,
                    pick(random, 1, 30) / 10.0};
    const double area = InkSums(upright).area_mm2(box);
    for (const Running running : {Running::across, Running::down, Running::up})
      EXPECT_NEAR(InkSums(rotated(upright, running))
                      .area_mm2(turned_box(box, upright.width_mm, upright.height_mm, running)),
                  area, 1e-9);
  }
}

TEST(FontLettering, StampsCanBePressed) {
  Random random(6);
  for (const int drop : {0, 1, 2}) {
    FontText text;
    text.text = random_blots(random);
    const chart::Grid grid{.drop = drop};
    const auto lettering = letter_in_font(text, grid, gauge, {{1, 1}, 14, 12}, ink);
    ASSERT_TRUE(lettering.ok());
    const auto edit =
        press_text(chart::Chart::make(16, 14, 0).value(), grid, lettering->stamp, lettering->at);
    ASSERT_TRUE(edit.ok()) << message(edit.problem());
    EXPECT_EQ(edit->changes.size(), cells_of(*lettering).size());
  }
}

/// Letters as pictures of our own drawings are as far from each other as the drawings.
TEST(FontLettering, LegibilityIsThatOfTheBeads) {
  const Alphabet& five = *find_alphabet(AlphabetName::five_columns, Running::across);
  // Above the text a strip that is no whole number of beads high.
  constexpr int strip = 4;  // rows of an eighth of a bead
  const double baseline_mm = (7 + strip / 8.0) * gauge.edge.mm();
  const auto image_of = [&](std::string_view character, double left_mm) {
    const LetterDrawing& drawing = *find_letter(five, character);
    std::set<Cell> cells;
    for (const Dot dot : drawing.beads) cells.insert({dot.across, dot.down / 2});
    const double top_mm = (drawing.top / 2.0 - 7) * gauge.edge.mm();
    Coverage whole = picture_of(cells, {}, 5, 7, 4);
    // Cut to the ink, as pictures of letters are.
    const BoxMm box = InkSums(whole).ink();
    const int first = static_cast<int>(std::lround(box.top / (whole.height_mm / whole.height)));
    const int rows = static_cast<int>(std::lround(box.height / (whole.height_mm / whole.height)));
    Coverage cut{whole.width, rows, whole.width_mm, rows * whole.height_mm / whole.height, {}};
    cut.shares.assign(whole.shares.begin() + static_cast<std::ptrdiff_t>(first) * whole.width,
                      whole.shares.begin() + static_cast<std::ptrdiff_t>(first + rows) * whole.width);
    return LetterImage{std::string(character), left_mm, top_mm, baseline_mm, cut};
  };
  FontText text;
  text.letters = {image_of("O", 0), image_of("K", 6 * gauge.column.mm())};
  for (const LetterDrawing& letter : five.letters)
    if (letter.character.size() == 1 && is_letter(letter) && letter.bottom <= 12 && letter.width == 5)
      text.others.push_back(image_of(letter.character, 0));
  std::set<Cell> cells;
  for (const auto& [character, at] : {std::pair{"O", 0}, std::pair{"K", 6}})
    for (const Dot dot : find_letter(five, character)->beads) cells.insert({dot.across + at, dot.down / 2});
  text.text = picture_of(cells, {}, 11, 7, 4);
  text.text.height += strip;
  text.text.height_mm += strip / 8.0 * gauge.edge.mm();
  text.text.shares.insert(text.text.shares.begin(), static_cast<std::size_t>(strip) * text.text.width, 0.0f);
  const auto lettering = letter_in_font(text, {}, gauge, {{0, 0}, 12, 8}, ink,
                                        {.line = LineAlign::begin, .stack = StackAlign::top});
  ASSERT_TRUE(lettering.ok());
  ASSERT_EQ(cells_of(*lettering), cells);
  const Legibility found = legibility(text, *lettering);
  ASSERT_EQ(found.letters.size(), 2u);
  for (const Likeness& likeness : found.letters) {
    int nearest = 1000;
    for (const LetterImage& other : text.others)
      if (other.character != likeness.letter)
        nearest = std::min(
            nearest, difference(*find_letter(five, likeness.letter), *find_letter(five, other.character)));
    EXPECT_EQ(likeness.beads, nearest) << likeness.letter << " " << likeness.other;
  }
}

TEST(FontLettering, BadInputIsRefused) {
  Random random(7);
  FontText text;
  text.text = random_blots(random);
  const Window window{{0, 0}, 20, 20};
  const auto code = [&](const Window& in, const FontStyle& style) {
    return letter_in_font(text, {}, gauge, in, ink, style).problem().code;
  };
  EXPECT_EQ(code(window, {.threshold = 0}), ProblemCode::out_of_range);
  EXPECT_EQ(code(window, {.threshold = 1.01}), ProblemCode::out_of_range);
  EXPECT_EQ(code(window, {.threshold = std::nan("")}), ProblemCode::out_of_range);
  EXPECT_EQ(code({{0, 0}, 0, 5}, {}), ProblemCode::out_of_range);
  EXPECT_EQ(code({{0, 0}, 5, 5}, {}), ProblemCode::wrong_size);
  FontText blank;
  blank.text = {4, 4, 1, 1, std::vector<float>(16, 0.0f)};
  EXPECT_EQ(letter_in_font(blank, {}, gauge, window, ink).problem().code, ProblemCode::bad_text);
  blank.text.shares.assign(16, 0.01f);
  EXPECT_EQ(letter_in_font(blank, {}, gauge, window, ink).problem().code, ProblemCode::bad_text);
  EXPECT_EQ(letter_in_font({}, {}, gauge, window, ink).problem().code, ProblemCode::out_of_range);
}

}  // namespace
}  // namespace evencount::picture
