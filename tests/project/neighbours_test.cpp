#include "project/neighbours.hpp"

#include <gtest/gtest.h>

#include <random>
#include <set>

#include "weave/technique.hpp"

namespace evencount::project {
namespace {

Project charted(std::string_view technique, int columns, int edge, const std::vector<int>& beads,
                std::size_t entries) {
  Project project;
  project.legend.resize(entries);
  Band band;
  band.technique = technique;
  band.chart = *chart::Chart::make(columns, edge);
  for (int i = 0; i < columns * edge; ++i)
    band.chart.set({i % columns, i / columns}, static_cast<chart::Bead>(beads[static_cast<std::size_t>(i)]));
  project.bands.push_back(band);
  return project;
}

TEST(neighbours, in_peyote_a_bead_touches_six_others) {
  // Every cell a bead of its own: 3 columns, 3 steps. Odd columns lie half a bead further on.
  const Neighbours neighbours(charted("peyote-odd-count", 3, 3, {0, 1, 2, 3, 4, 5, 6, 7, 8}, 9));
  std::set<std::size_t> beside_the_middle;
  for (std::size_t i = 0; i < 9; ++i)
    if (neighbours.meet(4, i)) beside_the_middle.insert(i);
  EXPECT_EQ(beside_the_middle, (std::set<std::size_t>{1, 7, 3, 5, 6, 8}));
}

TEST(neighbours, on_a_loom_a_bead_touches_four_others) {
  const Neighbours neighbours(charted("loom", 3, 3, {0, 1, 2, 3, 4, 5, 6, 7, 8}, 9));
  std::set<std::size_t> beside_the_middle;
  for (std::size_t i = 0; i < 9; ++i)
    if (neighbours.meet(4, i)) beside_the_middle.insert(i);
  EXPECT_EQ(beside_the_middle, (std::set<std::size_t>{1, 3, 5, 7}));
}

TEST(neighbours, meet_both_ways_and_in_a_mirror) {
  std::mt19937 random(6);
  for (int round = 0; round < 50; ++round) {
    const int columns = 2 + static_cast<int>(random() % 5), edge = 2 + static_cast<int>(random() % 5);
    std::vector<int> beads, mirrored;
    for (int i = 0; i < columns * edge; ++i) beads.push_back(static_cast<int>(random() % 7));
    for (int step = edge - 1; step >= 0; --step)
      for (int column = 0; column < columns; ++column)
        mirrored.push_back(beads[static_cast<std::size_t>(step * columns + column)]);
    const Neighbours neighbours(charted("square", columns, edge, beads, 7)),
        mirror(charted("square", columns, edge, mirrored, 7));
    for (std::size_t a = 0; a < 7; ++a)
      for (std::size_t b = 0; b < 7; ++b) {
        EXPECT_EQ(neighbours.meet(a, b), neighbours.meet(b, a));
        EXPECT_EQ(neighbours.meet(a, b), mirror.meet(a, b));
      }
  }
}

TEST(neighbours, what_is_not_there_meets_nothing) {
  EXPECT_FALSE(Neighbours(charted("no such technique", 2, 1, {0, 1}, 2)).meet(0, 1));
  EXPECT_FALSE(Neighbours(charted("loom", 2, 1, {0, 5}, 2)).meet(0, 1));
  EXPECT_TRUE(Neighbours(charted("loom", 2, 1, {0, 1}, 2)).meet(0, 1));
}

}  // namespace
}  // namespace evencount::project
