#include "project/strung_sizes.hpp"

#include <gtest/gtest.h>

#include "project/case_file.hpp"
#include "project/json.hpp"
#include "project/supply_list.hpp"
#include "project/supply_list_collection.hpp"
#include "project/supply_list_kits.hpp"

namespace evencount::project {
namespace {

Project demo(const std::string& name) {
  return *parse_project(testing::read_file(EVENCOUNT_SOURCE_DIR "/examples/" + name + ".evencount.json"));
}

double count_of(const std::vector<CountedSupply>& supplies, const std::string& name) {
  double count = 0;
  for (const CountedSupply& supply : supplies)
    if (supply.name == name) count += supply.count;
  return count;
}

TEST(StrungSizes, SuppliesAreWhatIsStrung) {
  for (const char* name : {"moonwatch", "moonwatch-necklace"}) {
    const Project project = demo(name);
    const auto strung = strung_of(project).value();
    const auto wearers = wearers_of(*project.strand);
    const auto sizes = strung_sizes(project, strung, wearers).value();
    ASSERT_EQ(sizes.sizes.size(), wearers.size());
    EXPECT_TRUE(is_sound(sizes)) << name;
    for (std::size_t i = 0; i < wearers.size(); ++i) {
      const auto supplies = strung_supplies(project, wearers[i].name).value();
      const auto uses = uses_of(strung, sizes.sizes[i]);
      double pieces = 0, cord_m = 0, used = 0, cut_mm = 0;
      for (const OtherSupply& supply : supplies) (supply.unit == "m" ? cord_m : pieces) += supply.count;
      for (std::size_t e = 0; e < uses.size(); ++e)
        if (!strung.elements[e].carrier) used += static_cast<double>(uses[e]);
      for (const strand::CutCord& cord : sizes.sizes[i].cords) cut_mm += cord.length.cut.mm();
      EXPECT_EQ(pieces, used) << name << " " << wearers[i].name;
      EXPECT_NEAR(cord_m, cut_mm / 1000, 1e-9);
    }
  }
}

TEST(StrungSizes, EveryListHasThem) {
  const Project project = demo("moonwatch");
  const std::string bead = "8/0 round bead, night blue";
  const auto list = supply_list(project, 3, "S").value();
  EXPECT_EQ(list.size, "S");
  const double in_one = count_of(supply_list(project, 1, "S")->findings, bead);
  EXPECT_GT(in_one, 40);
  EXPECT_EQ(count_of(list.findings, bead), 3 * in_one);
  EXPECT_GT(count_of(supply_list(project, 1, "XL")->findings, bead), in_one);
  EXPECT_EQ(supply_list(project)->size, "M");
  EXPECT_EQ(count_of(kit_of(project, "S")->findings, bead), in_one);
  SupplyRequest request{.kits = 2};
  request.size = "S";
  const auto collection = collection_supplies(std::vector{project}, request).value();
  EXPECT_EQ(collection.sizes, std::vector<std::string>{"S"});
  double gathered = 0;
  for (const GoodsLine& line : collection.findings)
    if (line.name == bead) gathered = line.count;
  EXPECT_EQ(gathered, 2 * in_one);
  EXPECT_EQ(supply_list(project, 1, "XXL").problem().code, ProblemCode::unknown_name);
}

TEST(StrungSizes, WhatTheProjectListsItselfIsAdded) {
  Project project = demo("moonwatch");
  const double before = count_of(supply_list(project)->findings, "two-strand slide clasp");
  EXPECT_EQ(before, 1);
  project.findings.push_back({.name = "two-strand slide clasp", .count = 2});
  EXPECT_EQ(count_of(supply_list(project)->findings, "two-strand slide clasp"), 3);
  project.strand.reset();
  EXPECT_EQ(count_of(supply_list(project)->findings, "two-strand slide clasp"), 2);
  EXPECT_EQ(supply_list(project)->size, "");
}

TEST(StrungSizes, ABrokenLayoutIsAProblemOfTheStrand) {
  Project project = demo("moonwatch");
  project.strand->layout += " (";
  const auto list = supply_list(project);
  ASSERT_FALSE(list.ok());
  EXPECT_TRUE(list.problem().where.starts_with("strand")) << message(list.problem());
}

}  // namespace
}  // namespace evencount::project
