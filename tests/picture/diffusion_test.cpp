#include "picture/diffusion.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "finish.hpp"
#include "picture/error_diffusion.hpp"

namespace evencount::picture {
namespace {

double viewing_mean_of(const Beaded& beaded, std::span<const int> bead_of_cell) {
  return viewing_difference(beaded.lattice, beaded.cells, charted(beaded, bead_of_cell)).value().mean;
}

/// What every diffusion must be; returns it.
Diffusion expect_sound(const Beaded& beaded, const DiffusionOptions& options = {}) {
  const Diffusion result =
      diffuse(beaded.lattice, beaded.cells, beaded.stock, beaded.choice, options).value();
  EXPECT_EQ(broken_rule(beaded, result.bead_of_cell), "");
  EXPECT_TRUE(result.rules.over_limit.empty());
  EXPECT_NEAR(result.viewing_before, viewing_mean_of(beaded, beaded.choice.bead_of_cell), 1e-9);
  EXPECT_NEAR(result.viewing_after, viewing_mean_of(beaded, result.bead_of_cell), 1e-9);
  EXPECT_LE(result.viewing_after, result.viewing_before);
  EXPECT_NEAR(result.mean_before, mean_of(beaded, beaded.choice.bead_of_cell), 1e-5);
  EXPECT_NEAR(result.mean_after, mean_of(beaded, result.bead_of_cell), 1e-5);
  int changed = 0;
  for (std::size_t cell = 0; cell < beaded.cells.size(); ++cell)
    changed += result.bead_of_cell[cell] != beaded.choice.bead_of_cell[cell];
  EXPECT_EQ(result.changed, changed);
  return result;
}

TEST(Diffusion, NeverWorseOnRandomCrops) {
  const Beaded wholes[] = {load_beaded("portrait", 60, 80, {.drop = 1}),
                           load_beaded("coffee", 60, 80, {.drop = 1}),
                           load_beaded("flat", 60, 80, {.drop = 1})};
  Random random(200);
  for (int trial = 0; trial < (sanitized ? 6 : 24); ++trial) {  // 200 of them: finish_crops
    SCOPED_TRACE(trial);
    const Beaded& whole = wholes[pick(random, 3)];
    Beaded part = crop(whole, random_window(random, {24, 24}, 4));
    part.lattice.grid = {pick(random, 3), pick(random, 2) == 0, pick(random, 2) == 0};
    expect_sound(part, {.closeness = 0.15 * pick(random, 3)});
  }
}

TEST(Diffusion, NeverWorseUnderRules) {
  Random random(3);
  int limited = 0, required = 0;
  for (int trial = 0; trial < 150; ++trial) {
    SCOPED_TRACE(trial);
    const Beaded beaded = random_beaded(random, 9, trial % 2 * 6);
    expect_sound(beaded, {.closeness = 0.2 * pick(random, 3), .rounds = pick(random, 5)});
    for (const int bead : beaded.choice.chosen) {
      limited += beaded.stock[static_cast<std::size_t>(bead)].at_most.has_value();
      required += beaded.stock[static_cast<std::size_t>(bead)].rule == StockRule::required;
    }
  }
  EXPECT_GT(limited, 50);
  EXPECT_GT(required, 50);
}

// No bead to spare: only exchanges are left, and they help.
TEST(Diffusion, WithEveryBeadInUse) {
  Random random(4);
  Beaded beaded = crop(load_beaded("coffee", 60, 80, {.drop = 1}), {{20, 10}, 24, 24});
  for (const int bead : beaded.choice.chosen)
    beaded.stock[static_cast<std::size_t>(bead)].at_most = static_cast<int>(
        std::count(beaded.choice.bead_of_cell.begin(), beaded.choice.bead_of_cell.end(), bead));
  const Diffusion result = expect_sound(beaded);
  EXPECT_GT(result.changed, 20);
  EXPECT_LT(result.viewing_after, 0.97 * result.viewing_before);
}

// A dark sky with few stars. Handing on all errors makes it speckled; the guard must keep it.
TEST(Diffusion, ADarkSkyIsKept) {
  Beaded sky{.lattice = {40, 40, {.drop = 1}}};
  Random random(5);
  for (int cell = 0; cell < sky.lattice.cells(); ++cell) {
    const int step = cell / 40;
    const auto dark = [&](int from) { return static_cast<std::uint8_t>(from + step / 4 + pick(random, 3)); };
    const bool star = pick(random, 90) == 0;
    sky.cells.push_back(star ? colour::Rgb{230, 225, 200} : colour::Rgb{dark(10), dark(11), dark(20)});
  }
  sky.stock = {{{10, 11, 22}}, {{225, 225, 215}}};
  sky.choice = choose_stock(sky.cells, sky.stock, 2).value();
  const Beading given = Beading::make(sky.lattice, sky.cells, sky.stock, sky.choice).value();
  const Viewing viewing = Viewing::make(sky.lattice).value();
  const Target target(viewing, sky.cells);
  EXPECT_GT(viewing_mean(target, diffused(target, given, 1, error_shares(true))),
            1.2 * viewing_mean(target, given));
  const Diffusion result = expect_sound(sky);
  const auto before =
      viewing_difference(sky.lattice, sky.cells, charted(sky, sky.choice.bead_of_cell)).value();
  const auto after = viewing_difference(sky.lattice, sky.cells, charted(sky, result.bead_of_cell)).value();
  for (int trial = 0; trial < 100; ++trial) {
    double gain = 0;
    for (const std::size_t cell : cells_of(random_window(random, sky.lattice, 12), sky.lattice))
      gain += before.of_cell[cell] - after.of_cell[cell];
    EXPECT_GE(gain, 0) << trial;
  }
}

TEST(Diffusion, APictureInItsBeadsStays) {
  Random random(6);
  for (int trial = 0; trial < 20; ++trial) {
    Beaded beaded = random_beaded(random, 10, 0);
    beaded.cells = charted(beaded, beaded.choice.bead_of_cell);
    const Diffusion result = expect_sound(beaded, {.closeness = 0});
    EXPECT_EQ(charted(beaded, result.bead_of_cell), beaded.cells);
    EXPECT_EQ(result.viewing_after, 0);
  }
}

// Black and white in the measure of the light that a grey has, on every lattice.
TEST(Diffusion, HandsOnAllTheLight) {
  for (const int drop : {0, 1, 2, 3})
    for (const int grey : {60, 128, 188, 230}) {
      Beaded beaded{.lattice = {41, 40, {drop}}};
      const auto v = static_cast<std::uint8_t>(grey);
      beaded.cells.assign(static_cast<std::size_t>(beaded.lattice.cells()), {v, v, v});
      beaded.stock = {{{0, 0, 0}}, {{255, 255, 255}}};
      beaded.choice.chosen = {0, 1};
      beaded.choice.bead_of_cell.assign(beaded.cells.size(), 0);
      const Beading given = Beading::make(beaded.lattice, beaded.cells, beaded.stock, beaded.choice).value();
      const Viewing viewing = Viewing::make(beaded.lattice).value();
      const Beading mixed = diffused(Target(viewing, beaded.cells), given, 1, error_shares(drop > 0));
      int white = 0;
      for (int cell = 0; cell < mixed.cells(); ++cell) white += mixed.at(cell);
      EXPECT_NEAR(white / 1640.0, colour::linear_light(v), 0.015) << drop << " " << grey;
    }
}

TEST(Diffusion, SharesAreTheSameToBothSides) {
  double side[2] = {0, 0}, sum = 0;
  for (const ErrorShare& share : error_shares(true)) {
    EXPECT_GT(share.weight, 0);
    EXPECT_TRUE(share.along_halves > 0 || (share.along_halves == 0 && share.ahead > 0));
    sum += share.weight;
    if (share.along_halves > 0 && share.ahead != 0) side[share.ahead > 0] += share.weight;
  }
  EXPECT_EQ(side[0], side[1]);
  EXPECT_GT(side[0], 0);
  EXPECT_GT(sum, 0);
}

// Going through the cells lowers the cost, each time.
TEST(ViewingSearch, CostNeverRises) {
  Random random(7);
  for (int trial = 0; trial < 30; ++trial) {
    const Beaded beaded = random_beaded(random, 12, trial % 2 * 5);
    const double closeness = 0.25 * pick(random, 3);
    const Viewing viewing = Viewing::make(beaded.lattice).value();
    const Target target(viewing, beaded.cells);
    const auto cost = [&](const Beading& beading) {
      return viewing_mean(target, beading) + closeness * beading.mean();
    };
    const Beading given = Beading::make(beaded.lattice, beaded.cells, beaded.stock, beaded.choice).value();
    ViewingSearch search(target, given, closeness);
    double before = cost(given);
    for (int round = 0; round < 4; ++round) {
      search.improve(1);
      const double after = cost(search.beading());
      EXPECT_LE(after, before + 1e-12);
      if (round == 0 && search.beading().changes(given) > 0) {
        EXPECT_LT(after, before);
      }
      before = after;
    }
  }
}

TEST(Diffusion, WholePicturesAtViewingDistance) {
  struct Known {
    const char* picture;
    double
        at_most;  // as measured, rounded up; serpentine diffusion by others: coffee 3.69, flat drawing 2.61
  };
  for (const int drop : {0, 1})
    for (const Known& known : {Known{"portrait", 2.30}, Known{"coffee", 1.92}, Known{"flat", 2.31}}) {
      if (sanitized && (drop == 0 || known.picture != std::string("flat"))) continue;
      SCOPED_TRACE(known.picture);
      const Beaded beaded = load_beaded(known.picture, 60, 80, {drop});
      const Diffusion result = expect_sound(beaded);
      EXPECT_LE(result.viewing_after, known.at_most);
      EXPECT_LT(result.mean_after, 1.3 * result.mean_before);
      EXPECT_EQ(diffuse(beaded.lattice, beaded.cells, beaded.stock, beaded.choice).value(), result);
      // Nor is any part of the picture worse. Nothing promises that, but so it is.
      const auto before =
          viewing_difference(beaded.lattice, beaded.cells, charted(beaded, beaded.choice.bead_of_cell))
              .value();
      const auto after =
          viewing_difference(beaded.lattice, beaded.cells, charted(beaded, result.bead_of_cell)).value();
      Random random(8);
      for (int trial = 0; trial < 200; ++trial) {
        double gain = 0;
        for (const std::size_t cell : cells_of(random_window(random, beaded.lattice, 10), beaded.lattice))
          gain += before.of_cell[cell] - after.of_cell[cell];
        EXPECT_GE(gain, 0) << trial;
      }
    }
}

TEST(Diffusion, RefusesWhatDoesNotFit) {
  Random random(9);
  Beaded beaded{.lattice = {2, 2}};
  beaded.cells = random_cells(random, 4);
  beaded.stock = {{{0, 0, 0}}, {{255, 255, 255}}, {{9, 9, 9}}};
  beaded.choice.chosen = {0, 1};
  beaded.choice.bead_of_cell = {0, 1, 1, 0};
  const auto code = [&](const Beaded& one, const DiffusionOptions& options = {}) {
    const auto result = diffuse(one.lattice, one.cells, one.stock, one.choice, options);
    EXPECT_FALSE(result.ok());
    return result ? ProblemCode::system_failure : result.problem().code;
  };
  EXPECT_TRUE(diffuse(beaded.lattice, beaded.cells, beaded.stock, beaded.choice).ok());
  EXPECT_EQ(code(beaded, {.closeness = -1}), ProblemCode::out_of_range);
  EXPECT_EQ(code(beaded, {.closeness = INFINITY}), ProblemCode::out_of_range);
  EXPECT_EQ(code(beaded, {.rounds = -1}), ProblemCode::out_of_range);
  const auto with = [&](auto change) {
    Beaded other = beaded;
    change(other);
    return code(other);
  };
  EXPECT_EQ(with([](Beaded& b) { b.lattice.columns = 3; }), ProblemCode::wrong_size);
  EXPECT_EQ(with([](Beaded& b) { b.lattice.edge = 0; }), ProblemCode::out_of_range);
  EXPECT_EQ(with([](Beaded& b) { b.choice.bead_of_cell.pop_back(); }), ProblemCode::wrong_size);
  EXPECT_EQ(with([](Beaded& b) { b.choice.bead_of_cell[2] = 2; }), ProblemCode::out_of_range);
  EXPECT_EQ(with([](Beaded& b) { b.choice.bead_of_cell[2] = -1; }), ProblemCode::out_of_range);
  EXPECT_EQ(with([](Beaded& b) { b.choice.chosen.push_back(3); }), ProblemCode::out_of_range);
  EXPECT_EQ(with([](Beaded& b) { b.stock[1].at_most = 1; }), ProblemCode::out_of_range);
}

}  // namespace
}  // namespace evencount::picture
