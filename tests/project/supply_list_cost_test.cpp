#include "project/supply_list_cost.hpp"

#include <gtest/gtest.h>

#include "project/random_collection.hpp"

namespace evencount::project {
namespace {

using testing::CollectionDraw;

materials::CostSheet sheet_of(Collection projects, const SupplyRequest& request,
                              const materials::CostSettings& settings) {
  const auto list = collection_supplies(projects, request);
  return *materials::cost_sheet(*piece_use(projects, *list), settings);
}

TEST(supply_list_cost, every_bead_is_stitched_and_paid_once) {
  for (std::uint64_t seed = 0; seed < 40; ++seed) {
    CollectionDraw draw(seed);
    const auto projects = draw.collection(1 + draw.below(4));
    const auto list = collection_supplies(projects, {.kits = 3});
    const auto use = piece_use(projects, *list);
    ASSERT_TRUE(use.ok());
    std::int64_t stitched = 0, listed = 0, bands = 0;
    for (const auto& stitching : use->stitching) stitched += stitching.beads;
    for (const BeadLine& bead : list->beads) listed += bead.count;
    for (const Project& project : projects)
      for (const Band& band : project.bands) bands += band.copies;
    EXPECT_EQ(3 * stitched, listed);
    EXPECT_EQ(use->bands, bands);
    EXPECT_EQ(use->pieces, static_cast<std::int64_t>(projects.size()));
  }
}

TEST(supply_list_cost, what_is_on_hand_is_worth_its_price) {
  CollectionDraw draw(8);
  const auto projects = draw.collection(2);
  auto stock = draw.stock();
  const auto sheet = sheet_of(projects, {.kits = 10, .stock = stock}, {});
  for (auto& stocked : stock) stocked.level = {1'000'000'000, 0};
  EXPECT_EQ(sheet_of(projects, {.kits = 10, .stock = stock}, {}), sheet);
}

TEST(supply_list_cost, savings_are_the_difference_of_the_sheets) {
  int priced = 0;
  for (std::uint64_t seed = 0; seed < 60; ++seed) {
    CollectionDraw draw(seed);
    const std::vector<Project> projects{draw.project(0)};
    const auto stock = draw.stock();
    const SupplyRequest request{.kits = 1 + draw.below(50), .stock = stock};
    const Swap swap{"A", "B"};
    if (projects[0].legend[0].bead != projects[0].legend[1].bead) continue;
    const auto savings = swap_savings(projects, request, {}, swap);
    ASSERT_TRUE(savings.ok()) << message(savings.problem());
    const auto after = swapped(projects, stock, swap);
    ASSERT_TRUE(after.ok());
    EXPECT_EQ(savings->kit_saved, sheet_of(projects, request, {}).cost - sheet_of(*after, request, {}).cost);
    std::int64_t lines = 0;
    for (const CostDifference& line : savings->packs) lines += line.saved();
    EXPECT_EQ(lines, savings->packs_saved);
    const auto with_a = collection_supplies(projects, request),
               without_a = collection_supplies(*after, request);
    if (!with_a->total || !without_a->total) continue;
    ++priced;
    EXPECT_EQ(savings->packs_saved, with_a->total->minor - without_a->total->minor);
  }
  EXPECT_GT(priced, 20);
}

TEST(supply_list_cost, a_bead_for_itself_saves_nothing) {
  CollectionDraw draw(4);
  const std::vector<Project> projects{draw.project(0)};
  const auto savings = swap_savings(projects, {.kits = 4}, {}, {"A", "A"});
  ASSERT_TRUE(savings.ok());
  EXPECT_TRUE(savings->packs.empty());
  EXPECT_TRUE(savings->kit.empty());
}

TEST(supply_list_cost, an_item_of_the_stock_takes_a_letters_place_in_every_project) {
  CollectionDraw draw(4);
  Project project = draw.project(0);
  project.legend[0].bead = "cylinder-11";
  const std::vector<Project> projects{project, project};
  materials::StockedItem gold;
  gold.item.code = "C-104";
  gold.item.name = "gold";
  gold.item.what = materials::BeadStock{"cylinder-11", bead::Finish::metallic, colour::Rgb{200, 160, 60}, {}};
  const auto after = swapped(projects, {&gold, 1}, *parse_swap("A=C-104"));
  ASSERT_TRUE(after.ok()) << message(after.problem());
  for (const Project& changed : *after) {
    EXPECT_EQ(changed.legend[0].name, "gold");
    EXPECT_EQ(changed.legend[0].finish, bead::Finish::metallic);
    EXPECT_EQ(changed.legend[0].letter, "A");
    EXPECT_EQ(changed.legend[0].pack, std::nullopt);
    EXPECT_EQ(changed.legend[1], project.legend[1]);
  }
}

TEST(supply_list_cost, a_swap_that_can_not_be_is_refused) {
  CollectionDraw draw(4);
  Project project = draw.project(0);
  project.legend[0].bead = "cylinder-11";
  project.legend[1].bead = "round-11";
  Project other = project;
  other.legend[0].name = "another";
  const auto code_of = [&](const std::vector<Project>& projects, const Swap& swap) {
    return swapped(projects, {}, swap).problem().code;
  };
  EXPECT_EQ(code_of({project}, {"Z", "A"}), ProblemCode::unknown_name);
  EXPECT_EQ(code_of({project}, {"A", "C-104"}), ProblemCode::unknown_name);
  EXPECT_EQ(code_of({project}, {"A", "B"}), ProblemCode::bad_usage) << "another size";
  EXPECT_EQ(code_of({project, other}, {"A", "A"}), ProblemCode::bad_usage) << "two beads of one letter";
  for (const char* text : {"", "A", "=", "A=", "=B"})
    EXPECT_EQ(parse_swap(text).problem().code, ProblemCode::bad_text) << text;
  EXPECT_EQ(*parse_swap("B = C-104"), (Swap{"B", "C-104"}));
}

TEST(supply_list_cost, the_first_project_with_settings_sets_them) {
  CollectionDraw draw(4);
  auto projects = draw.collection(2);
  EXPECT_EQ(settings_of(projects), materials::CostSettings{});
  projects[1].costing.emplace().settings.hour_minor = 2500;
  EXPECT_EQ(settings_of(projects).hour_minor, 2500);
}

}  // namespace
}  // namespace evencount::project
