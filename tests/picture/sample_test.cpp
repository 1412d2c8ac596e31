#include "picture/sample.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <deque>
#include <numbers>
#include <random>

#include "chart/chart.hpp"
#include "colour/lab.hpp"

namespace evencount::picture {
namespace {

using Random = std::mt19937;

double uniform(Random& random, double from, double to) {
  return from + (to - from) * (static_cast<double>(random()) / 4294967296.0);
}

bead::Gauge gauge_of(double column_mm, double edge_mm) {
  return {millimetres(column_mm), millimetres(edge_mm), "test"};
}
const bead::Gauge cylinders = gauge_of(1.35, 1.66);

Image random_image(Random& random, int width, int height, bool alpha = false) {
  Image image{width, height, {}, alpha};
  const auto light = [&] { return static_cast<float>(uniform(random, 0, 1)); };
  for (int i = 0; i < width * height; ++i)
    image.pixels.push_back({light(), light(), light(), alpha ? light() : 1.0F});
  return image;
}

Image turned(const Image& image) {
  Image result{image.height, image.width, image.pixels, image.has_alpha};
  for (int y = 0; y < result.height; ++y)
    for (int x = 0; x < result.width; ++x) result.at(x, y) = image.at(y, image.height - 1 - x);
  return result;
}

Image mirrored(const Image& image) {
  Image result = image;
  for (int y = 0; y < image.height; ++y)
    for (int x = 0; x < image.width; ++x) result.at(x, y) = image.at(image.width - 1 - x, y);
  return result;
}

double worst(const CellLight& a, const CellLight& b) {
  if (a.columns != b.columns || a.steps != b.steps) return 1e9;
  double most = 0;
  for (std::size_t i = 0; i < a.light.size(); ++i)
    most = std::max({most, std::abs(a.light[i].red - b.light[i].red),
                     std::abs(a.light[i].green - b.light[i].green),
                     std::abs(a.light[i].blue - b.light[i].blue)});
  return most;
}

CellLight sampled(const Image& image, const CellWindow& window, const chart::Grid& grid,
                  const bead::Gauge& gauge, const Placement& placement = {}) {
  const auto cells = sample(image, window, grid, gauge, placement);
  EXPECT_TRUE(cells.ok()) << message(cells.problem());
  return cells ? *cells : CellLight{};
}

Placement random_placement(Random& random, const Image& image) {
  Placement placement;
  placement.mirrored = random() % 2 == 0;
  placement.quarter_turns = static_cast<int>(random() % 9) - 4;
  if (random() % 2 == 0) placement.turn_degrees = uniform(random, -180, 180);
  placement.fit = static_cast<PictureFit>(random() % 3);
  placement.ground = {uniform(random, 0, 1), uniform(random, 0, 1), uniform(random, 0, 1)};
  if (random() % 2 == 0) {
    const double left = uniform(random, 0, image.width * 0.6), top = uniform(random, 0, image.height * 0.6);
    placement.crop = PictureRectangle{left, top, uniform(random, 0.3, image.width - left),
                                      uniform(random, 0.3, image.height - top)};
  }
  return placement;
}

TEST(Sample, APictureOfOneColourGivesCellsOfThatColour) {
  Random random(51);
  for (int round = 0; round < 300; ++round) {
    Image image{1 + static_cast<int>(random() % 40), 1 + static_cast<int>(random() % 40), {}};
    const colour::Linear light{0.3, 0.6, 0.1};
    image.pixels.assign(static_cast<std::size_t>(image.width * image.height), {0.3F, 0.6F, 0.1F, 1});
    Placement placement = random_placement(random, image);
    placement.keep_detail = random() % 2 == 0;
    // What is beside a contained or a stretched turned picture is the ground; let it be the same.
    if (placement.fit != PictureFit::fill) placement.ground = {0.3F, 0.6F, 0.1F};
    const CellWindow window{{static_cast<int>(random() % 3), 0},
                            1 + static_cast<int>(random() % 9),
                            1 + static_cast<int>(random() % 9)};
    const CellLight cells =
        sampled(image, window, {.drop = static_cast<int>(random() % 3)}, cylinders, placement);
    ASSERT_EQ(cells.light.size(), static_cast<std::size_t>(window.columns * window.steps));
    for (const colour::Linear& cell : cells.light) {
      ASSERT_NEAR(cell.red, static_cast<double>(0.3F), 1e-12);
      ASSERT_NEAR(cell.green, static_cast<double>(0.6F), 1e-12);
      ASSERT_NEAR(cell.blue, static_cast<double>(0.1F), 1e-12);
    }
    for (const colour::Rgb& cell : to_rgb(cells)) ASSERT_EQ(cell, colour::to_rgb(light));
  }
}

/// The green light of an unturned, whole, stretched picture between two heights, over all its width: pixels as they are.
double light_between(const Image& image, double top, double bottom, double left, double right) {
  double sum = 0;
  for (int y = 0; y < image.height; ++y)
    for (int x = 0; x < image.width; ++x) {
      const double down = std::max(0.0, std::min<double>(y + 1, bottom) - std::max<double>(y, top));
      const double across = std::max(0.0, std::min<double>(x + 1, right) - std::max<double>(x, left));
      sum += down * across * double{image.at(x, y).green} * double{image.at(x, y).alpha};
    }
  return sum;
}

TEST(Sample, LightIsConserved) {
  Random random(52);
  for (int round = 0; round < 60; ++round) {
    const Image image = random_image(random, 5 + static_cast<int>(random() % 60),
                                     5 + static_cast<int>(random() % 60), round % 2 == 0);
    const int columns = 1 + static_cast<int>(random() % 12), steps = 1 + static_cast<int>(random() % 12);
    const int drop = static_cast<int>(random() % 3);
    const bool round_band = random() % 2 == 0;
    const chart::Grid grid{.drop = drop, .edge_round = round_band};
    Placement placement{.fit = PictureFit::stretch, .ground = {0, 0, 0}, .meets_itself = round_band};
    const CellLight cells = sampled(image, {{0, 0}, columns, steps}, grid, cylinders, placement);
    double of_cells = 0;
    for (const colour::Linear& cell : cells.light) of_cells += cell.green;
    // In pixels of the picture: what lies over the cells of each column.
    const bool shifted = drop > 0 && columns > drop;
    const double height = steps + (shifted && !round_band ? 0.5 : 0.0), step = image.height / height,
                 column = image.width / static_cast<double>(columns);
    double of_picture = 0;
    for (int i = 0; i < columns; ++i) {
      const double from = round_band ? 0 : grid.shift_of(i) / 2.0;
      of_picture += light_between(image, from * step, (from + steps) * step, i * column, (i + 1) * column);
    }
    ASSERT_NEAR(of_cells * step * column / of_picture, 1, 1e-11);
    if (shifted && !round_band) continue;
    ASSERT_NEAR(of_cells * step * column / light_between(image, 0, image.height, 0, image.width), 1, 1e-11);
  }
}

TEST(Sample, TurnedMirroredAndCroppedLightIsConservedToo) {
  // On a window without shifts in which the whole turned picture lies, nothing is lost whatever the angle.
  Random random(53);
  for (int round = 0; round < 60; ++round) {
    const Image image =
        random_image(random, 3 + static_cast<int>(random() % 50), 3 + static_cast<int>(random() % 50), true);
    Placement placement = random_placement(random, image);
    placement.fit = round % 2 == 0 ? PictureFit::contain : PictureFit::stretch;
    placement.ground = {0, 0, 0};
    const PictureRectangle crop =
        placement.crop.value_or(PictureRectangle{0, 0, double(image.width), double(image.height)});
    const double angle = (placement.quarter_turns * 90 + placement.turn_degrees) * std::numbers::pi / 180;
    const double width = crop.width * std::abs(std::cos(angle)) + crop.height * std::abs(std::sin(angle));
    const double height = crop.width * std::abs(std::sin(angle)) + crop.height * std::abs(std::cos(angle));
    const int columns = 1 + static_cast<int>(random() % 9), steps = 1 + static_cast<int>(random() % 9);
    const CellLight cells = sampled(image, {{0, 0}, columns, steps}, {.drop = 0}, cylinders, placement);
    double of_cells = 0;
    for (const colour::Linear& cell : cells.light) of_cells += cell.green;
    double cell_area = width / columns * (height / steps);  // in pixels, stretched
    if (placement.fit == PictureFit::contain) {
      const double mm_a_pixel = std::min(columns * 1.35 / width, steps * 1.66 / height);
      cell_area = 1.35 * 1.66 / (mm_a_pixel * mm_a_pixel);
    }
    const double of_picture =
        light_between(image, crop.top, crop.top + crop.height, crop.left, crop.left + crop.width);
    ASSERT_NEAR(of_cells * cell_area / of_picture, 1, 1e-9) << round;
  }
}

TEST(Sample, ExactAgainstPixelsThatFitTheCells) {
  // Cells of 1 x 2 mm on pixels of 1 mm: column 1 lies one pixel lower.
  Random random(54);
  const Image image = random_image(random, 3, 9);
  const CellLight cells = sampled(image, {{0, 0}, 3, 4}, {.drop = 1}, gauge_of(1, 2), {});
  for (int column = 0; column < 3; ++column)
    for (int step = 0; step < 4; ++step) {
      const int y = 2 * step + column % 2;
      ASSERT_NEAR(cells.at(column, step).red,
                  (double(image.at(column, y).red) + double(image.at(column, y + 1).red)) / 2, 1e-12);
    }
  // A window that begins at column 1 is shifted the other way.
  const CellLight later = sampled(image, {{1, 5}, 3, 4}, {.drop = 1}, gauge_of(1, 2), {});
  EXPECT_NEAR(later.at(0, 0).red, (double(image.at(0, 1).red) + double(image.at(0, 2).red)) / 2, 1e-12);
  EXPECT_NEAR(later.at(1, 0).red, (double(image.at(1, 0).red) + double(image.at(1, 1).red)) / 2, 1e-12);
}

TEST(Sample, OnAClosedBandTheLastShiftedCellSeesBothEnds) {
  Random random(55);
  const Image image = random_image(random, 2, 8);
  const CellLight cells =
      sampled(image, {{0, 0}, 2, 4}, {.drop = 1, .edge_round = true}, gauge_of(1, 2), {.meets_itself = true});
  EXPECT_NEAR(cells.at(1, 3).blue, (double(image.at(1, 7).blue) + double(image.at(1, 0).blue)) / 2, 1e-12);
  EXPECT_NEAR(cells.at(0, 3).blue, (double(image.at(0, 6).blue) + double(image.at(0, 7).blue)) / 2, 1e-12);
}

TEST(Sample, QuartersTurnThePixels) {
  Random random(56);
  for (int round = 0; round < 60; ++round) {
    const Image image =
        random_image(random, 2 + static_cast<int>(random() % 30), 2 + static_cast<int>(random() % 30), true);
    Placement placement = random_placement(random, image);
    placement.crop.reset();
    placement.mirrored = false;
    const CellWindow window{{0, 0}, 1 + static_cast<int>(random() % 8), 1 + static_cast<int>(random() % 8)};
    const CellLight cells = sampled(image, window, {.drop = 1}, cylinders, placement);
    Placement four = placement, one = placement, by_angle = placement;
    four.quarter_turns += 4;
    EXPECT_EQ(sampled(image, window, {.drop = 1}, cylinders, four), cells);
    one.quarter_turns -= 1;
    EXPECT_LE(worst(sampled(turned(image), window, {.drop = 1}, cylinders, one), cells), 1e-9);
    by_angle.quarter_turns -= 1;
    by_angle.turn_degrees += 90;
    EXPECT_LE(worst(sampled(image, window, {.drop = 1}, cylinders, by_angle), cells), 1e-9);
  }
}

TEST(Sample, TurningWhatFillsIsTurningTheCells) {
  // On square cells without shifts, a quarter clockwise of the picture is a quarter clockwise of the chart.
  Random random(57);
  const Image image = random_image(random, 31, 17);
  const CellLight flat = sampled(image, {{0, 0}, 7, 4}, {.drop = 0}, gauge_of(1, 1), {});
  const CellLight upright = sampled(image, {{0, 0}, 4, 7}, {.drop = 0}, gauge_of(1, 1), {.quarter_turns = 1});
  for (int column = 0; column < 4; ++column)
    for (int step = 0; step < 7; ++step)
      EXPECT_NEAR(upright.at(column, step).red, flat.at(step, 3 - column).red, 1e-12);
}

TEST(Sample, MirroredTwiceIsTheSame) {
  Random random(58);
  for (int round = 0; round < 40; ++round) {
    const Image image =
        random_image(random, 2 + static_cast<int>(random() % 30), 2 + static_cast<int>(random() % 30), true);
    Placement placement = random_placement(random, image);
    placement.crop.reset();
    Placement other = placement;
    other.mirrored = !placement.mirrored;
    const CellWindow window{{0, 0}, 5, 6};
    EXPECT_LE(worst(sampled(mirrored(image), window, {.drop = 1}, cylinders, other),
                    sampled(image, window, {.drop = 1}, cylinders, placement)),
              1e-9);
  }
}

TEST(Sample, ContainShowsGroundBesideAndFillNone) {
  Image image{10, 10, {}};
  image.pixels.assign(100, {0, 0, 0, 1});
  const colour::Linear ground{0.5, 0.25, 0.125};
  // 20 x 10 mm: the picture stands in the middle, 10 x 10.
  const CellLight contained = sampled(image, {{0, 0}, 4, 2}, {.drop = 0}, gauge_of(5, 5),
                                      {.fit = PictureFit::contain, .ground = ground});
  for (int step = 0; step < 2; ++step) {
    EXPECT_EQ(contained.at(0, step), ground);
    EXPECT_NEAR(contained.at(1, step).red, 0, 1e-12);
    EXPECT_NEAR(contained.at(2, step).red, 0, 1e-12);
    EXPECT_EQ(contained.at(3, step), ground);
  }
  Random random(59);
  for (int round = 0; round < 100; ++round) {
    const CellLight filled =
        sampled(image, {{0, 0}, 1 + static_cast<int>(random() % 9), 1 + static_cast<int>(random() % 9)},
                {.drop = 1}, cylinders, {.turn_degrees = uniform(random, -360, 360), .ground = ground});
    for (const colour::Linear& cell : filled.light) EXPECT_NEAR(cell.red, 0, 1e-12);
  }
}

TEST(Sample, ClearPixelsShowTheGround) {
  Image image{2, 1, {{1, 0, 0, 0.25F}, {0, 1, 0, 0}}, true};
  const CellLight cells = sampled(image, {{0, 0}, 1, 1}, {.drop = 0}, gauge_of(2, 1),
                                  {.fit = PictureFit::stretch, .ground = {0, 0, 1}});
  EXPECT_NEAR(cells.at(0, 0).red, 0.125, 1e-12);
  EXPECT_NEAR(cells.at(0, 0).green, 0, 1e-12);  // clear, so its green is not seen
  EXPECT_NEAR(cells.at(0, 0).blue, 0.875, 1e-12);
}

TEST(SampleDetail, IsAWeightedMean) {
  Random random(60);
  for (int round = 0; round < 30; ++round) {
    const Image image = random_image(random, 40, 40);
    Placement placement{.turn_degrees = uniform(random, 0, 90), .keep_detail = true};
    const CellLight cells = sampled(image, {{0, 0}, 4, 4}, {.drop = 1}, cylinders, placement);
    for (const colour::Linear& cell : cells.light) {
      EXPECT_GT(cell.red, 0);
      EXPECT_LT(cell.red, 1);
    }
  }
  // Where there is no detail it changes nothing.
  Image slope{60, 60, {}};
  for (int y = 0; y < 60; ++y)
    for (int x = 0; x < 60; ++x)
      slope.pixels.push_back({0.3F + float(x) / 300, 0.4F + float(y) / 300, 0.5F, 1});
  EXPECT_LE(worst(sampled(slope, {{0, 0}, 6, 6}, {.drop = 1}, cylinders, {.keep_detail = true}),
                  sampled(slope, {{0, 0}, 6, 6}, {.drop = 1}, cylinders)),
            1e-12);
}

/// Light ground with a dark line one pixel wide through a point, softened as area coverage softens it or in whole pixels.
Image with_line(int width, int height, double x0, double y0, double angle, bool soft, bool negative) {
  Image image{width, height, {}};
  const double c = std::cos(angle), s = std::sin(angle);
  const bool steep = std::abs(s) > std::abs(c);
  const auto ground = negative ? 0.02F : 0.85F, line = negative ? 0.85F : 0.02F;
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x) {
      double share = 0;
      if (soft) {  // 8 x 8 samples of a band one pixel thick
        for (int j = 0; j < 8; ++j)
          for (int i = 0; i < 8; ++i)
            share +=
                std::abs(-(x + (i + 0.5) / 8 - x0) * s + (y + (j + 0.5) / 8 - y0) * c) <= 0.5 ? 1.0 / 64 : 0;
      } else {  // one pixel in each row or column
        const double at = steep ? x0 + (y + 0.5 - y0) * c / s : y0 + (x + 0.5 - x0) * s / c;
        share = static_cast<int>(std::floor(at)) == (steep ? x : y) ? 1 : 0;
      }
      const float light = ground + static_cast<float>(share) * (line - ground);
      image.pixels.push_back({light, light, light, 1});
    }
  return image;
}

/// Whether a trace may lead from one cell to another: they touch, at a side or at a corner, or only a half bead's gap at the window's
/// end lies between them.
bool touch(const chart::Grid& grid, int last_step, chart::Cell a, chart::Cell b) {
  const int across = std::abs(a.column - b.column);
  if (across <= 1) return std::abs(grid.along_halves(a) - grid.along_halves(b)) <= 2;
  return across <= grid.drop + 1 && a.step == b.step && (a.step == 0 || a.step == last_step);
}

/// Whether marked cells join all that are wanted.
bool joined(const CellLight& cells, const std::vector<bool>& marked, const std::vector<bool>& wanted,
            const chart::Grid& grid) {
  const auto cell_at = [&](std::size_t i) {
    return chart::Cell{static_cast<int>(i) % cells.columns, static_cast<int>(i) / cells.columns};
  };
  std::vector<bool> seen(marked.size(), false);
  std::deque<std::size_t> open{
      static_cast<std::size_t>(std::find(wanted.begin(), wanted.end(), true) - wanted.begin())};
  for (seen[open.front()] = true; !open.empty(); open.pop_front())
    for (std::size_t next = 0; next < marked.size(); ++next)
      if (marked[next] && !seen[next] && touch(grid, cells.steps - 1, cell_at(open.front()), cell_at(next)))
        open.push_back(next), seen[next] = true;
  for (std::size_t i = 0; i < wanted.size(); ++i)
    if (wanted[i] && !(marked[i] && seen[i])) return false;
  return true;
}

double lightness(const colour::Linear& light) {
  return colour::to_lab_d65(light).lightness;
}

/// A random line of one pixel on a random window, with and without keeping detail.
struct LineTrial {
  explicit LineTrial(Random& random) : negative(random() % 4 == 0) {
    grid.drop = static_cast<int>(random() % 3);
    const int columns = 4 + static_cast<int>(random() % 9), steps = 4 + static_cast<int>(random() % 9);
    cell_width = uniform(random, 2, 40), cell_height = cell_width * 1.66 / 1.35;
    const double height = steps + (grid.drop > 0 ? 0.5 : 0.0);
    const int width_px = static_cast<int>(columns * cell_width),
              height_px = static_cast<int>(height * cell_height);
    cell_width = width_px / double(columns), cell_height = height_px / height;
    const double angle = random() % 3 == 0 ? std::numbers::pi / 4 * static_cast<double>(random() % 4)
                                           : uniform(random, 0, std::numbers::pi);
    // Two pixels of the picture are left out on each side, or more than detail is looked for in.
    const int margin = random() % 2 == 0 ? 2 : 25;
    const Image image =
        with_line(width_px + 2 * margin, height_px + 2 * margin, margin + uniform(random, 0, width_px),
                  margin + uniform(random, 0, height_px), angle, random() % 2 == 0, negative);
    Placement placement{
        .crop = PictureRectangle{double(margin), double(margin), double(width_px), double(height_px)},
        .fit = PictureFit::stretch};
    const CellWindow window{{0, 0}, columns, steps};
    plain = sampled(image, window, grid, cylinders, placement);
    placement.keep_detail = true;
    kept = sampled(image, window, grid, cylinders, placement);
  }

