#include "project/supply_list_kits.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "project/random_collection.hpp"

namespace evencount::project {
namespace {

using testing::CollectionDraw;

TEST(supply_list_kits, bags_hold_the_counts_and_cover_the_allowance) {
  for (std::uint64_t seed = 0; seed < 60; ++seed) {
    CollectionDraw draw(seed);
    const Project project = draw.project(0);
    const auto kit = kit_of(project);
    const auto list = supply_list(project);
    ASSERT_TRUE(kit.ok() && list.ok());
    ASSERT_EQ(kit->bags.size(), list->beads.beads.size());
    for (std::size_t i = 0; i < kit->bags.size(); ++i) {
      const KitBag& bag = kit->bags[i];
      EXPECT_EQ(bag.letter, list->beads.beads[i].letter);
      EXPECT_EQ(bag.count, list->beads.beads[i].count);
      // In whole numbers: the allowance is whole hundredths.
      const std::int64_t percent = std::llround(100 * project.allowance);
      EXPECT_GE(100 * bag.packed, bag.count * (100 + percent));
      EXPECT_LT(100 * (bag.packed - 1), bag.count * (100 + percent));
      const std::int64_t tenths = std::llround(10 * bag.mass.grams());
      const auto& legend = project.legend;
      const auto entry = std::find_if(legend.begin(), legend.end(),
                                      [&](const LegendEntry& e) { return e.letter == bag.letter; });
      const std::int64_t per_gram = std::llround(find_bead(project, entry->bead)->beads_per_gram);
      EXPECT_GE(tenths * per_gram, 10 * bag.packed);
      EXPECT_LT((tenths - 1) * per_gram, 10 * bag.packed);
    }
    Length thread;
    for (const KitThread& length : kit->threads)
      thread = thread + static_cast<double>(length.count) * length.length;
    EXPECT_GE(thread.mm(), list->thread.mm() - 1e-6);
    EXPECT_EQ(kit->forms, list->forms);
    EXPECT_EQ(kit->findings, list->findings);
  }
}

TEST(supply_list_kits, the_bags_of_many_kits_are_what_a_list_in_bags_buys) {
  for (std::uint64_t seed = 0; seed < 40; ++seed) {
    CollectionDraw draw(seed);
    const std::vector<Project> projects{draw.project(0)};
    const int kits = 1 + draw.below(200);
    const auto kit = kit_of(projects[0]);
    const auto in_bags = collection_supplies(projects, {.kits = kits, .in_bags = true});
    const auto together = collection_supplies(projects, {.kits = kits});
    ASSERT_TRUE(kit.ok() && in_bags.ok() && together.ok());
    ASSERT_EQ(kit->bags.size(), in_bags->beads.size());
    for (std::size_t i = 0; i < kit->bags.size(); ++i) {
      EXPECT_NEAR(kits * kit->bags[i].mass.grams(), in_bags->beads[i].mass.grams(), 1e-9 * kits);
      EXPECT_GE(in_bags->beads[i].mass.grams(), together->beads[i].mass.grams() - 1e-9);
    }
  }
}

TEST(supply_list_kits, lengths_of_thread_are_whole_centimetres_longest_first) {
  CollectionDraw draw(5);
  const auto kit = kit_of(draw.project(0, 8));
  ASSERT_TRUE(kit.ok());
  ASSERT_FALSE(kit->threads.empty());
  for (std::size_t i = 0; i < kit->threads.size(); ++i) {
    EXPECT_NEAR(std::remainder(kit->threads[i].length.mm(), 10), 0, 1e-9);
    if (i > 0) {
      EXPECT_GT(kit->threads[i - 1].length, kit->threads[i].length);
    }
  }
}

TEST(supply_list_kits, a_loom_takes_its_warps_too) {
  CollectionDraw draw(5);
  Project project = draw.project(0, 1);
  project.bands[0].technique = "loom";
  project.bands[0].copies = 1;
  const auto kit = kit_of(project);
  ASSERT_TRUE(kit.ok()) << message(kit.problem());
  std::int64_t lengths = 0;
  for (const KitThread& thread : kit->threads) lengths += thread.count;
  EXPECT_GE(lengths, project.bands[0].chart.columns() + 3 + 1);
}

}  // namespace
}  // namespace evencount::project
