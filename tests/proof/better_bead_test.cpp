#include "proof/better_bead.hpp"

#include <gtest/gtest.h>

#include <random>

#include "colour/difference.hpp"
#include "proof/proof.hpp"

namespace evencount::proof {
namespace {

using Random = std::mt19937;

colour::Rgb random_colour(Random& random) {
  const auto channel = [&] { return static_cast<std::uint8_t>(random() % 256); };
  return {channel(), channel(), channel()};
}

/// Stripes of four colours, each beside the next.
project::Project striped(const std::vector<colour::Rgb>& colours) {
  project::Project project;
  project.title = "Stripes";
  project.beads.push_back(*bead::find_size("cylinder-11"));
  project.thread = bead::threads().front();
  for (std::size_t i = 0; i < colours.size(); ++i)
    project.legend.push_back({.letter = std::string(1, static_cast<char>('A' + i)), .name = "bead", .colour = colours[i], .bead = "cylinder-11"});
  project::Band band{.name = "Band", .technique = "loom", .bead = "cylinder-11", .closure = weave::Closure::open};
  band.chart = *chart::Chart::make(4, static_cast<int>(colours.size()));
  for (int step = 0; step < band.chart.edge(); ++step)
    for (int column = 0; column < 4; ++column) band.chart.set({column, step}, static_cast<chart::Bead>(step));
  project.bands.push_back(band);
  return project;
}

std::vector<materials::StockedItem> random_stock(Random& random, int count) {
  std::vector<materials::StockedItem> stock;
  for (int i = 0; i < count; ++i)
    stock.push_back({{"C-" + std::to_string(i), "colour " + std::to_string(i),
                      materials::BeadStock{i % 5 == 0 ? "round-11" : "cylinder-11", {}, random_colour(random), {}}, {}, ""}, {}});
  stock.push_back({{"N-1", "clasp", materials::FindingStock{"clasp"}, {}, ""}, {}});
  return stock;
}

std::size_t findings_of(const project::Project& project, std::span<const materials::StockedItem> stock = {}) {
  const auto all = proof(project, {.stock = stock});
  return static_cast<std::size_t>(std::count_if(all.begin(), all.end(), [](const Finding& f) { return f.check == "difference"; }));
}

TEST(BetterBead, TellingApartIsTheSameBothWays) {
  Random random(1);
  for (int trial = 0; trial < 200; ++trial) {
    const colour::Rgb a = random_colour(random), b = random_colour(random);
    const Apart there = apart(a, b), back = apart(b, a);
    EXPECT_NEAR(there.difference, back.difference, 1e-9);
    EXPECT_EQ(there.lost_to, back.lost_to);
    EXPECT_EQ(there.enough(), back.enough());
  }
  EXPECT_FALSE(apart({10, 10, 10}, {12, 12, 12}).enough());
  EXPECT_TRUE(apart({0, 0, 0}, {255, 255, 255}).enough());
}

TEST(BetterBead, MendsTheFindingAndMakesNone) {
  Random random(2);
  int mended = 0;
  for (int trial = 0; trial < 60; ++trial) {
    SCOPED_TRACE(trial);
    std::vector<colour::Rgb> colours{random_colour(random), random_colour(random), random_colour(random)};
    // The second is all but the first.
    colours.insert(colours.begin() + 1, {colours[0].red, colours[0].green, static_cast<std::uint8_t>(colours[0].blue ^ 4)});
    project::Project project = striped(colours);
    const auto stock = random_stock(random, 40);
    const project::Neighbours neighbours(project);
    const auto better = better_bead(project, neighbours, 0, 1, stock);
    if (!better) continue;
    ASSERT_LE(better->replaces, 1u);
    const std::size_t before = findings_of(project);
    const colour::Rgb replaced = project.legend[better->replaces].colour;
    // None that would do is nearer.
    for (const auto& one : stock) {
      const auto* beads = std::get_if<materials::BeadStock>(&one.item.what);
      if (beads == nullptr || beads->size != "cylinder-11") continue;
      project.legend[better->replaces].colour = *beads->colour;
      const auto far = colour::ciede2000(colour::to_lab_d65(replaced), colour::to_lab_d65(*beads->colour));
      bool does = true;
      for (const std::size_t other : {better->replaces - 1, better->replaces + 1})
        does &= other >= colours.size() || apart(*beads->colour, project.legend[other].colour).enough();
      if (does) { EXPECT_GE(far, better->difference - 1e-9); }
    }
    project.legend[better->replaces].colour = better->colour;
    EXPECT_LT(findings_of(project), before);
    ++mended;
  }
  EXPECT_GT(mended, 20);
}

TEST(BetterBead, TheFindingNamesIt) {
  const project::Project project = striped({{20, 20, 60}, {22, 22, 60}, {230, 220, 180}});
  const materials::StockedItem far{{"C-9", "harbour lamp", materials::BeadStock{"cylinder-11", {}, colour::Rgb{200, 120, 40}, {}}, {}, ""}, {}};
  const auto findings = proof(project, {.stock = {&far, 1}});
  const auto found = std::find_if(findings.begin(), findings.end(), [](const Finding& f) { return f.check == "difference"; });
  ASSERT_NE(found, findings.end());
  EXPECT_NE(found->message.find("harbour lamp (C-9) would do for"), std::string::npos) << found->message;
  EXPECT_EQ(findings_of(project), findings_of(project, std::vector{far}));
}

}  // namespace
}  // namespace evencount::proof
