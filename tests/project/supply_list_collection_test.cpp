#include "project/supply_list_collection.hpp"

#include <gtest/gtest.h>

#include <map>
#include <set>

#include "materials/supplies.hpp"
#include "project/random_collection.hpp"
#include "project/supply_list.hpp"

namespace evencount::project {
namespace {

using testing::CollectionDraw;

std::int64_t tenths_of(Mass mass) {
  return std::llround(10 * mass.grams());
}

std::int64_t cells_of(Collection projects) {
  std::int64_t cells = 0;
  for (const Project& project : projects)
    for (const Band& band : project.bands)
      for (const chart::Bead bead : band.chart.cells()) cells += bead == chart::no_bead ? 0 : band.copies;
  return cells;
}

TEST(supply_list_collection, nothing_is_lost_between_charts_and_list) {
  for (std::uint64_t seed = 0; seed < 60; ++seed) {
    CollectionDraw draw(seed);
    const auto projects = draw.collection(1 + draw.below(6));
    const int kits = 1 + draw.below(500);
    const auto list = collection_supplies(projects, {.kits = kits});
    ASSERT_TRUE(list.ok()) << message(list.problem());
    std::int64_t counted = 0;
    std::set<std::tuple<std::string, std::string, bead::Finish>> beads;
    for (const BeadLine& bead : list->beads) {
      counted += bead.count;
      std::int64_t used = 0;
      for (const LetterUse& use : bead.uses) {
        used += use.count;
        const auto& legend = projects[use.project].legend;
        const auto entry = std::find_if(legend.begin(), legend.end(),
                                        [&](const LegendEntry& e) { return e.letter == use.letter; });
        ASSERT_NE(entry, legend.end());
        EXPECT_EQ(entry->name, bead.name);
      }
      EXPECT_EQ(bead.count, kits * used);
      EXPECT_TRUE(beads.insert({bead.size_id, bead.name, bead.finish}).second) << "a bead on two lines";
    }
    EXPECT_EQ(counted, kits * cells_of(projects));
  }
}

TEST(supply_list_collection, kits_scale_exactly) {
  for (std::uint64_t seed = 0; seed < 40; ++seed) {
    CollectionDraw draw(seed);
    const auto projects = draw.collection(1 + draw.below(4));
    const int kits = 2 + draw.below(300);
    for (const bool in_bags : {false, true}) {
      const auto one = collection_supplies(projects, {.kits = 1, .in_bags = in_bags});
      const auto many = collection_supplies(projects, {.kits = kits, .in_bags = in_bags});
      ASSERT_TRUE(one.ok() && many.ok());
      ASSERT_EQ(one->beads.size(), many->beads.size());
      for (std::size_t i = 0; i < one->beads.size(); ++i) {
        EXPECT_EQ(many->beads[i].count, kits * one->beads[i].count);
        EXPECT_EQ(many->beads[i].uses, one->beads[i].uses);
        const std::int64_t whole = kits * tenths_of(one->beads[i].mass),
                           together = tenths_of(many->beads[i].mass);
        if (in_bags) {
          EXPECT_EQ(together, whole);
        } else {
          // Rounded up once, not once a kit.
          EXPECT_LE(together, whole);
          EXPECT_GT(together, whole - kits);
        }
      }
      for (const auto& [a, b] :
           {std::pair(&one->forms, &many->forms), std::pair(&one->threads, &many->threads),
            std::pair(&one->findings, &many->findings)}) {
        ASSERT_EQ(a->size(), b->size());
        for (std::size_t i = 0; i < a->size(); ++i)
          EXPECT_NEAR((*b)[i].count, kits * (*a)[i].count, 1e-6 * kits);
      }
      EXPECT_EQ(one->tools, many->tools);
    }
  }
}

TEST(supply_list_collection, one_project_without_a_stock_is_its_supply_list) {
  for (std::uint64_t seed = 0; seed < 40; ++seed) {
    CollectionDraw draw(seed);
    const Project project = draw.project(0);
    const auto list = collection_supplies({&project, 1}, {.kits = 7});
    const auto plain = supply_list(project, 7);
    ASSERT_TRUE(list.ok() && plain.ok());
    ASSERT_EQ(list->beads.size(), plain->beads.beads.size());
    for (std::size_t i = 0; i < list->beads.size(); ++i) {
      const BeadLine& bead = list->beads[i];
      const materials::BeadSupply& same = plain->beads.beads[i];
      EXPECT_EQ(bead.letter, same.letter);
      EXPECT_EQ(bead.count, same.count);
      EXPECT_EQ(bead.mass, same.mass);
      EXPECT_EQ(bead.size, same.size);
      EXPECT_EQ(bead.purchase.packs[0].packs, same.packs);
      EXPECT_EQ(bead.purchase.cost, same.cost);
    }
    EXPECT_EQ(list->total, plain->beads.total);
    EXPECT_NEAR(list->threads[0].count, plain->thread.mm(), 1e-6);
    EXPECT_EQ(list->tools, plain->tools);
    ASSERT_EQ(list->forms.size(), plain->forms.size());
    for (std::size_t i = 0; i < list->forms.size(); ++i)
      EXPECT_EQ(list->forms[i].count, plain->forms[i].count);
  }
}

TEST(supply_list_collection, a_stock_is_given_out_once_and_the_rest_is_bought) {
  int short_lines = 0, covered = 0;
  for (std::uint64_t seed = 0; seed < 60; ++seed) {
    CollectionDraw draw(seed);
    const auto projects = draw.collection(2 + draw.below(3));
    const auto stock = draw.stock();
    const auto list = collection_supplies(projects, {.kits = 1 + draw.below(60), .stock = stock});
    ASSERT_TRUE(list.ok()) << message(list.problem());
    std::map<std::string, std::int64_t> taken;
    const auto check = [&](const std::string& code, const materials::Purchase& purchase) {
      EXPECT_EQ(purchase.on_hand + purchase.bought + purchase.still_missing,
                purchase.needed + purchase.left_over);
      if (!code.empty()) taken[code] += std::min(purchase.needed, purchase.on_hand);
      ++(purchase.missing > 0 ? short_lines : covered);
    };
    for (const BeadLine& bead : list->beads) check(bead.code, bead.purchase);
    for (const auto* lines : {&list->forms, &list->threads, &list->findings})
      for (const GoodsLine& line : *lines)
        if (line.purchase) check(line.code, *line.purchase);
    for (const auto& [code, amount] : taken)
      EXPECT_LE(amount, std::max<std::int64_t>(0, stock[*find_code(stock, code)].level.free())) << code;
  }
  EXPECT_GT(short_lines, 50);
  EXPECT_GT(covered, 50);
}

TEST(supply_list_collection, two_lines_share_what_there_is_of_one_item) {
  CollectionDraw draw(1);
  std::vector<Project> projects{draw.project(0)};
  Project& project = projects[0];
  project.legend.resize(2);
  project.legend[0].name = "Ink", project.legend[1].name = "ink ";  // two lines, one item
  project.legend[1].bead = project.legend[0].bead = "cylinder-11";
  project.legend[1].finish = project.legend[0].finish = bead::Finish::opaque;
  project.bands.resize(1);
  project.bands[0].chart = *chart::Chart::make(2, 100);
  project.bands[0].technique = "peyote-even-count";
  project.bands[0].copies = 1;
  for (int step = 0; step < 100; ++step)
    project.bands[0].chart.set({0, step}, 0), project.bands[0].chart.set({1, step}, 1);
  materials::StockedItem ink;
  ink.item.code = "ink";
  ink.item.name = "ink";
  ink.item.what = materials::BeadStock{"cylinder-11", bead::Finish::opaque, {}, 100.0};
  ink.level.on_hand = 1'500;
  project.allowance = 0;
  const auto list = collection_supplies(projects, {.stock = {&ink, 1}});
  ASSERT_TRUE(list.ok());
  ASSERT_EQ(list->beads.size(), 2u);
  EXPECT_EQ(list->beads[0].mass, grams(1)) << "weighed by the item's own beads to the gram";
  EXPECT_EQ(list->beads[0].purchase.on_hand, 1'500);
  EXPECT_EQ(list->beads[1].purchase.on_hand, 500);
  EXPECT_EQ(list->beads[1].purchase.missing, 500);
}

TEST(supply_list_collection, names_every_projects_letter) {
  CollectionDraw draw(3);
  Project first = draw.project(0), second = first;
  second.title = "Other";
  std::swap(second.legend[0], second.legend[1]);
  std::swap(second.legend[0].letter, second.legend[1].letter);
  for (Project* project : {&first, &second}) {
    project->bands.resize(1);
    project->bands[0].chart.set({0, 0}, 0);
    project->bands[0].chart.set({1, 0}, 1);
  }
  const std::vector<Project> projects{first, second};
  const auto list = collection_supplies(projects, {});
  ASSERT_TRUE(list.ok());
  EXPECT_EQ(list->beads[0].letter, "A, B");
  ASSERT_EQ(list->beads[0].uses.size(), 2u);
  EXPECT_EQ(list->beads[0].uses[0].letter, "A");
  EXPECT_EQ(list->beads[0].uses[1].letter, "B");
  EXPECT_EQ(list->beads[0].uses[1].project, 1u);
}

TEST(supply_list_collection, problems_name_the_project_and_the_setting) {
  CollectionDraw draw(9);
  auto projects = draw.collection(2);
  EXPECT_EQ(collection_supplies(projects, {.kits = 0}).problem().where, "kits");
  projects[1].bands[0].technique = "no such technique";
  const auto list = collection_supplies(projects, {});
  ASSERT_FALSE(list.ok());
  EXPECT_TRUE(list.problem().where.starts_with("Design 1: band Band 0")) << list.problem().where;
}

}  // namespace
}  // namespace evencount::project
