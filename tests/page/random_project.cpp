#include "random_project.hpp"

#include <fmt/format.h>

#include <array>
#include <random>

#include "chart/letters.hpp"

namespace evencount::page {
namespace {

class Dice {
 public:
  explicit Dice(std::uint32_t seed) : engine_(seed) {}
  /// From low to high. (The library's distributions differ between machines.)
  int roll(int low, int high) {
    return low + static_cast<int>(engine_() % static_cast<unsigned>(high - low + 1));
  }
  bool chance(int percent) { return roll(1, 100) <= percent; }

 private:
  std::mt19937 engine_;
};

std::string words(Dice& dice, int count) {
  static constexpr std::array pool{"sea",         "glass", "a",      "Näherin", "of",      "crème",
                                   "twenty-four", "tide,", "and",    "straße",  "moon",    "ø",
                                   "12",          "mm",    "across", "Łódź",    "“quiet”", "it’s",
                                   "windflower",  "—",     "half."};
  std::string text;
  for (int i = 0; i < count; ++i)
    text += (i ? " " : "") +
            std::string(pool[static_cast<std::size_t>(dice.roll(0, static_cast<int>(pool.size()) - 1))]);
  return text;
}

chart::Chart random_chart(Dice& dice, int columns, int edge, int colours, bool last_row_empty) {
  chart::Chart chart = *chart::Chart::make(columns, edge);
  const int calm = dice.roll(0, 90);  // how often a bead repeats its neighbour
  chart::Bead bead = 0;
  for (int step = 0; step < edge; ++step)
    for (int column = 0; column < columns; ++column) {
      if (!dice.chance(calm)) bead = static_cast<chart::Bead>(dice.roll(0, colours - 1));
      const bool empty = last_row_empty && step == edge - 1 && column % 2 == 1;
      chart.set({column, step}, empty ? chart::no_bead : bead);
    }
  return chart;
}

project::Band random_band(Dice& dice, int number, int columns, int edge, weave::Closure closure,
                          int colours) {
  const bool open_end = closure == weave::Closure::open && edge > 1 && dice.chance(20);
  return {.name = fmt::format("Band {} {}", static_cast<char>('A' + number), words(dice, dice.roll(1, 3))),
          .technique = columns % 2 == 0 ? "peyote-even-count" : "peyote-odd-count",
          .bead = "cylinder-11",
          .closure = closure,
          .copies = dice.roll(1, 3),
          .note = words(dice, dice.roll(0, 25)),
          .chart = random_chart(dice, columns, edge, colours, open_end)};
}

project::Project frame(Dice& dice, int colours) {
  project::Project project;
  project.title = words(dice, dice.roll(1, 4));
  project.subtitle = words(dice, dice.roll(0, 8));
  project.designer = words(dice, dice.roll(0, 2));
  project.summary = words(dice, dice.roll(0, 120));
  project.finished_size = words(dice, dice.roll(0, 20));
  project.terms = words(dice, dice.roll(0, 60));
  project.beads = {*bead::find_size("cylinder-11")};
  project.thread = bead::threads().front();
  for (int i = 0; i < colours; ++i) {
    const auto channel = [&] { return static_cast<std::uint8_t>(dice.roll(0, 255)); };
    project.legend.push_back({.letter = chart::letter_name(i),
                              .name = fmt::format("{} {}", words(dice, dice.roll(1, 4)), i),
                              .colour = {channel(), channel(), channel()},
                              .finish = static_cast<bead::Finish>(dice.roll(0, 8)),
                              .bead = "cylinder-11"});
  }
  for (int i = dice.roll(0, 5); i > 0; --i) {
    project.findings.push_back(
        {.name = words(dice, dice.roll(1, 12)), .count = 1.5 * i, .unit = i % 2 ? "m" : ""});
    project.tools.push_back(words(dice, dice.roll(1, 3)));
    project.assembly.push_back(words(dice, dice.roll(1, 60)));
  }
  return project;
}

}  // namespace

project::Project random_project(std::uint32_t seed) {
  Dice dice(seed);
  const int colours = dice.chance(20) ? dice.roll(27, 40) : dice.roll(1, 12);
  project::Project project = frame(dice, colours);
  const int bands = dice.roll(1, 4);
  for (int i = 0; i < bands; ++i) {
    const bool wide = dice.chance(15), is_long = dice.chance(20);
    const int columns = wide ? dice.roll(20, 70) : dice.roll(2, 14);
    const int edge = is_long && !wide ? dice.roll(60, 160) : dice.roll(3, 40);
    const auto closure = dice.chance(50) ? weave::Closure::zip : weave::Closure::open;
    project.bands.push_back(random_band(dice, i, columns, edge, closure, colours));
  }
  return project;
}

project::Project one_band_project(int columns, int edge, weave::Closure closure, int colours,
                                  std::uint32_t seed) {
  Dice dice(seed);
  project::Project project = frame(dice, colours);
  project.bands.push_back(random_band(dice, 0, columns, edge, closure, colours));
  return project;
}

}  // namespace evencount::page
