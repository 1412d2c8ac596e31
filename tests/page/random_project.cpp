#include "random_project.hpp"

#include <fmt/format.h>

#include <array>
#include <random>

#include "chart/letters.hpp"
#include "form/form.hpp"
#include "proof/proof.hpp"
#include "weave/random_shapes.hpp"
#include "weave/shapes.hpp"
#include "weave/technique.hpp"

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

/// A piece of the technique, its beads among the first `colours`; nothing where chance found none.
std::optional<project::Band> band_of(const weave::Technique& technique, std::uint32_t seed, int colours) {
  namespace shapes = weave::testing_support;
  shapes::Random random(seed);
  project::Band band{.name = fmt::format("A band in {}", technique.name), .technique = std::string(technique.id),
                     .bead = "cylinder-11", .closure = technique.closures[random() % technique.closures.size()]};
  const int columns = shapes::pick(random, 1, 40), edge = shapes::pick(random, 1, 60);
  if (technique.id == "peyote-shaped") {
    band.chart = shapes::random_shape(random, 24);
  } else if (technique.id == "peyote-bezel") {
    const auto bezel = shapes::random_bezel(random);
    band.chart = bezel.chart, band.closure = bezel.making.closure, band.begin_at = bezel.making.begin_at;
  } else if (technique.check_size(columns, edge)) {
    band.chart = shapes::filled_chart(random, technique.lattice(columns, edge));
  } else {
    return std::nullopt;
  }
  for (int step = 0; step < band.chart.edge(); ++step)
    for (int column = 0; column < band.chart.columns(); ++column)
      if (const chart::Bead bead = band.chart.at({column, step}); bead != chart::no_bead)
        band.chart.set({column, step}, static_cast<chart::Bead>(bead % colours));
  return project::plan_of(band) ? std::optional(band) : std::nullopt;
}

/// A carrier as long round as the band, or nearly.
form::Form carrier_for(const project::Band& band, double row_mm) {
  const double round_mm = row_mm * band.chart.edge();
  return {.kind = form::FormKind::lens, .width = millimetres(0.44 * round_mm), .thickness = millimetres(0.16 * round_mm),
          .length_along_holes = millimetres(40)};
}

project::SavedStrand random_strand(Dice& dice) {
  project::SavedStrand strand;
  strand.layout = fmt::format("cords {} of braided 0.6mm\n", dice.roll(1, 2)) +
                  "bead stop 8mm hole 1.5mm \"8 mm round glass bead\"\n"
                  "bead night 2.3mm across 2.8mm thick 2.8mm hole 1.05mm \"8/0 round bead, night blue\"\n"
                  "crimp tube 2mm hole 1.3mm across 2mm thick 2mm \"2 mm crimp tube\"\n"
                  "clasp hook 15mm hole 2mm \"clasp\"\nclose with hook\nstring tube, fill sides with night";
  for (int i = dice.roll(0, 12); i > 0; --i)
    strand.layout += fmt::format(", {} stop, fill {} with night", dice.roll(1, 3), dice.chance(50) ? "sides" : "");
  strand.layout += ", tube";
  strand.worn = static_cast<strand::Worn>(dice.roll(0, 2));
  strand.ease = millimetres(dice.roll(0, 12));
  const int first_mm = strand.worn == strand::Worn::wrist ? 150 : 360;
  for (int i = 0, sizes = dice.roll(1, 9); i < sizes; ++i)
    strand.sizes.push_back({.name = fmt::format("{} {}", i, words(dice, dice.roll(1, 2))), .measure = millimetres(first_mm + 12.5 * i)});
  return strand;
}

/// The change, unless the proof then has errors that it had not; whether it was made.
template <typename Change>
bool change_if_sound(project::Project& project, Change change) {
  project::Project changed = project;
  change(changed);
  if (proof::has_errors(proof::proof(changed))) return false;
  project = std::move(changed);
  return true;
}

/// The first band about a carrier that it closes round, where one of some sizes is found.
void put_on_a_carrier(project::Project& project, Dice& dice) {
  const std::string name = words(dice, 3);
  const form::Use use = dice.chance(50) ? form::Use::sliding : form::Use::fixed;
  // A cylinder bead's length and the thread beside it is 1.3 mm, near enough; the rest is rounding and thickness.
  for (double row_mm = 1.2; row_mm < 2.4; row_mm *= 1.02)
    if (change_if_sound(project, [&](project::Project& changed) {
          project::Band& band = changed.bands.front();
          changed.forms.push_back({.id = "carrier", .name = name, .form = carrier_for(band, row_mm)});
          band.form = "carrier";
          band.use = use;
        }))
      return;
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

project::Project varied_project(std::uint32_t seed) {
  project::Project project = random_project(seed);
  Dice dice(seed + 77'000);
  const auto colours = static_cast<int>(project.legend.size());
  const auto all = weave::techniques();
  if (dice.chance(70))
    if (auto band = band_of(all[seed % all.size()], seed, colours))
      change_if_sound(project, [&](project::Project& changed) { changed.bands.push_back(std::move(*band)); });
  if (dice.chance(60)) put_on_a_carrier(project, dice);
  if (dice.chance(50)) change_if_sound(project, [&](project::Project& changed) { changed.strand = random_strand(dice); });
  return project;
}

project::Project one_band_project(int columns, int edge, weave::Closure closure, int colours,
                                  std::uint32_t seed) {
  Dice dice(seed);
  project::Project project = frame(dice, colours);
  project.bands.push_back(random_band(dice, 0, columns, edge, closure, colours));
  return project;
}

project::Project project_with_endless_rows() {
  project::Project project = one_band_project(chart::most_columns, 3, weave::Closure::open, 40, 6);
  project.thread_habits.working_length = millimetres(20'000);
  return project;
}

}  // namespace evencount::page
