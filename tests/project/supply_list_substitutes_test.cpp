#include "project/supply_list_substitutes.hpp"

#include <gtest/gtest.h>

#include "colour/difference.hpp"
#include "project/random_collection.hpp"
#include "project/supply_list_cost.hpp"

namespace evencount::project {
namespace {

using testing::CollectionDraw;

double difference_of(colour::Rgb a, colour::Rgb b) {
  return colour::ciede2000(colour::to_lab_d65(a), colour::to_lab_d65(b));
}

materials::StockedItem bead_item(const std::string& code, colour::Rgb colour, std::int64_t on_hand,
                                 const std::string& size = "cylinder-11") {
  materials::StockedItem stocked;
  stocked.item.code = code;
  stocked.item.name = code;
  stocked.item.what = materials::BeadStock{size, bead::Finish::lustre, colour, {}};
  stocked.level.on_hand = on_hand;
  return stocked;
}

TEST(supply_list_substitutes, the_nearest_come_first_and_none_nearer_is_left_out) {
  std::size_t given_in_all = 0;
  for (std::uint64_t seed = 0; seed < 40; ++seed) {
    CollectionDraw draw(seed);
    const auto projects = draw.collection(2);
    const auto stock = draw.stock();
    const auto list = collection_supplies(projects, {.kits = 20, .stock = stock});
    for (const BeadLine& bead : list->beads) {
      const auto found = substitutes(projects, *list, bead, stock, 2);
      ASSERT_LE(found.size(), 2u);
      given_in_all += found.size();
      for (std::size_t i = 0; i < found.size(); ++i) {
        EXPECT_EQ(found[i].difference, difference_of(bead.colour, found[i].colour));
        EXPECT_EQ(found[i].before, found[0].before);
        EXPECT_NE(found[i].code, bead.code);
        if (i > 0) {
          EXPECT_GE(found[i].difference, found[i - 1].difference);
        }
      }
      for (const auto& stocked : stock) {
        const auto* other = std::get_if<materials::BeadStock>(&stocked.item.what);
        if (!other || other->size != bead.size_id || stocked.item.code == bead.code) continue;
        std::int64_t free = stocked.level.free();
        for (const BeadLine& line : list->beads)
          if (line.code == stocked.item.code) free -= std::min(free, line.purchase.needed);
        if (free <= 0 || difference_of(bead.colour, *other->colour) > farthest_substitute) continue;
        const bool given = std::any_of(found.begin(), found.end(),
                                       [&](const Substitute& s) { return s.code == stocked.item.code; });
        if (!given) {
          ASSERT_EQ(found.size(), 2u);
          EXPECT_GE(difference_of(bead.colour, *other->colour), found.back().difference);
        }
      }
    }
  }
  EXPECT_GT(given_in_all, 20u);
}

TEST(supply_list_substitutes, say_what_the_chart_would_look_like) {
  CollectionDraw draw(2);
  Project project = draw.project(0, 1);
  project.legend.resize(3);
  const std::vector<colour::Rgb> colours{{20, 30, 60}, {240, 230, 200}, {200, 160, 60}};
  for (std::size_t i = 0; i < 3; ++i)
    project.legend[i].bead = "cylinder-11", project.legend[i].colour = colours[i];
  // A beside B, B beside C; A never beside C.
  Band& band = project.bands[0];
  band.technique = "square";
  band.chart = *chart::Chart::make(2, 6);
  for (int step = 0; step < 6; ++step)
    for (int column = 0; column < 2; ++column)
      band.chart.set({column, step}, static_cast<chart::Bead>(step / 2));
  const std::vector<Project> projects{project};
  const std::vector<materials::StockedItem> stock{
      bead_item("dark", {60, 60, 90}, 100'000), bead_item("navy", {25, 33, 70}, 50),
      bead_item("big", {20, 30, 60}, 100'000, "round-11"), bead_item("none", {20, 30, 60}, 0)};
  const auto list = collection_supplies(projects, {.kits = 5, .stock = stock});
  ASSERT_TRUE(list.ok());
  const auto found = substitutes(projects, *list, list->beads[0], stock);
  ASSERT_EQ(found.size(), 2u);
  EXPECT_EQ(found[0].code, "navy");
  EXPECT_EQ(found[0].finish, bead::Finish::lustre);
  EXPECT_FALSE(found[0].covers);
  EXPECT_EQ(found[1].code, "dark");
  EXPECT_TRUE(found[1].covers);
  for (const Substitute& one : found) {
    EXPECT_EQ(one.before, (NearestNeighbour{difference_of(colours[0], colours[1]), "B"}));
    EXPECT_EQ(one.after, (NearestNeighbour{difference_of(one.colour, colours[1]), "B"}));
  }
  const auto changed = swapped(projects, stock, {"A", "dark"});
  ASSERT_TRUE(changed.ok());
  const auto with_dark = collection_supplies(*changed, {.kits = 5, .stock = stock});
  EXPECT_EQ(substitutes(*changed, *with_dark, with_dark->beads[0], stock)[0].before, found[1].after);
}

TEST(supply_list_substitutes, a_bead_alone_in_its_chart_lies_beside_none) {
  CollectionDraw draw(2);
  Project project = draw.project(0, 1);
  project.legend.resize(1);
  project.legend[0].bead = "cylinder-11";
  project.legend[0].colour = {50, 50, 80};
  project.bands[0].chart = *chart::Chart::make(2, 4, 0);
  project.bands[0].technique = "square";
  const std::vector<Project> projects{project};
  const std::vector<materials::StockedItem> stock{bead_item("dark", {60, 60, 90}, 100)};
  const auto list = collection_supplies(projects, {.stock = stock});
  ASSERT_TRUE(list.ok());
  const auto found = substitutes(projects, *list, list->beads[0], stock);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].before, std::nullopt);
}

}  // namespace
}  // namespace evencount::project