  /// Cells at least 10 L* from the ground.
  [[nodiscard]] std::vector<bool> marked(const CellLight& cells) const {
    const double ground =
        lightness(negative ? colour::Linear{0.02, 0.02, 0.02} : colour::Linear{0.85, 0.85, 0.85});
    std::vector<bool> marks;
    for (const colour::Linear& cell : cells.light) marks.push_back(std::abs(lightness(cell) - ground) >= 10);
    return marks;
  }

  /// Cells in which a good piece of the line lies: half the cell's shorter side of it.
  [[nodiscard]] std::vector<bool> crossed() const {
    std::vector<bool> crossed;
    for (const colour::Linear& cell : plain.light) {
      const double share = (cell.red - (negative ? 0.02 : 0.85)) / (negative ? 0.83 : -0.83);
      crossed.push_back(share * cell_width * cell_height >= std::min(cell_width, cell_height) / 2);
    }
    return crossed;
  }

  bool negative;
  chart::Grid grid;
  double cell_width, cell_height;
  CellLight kept, plain;
};

TEST(SampleDetail, ALineOfOnePixelLeavesAConnectedTrace) {
  Random random(61);
  int lines = 0, lost_without = 0;
  for (int round = 0; round < 300; ++round) {
    const LineTrial trial(random);
    const auto crossed = trial.crossed();
    if (std::count(crossed.begin(), crossed.end(), true) == 0) continue;  // only a corner of the picture
    ++lines;
    EXPECT_TRUE(joined(trial.kept, trial.marked(trial.kept), crossed, trial.grid))
        << "round " << round << " drop " << trial.grid.drop << " cell " << trial.cell_width;
    lost_without += joined(trial.plain, trial.marked(trial.plain), crossed, trial.grid) ? 0 : 1;
  }
  EXPECT_GE(lines, 250);
  EXPECT_GE(lost_without, lines / 2);  // or this would show little
}

TEST(SampleRefuses, WhatIsOutOfRange) {
  Random random(62);
  const Image image = random_image(random, 10, 8);
  const CellWindow window{{0, 0}, 4, 4};
  const auto code = [&](const Image& of, const CellWindow& on, const bead::Gauge& gauge,
                        const Placement& placement) {
    const auto cells = sample(of, on, {.drop = 1}, gauge, placement);
    return cells.ok()
               ? std::string()
               : cells.problem().where + (cells.problem().code == ProblemCode::out_of_range ? "" : "?");
  };
  EXPECT_EQ(code(image, window, cylinders, {}), "");
  EXPECT_EQ(code({}, window, cylinders, {}), "picture");
  EXPECT_EQ(code(image, {{0, 0}, 0, 4}, cylinders, {}), "window");
  EXPECT_EQ(code(image, {{0, 0}, 4, 10'001}, cylinders, {}), "window");
  EXPECT_EQ(code(image, {{0, 0}, 1'000, 10'000}, cylinders, {}), "window");
  EXPECT_EQ(code(image, {{-1, 0}, 4, 4}, cylinders, {}), "window");
  EXPECT_EQ(code(image, window, gauge_of(0, 1), {}), "gauge");
  EXPECT_EQ(code(image, window, gauge_of(1, std::nan("")), {}), "gauge");
  for (const PictureRectangle& crop : {PictureRectangle{-1, 0, 4, 4},
                                       {0, 0, 10.5, 4},
                                       {0, 0, 4, 8.5},
                                       {0, 0, 0, 4},
                                       {9, 0, 2, 2},
                                       {0, 0, std::nan(""), 2}})
    EXPECT_EQ(code(image, window, cylinders, {.crop = crop}), "crop");
  EXPECT_EQ(code(image, window, cylinders, {.turn_degrees = std::nan("")}), "turn");
  EXPECT_EQ(code(image, window, cylinders, {.meets_itself = true}), "picture");
}

}  // namespace
}  // namespace evencount::picture
