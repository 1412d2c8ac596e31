#include "materials/costing.hpp"

#include <gtest/gtest.h>

#include <random>

#include "materials/supplies.hpp"
#include "weave/technique.hpp"

namespace evencount::materials {
namespace {

/// Nothing is added that was not asked for.
CostSettings plain_settings() {
  CostSettings settings;
  settings.finishing_minutes = settings.assembly_minutes = 0;
  settings.waste = settings.overhead = percent(0);
  return settings;
}

MaterialUse material(std::int64_t minor, std::int64_t amount = 1, std::int64_t of = 1) {
  return {"beads", "", amount, PackRate{{minor, "EUR"}, of}};
}

/// Supplies 2, labour 3 (10 minutes at 18 an hour), overhead 1.
CostSheet published_example() {
  CostSettings settings = plain_settings();
  settings.hour_minor = 1800;
  settings.assembly_minutes = 10;
  settings.overhead_minor = 100;
  PieceUse use;
  use.materials = {material(200)};
  return *cost_sheet(use, settings);
}

TEST(costing, the_published_example_to_the_cent) {
  // "Jewelry Pricing", jewelrymaking.about.com/od/basicbizinfo/a/120505_3.htm: supplies 2, labour 3, overhead 1; wholesale 12 (cost times
  // 2), retail 15 to 18 (times 2.5 to 3).
  const CostSheet sheet = published_example();
  EXPECT_EQ(sheet.materials.minor, 200);
  EXPECT_EQ(sheet.labour.minor, 300);
  EXPECT_EQ(sheet.overhead.minor, 100);
  EXPECT_EQ(sheet.cost, 600);
  EXPECT_EQ(sheet.prices[0].wholesale, 1200);
  EXPECT_EQ(sheet.prices[0].retail, 1500);
  EXPECT_EQ(sheet.prices[0].retail_to, 1800);
}

TEST(costing, the_second_rule_to_the_cent) {
  // A second pricing rule in use, (4 x materials + labour) x 1.10: common practice, no source. (4 x 2 + 3) x 1.10 = 12.10.
  EXPECT_EQ(published_example().prices[1].retail, 1210);
  EXPECT_EQ(published_example().prices[1].wholesale, std::nullopt);
}

TEST(costing, the_designers_own_rule_comes_third) {
  CostSettings settings = plain_settings();
  settings.own_rule = PriceRule{"mine", {300}, {150}, {0}, Factor{105}, Factor{215}, {}};
  settings.assembly_minutes = 10;
  PieceUse use;
  use.materials = {material(200)};
  const auto sheet = cost_sheet(use, settings);
  ASSERT_EQ(sheet->prices.size(), 3u);
  EXPECT_EQ(sheet->prices[2].rule, "mine");
  EXPECT_EQ(sheet->prices[2].wholesale, 1103);  // (6 + 4.50) x 1.05 = 11.025, a half cent upwards
  EXPECT_EQ(sheet->prices[2].retail, 2258);     // 22.575
  EXPECT_EQ(sheet->prices[2].how, "(3 × materials 2.00 + 1.5 × labour 3.00) × 1.05 wholesale, × 2.15 retail");
}

std::int64_t below(std::mt19937& random, std::uint64_t n) {
  return static_cast<std::int64_t>(random() % n);
}

PieceUse random_use(std::mt19937& random) {
  PieceUse use;
  use.kits = 1 + below(random, 500);
  for (std::size_t i = below(random, 6); i > 0; --i)
    use.materials.push_back(material(below(random, 5000), below(random, 100'000), 1 + below(random, 90'000)));
  for (std::size_t i = below(random, 3); i > 0; --i)
    use.stitching.push_back({std::string(weave::techniques()[random() % weave::techniques().size()].id), "",
                             below(random, 100'000)});
  use.bands = below(random, 30);
  return use;
}

CostSettings random_settings(std::mt19937& random) {
  CostSettings settings;
  settings.hour_minor = below(random, 5000);
  settings.beads_a_day = 1 + below(random, 3000);
  settings.finishing_minutes = below(random, 20);
  settings.waste = {below(random, 2000)};
  settings.overhead = {below(random, 5000)};
  settings.overhead_minor = below(random, 300);
  settings.other_materials_minor = below(random, 300);
  settings.own_rule =
      PriceRule{"own", {below(random, 500)}, {below(random, 500)}, {100}, Factor{below(random, 400)}, {}, {}};
  return settings;
}

TEST(costing, sums_are_of_what_is_printed_and_prices_of_the_sums) {
  std::mt19937 random(41);
  for (int round = 0; round < 300; ++round) {
    const auto sheet = cost_sheet(random_use(random), random_settings(random));
    ASSERT_TRUE(sheet.ok()) << message(sheet.problem());
    for (const CostPart* part : {&sheet->materials, &sheet->labour, &sheet->overhead}) {
      std::int64_t sum = 0;
      for (const CostLine& line : part->lines) sum += line.minor;
      EXPECT_EQ(sum, part->minor);
    }
    EXPECT_EQ(sheet->cost, sheet->materials.minor + sheet->labour.minor + sheet->overhead.minor);
    EXPECT_EQ(sheet->prices[0].wholesale, 2 * sheet->cost);
    EXPECT_EQ(sheet->prices[0].retail_to, 3 * sheet->cost);
    const double four_times = 1.1 * static_cast<double>(4 * sheet->materials.minor + sheet->labour.minor);
    EXPECT_NEAR(static_cast<double>(*sheet->prices[1].retail), four_times, 0.5 + 1e-6);
  }
}

TEST(costing, nothing_gets_cheaper_when_a_figure_grows) {
  std::mt19937 random(42);
  for (int round = 0; round < 200; ++round) {
    PieceUse use = random_use(random);
    CostSettings settings = random_settings(random);
    const std::int64_t before = cost_sheet(use, settings)->cost;
    switch (round % 7) {
      case 0:
        settings.hour_minor += 100;
        break;
      case 1:
        settings.beads_a_day = std::max<std::int64_t>(1, settings.beads_a_day - 100);
        break;
      case 2:
        settings.waste.hundredths += 50;
        break;
      case 3:
        settings.overhead.hundredths += 50;
        break;
      case 4:
        for (StitchingUse& stitching : use.stitching) stitching.beads += 100;
        break;
      case 5:
        for (MaterialUse& one : use.materials) one.amount += 500;
        break;
      default:
        use.bands += 1;
    }
    EXPECT_GE(cost_sheet(use, settings)->cost, before) << round % 7;
  }
}

TEST(costing, stitching_is_paid_by_the_bead_and_the_technique) {
  CostSettings settings = plain_settings();
  settings.beads_a_day = 1200;
  settings.minutes_a_day = 360;
  PieceUse use;
  use.stitching = {{"peyote-even-count", "flat peyote, even count", 1152},
                   {"square", "square stitch", 1152},
                   {"loom", "loom work", 1152}};
  settings.technique_time = {{"loom", {5050}}};
  const auto sheet = cost_sheet(use, settings);
  // 1152 of 1200 beads are 345.6 of 360 minutes: 103.68 at 18.00 an hour.
  EXPECT_EQ(sheet->labour.lines[0].minor, 10368);
  EXPECT_EQ(sheet->labour.lines[0].how, "1152 beads, 1200 in 360 min: 5 h 46 min");
  EXPECT_EQ(sheet->labour.lines[1].minor, 17626);  // 1.7 times, 176.256
  EXPECT_EQ(sheet->labour.lines[2].minor, 5236);   // 0.505 times, 52.3584
}

TEST(costing, the_usual_times_are_of_techniques_that_exist) {
  int listed = 0;
  for (const weave::Technique& technique : weave::techniques())
    listed += technique_percent({}, technique.id) != percent(100);
  EXPECT_EQ(listed, static_cast<int>(weave::techniques().size()) - 1)
      << "all but flat peyote, even count, have a time of their own";
  EXPECT_EQ(technique_percent({}, "peyote-even-count"), percent(100));
}

TEST(costing, a_kit_costs_its_share_of_the_packs) {
  PieceUse use;
  use.kits = 10;
  use.materials = {material(1180, 15'100, 20'000)};  // 15.1 g of two tens at 5.90
  const auto sheet = cost_sheet(use, plain_settings());
  EXPECT_EQ(sheet->materials.minor, 89);  // 0.8909
}

TEST(costing, what_has_no_price_in_the_currency_is_named) {
  PieceUse use;
  use.materials = {material(200), {"clasp", "", 1, {}}, {"cord", "", 1, PackRate{{100, "CHF"}, 1}}};
  const auto sheet = cost_sheet(use, plain_settings());
  EXPECT_EQ(sheet->unpriced, (std::vector<std::string>{"clasp", "cord"}));
  EXPECT_EQ(sheet->cost, 200);
}

TEST(costing, what_makes_no_sense_is_out_of_range) {
  const auto refused = [](auto change, std::string_view where) {
    CostSettings settings;
    change(settings);
    const auto sheet = cost_sheet({}, settings);
    ASSERT_FALSE(sheet.ok()) << where;
    EXPECT_EQ(sheet.problem().code, ProblemCode::out_of_range);
    EXPECT_EQ(sheet.problem().where, where);
  };
  refused([](CostSettings& s) { s.hour_minor = -1; }, "hour_minor");
  refused([](CostSettings& s) { s.beads_a_day = 0; }, "beads_a_day");
  refused([](CostSettings& s) { s.waste = {-1}; }, "waste_percent");
  refused([](CostSettings& s) { s.technique_time = {{"brick", {-1}}}; }, "technique_percent/brick");
  refused([](CostSettings& s) { s.own_rule = PriceRule{"", {most_hundredths + 1}, {}, {}, {}, {}, {}}; },
          "rule/materials");
  PieceUse use;
  use.kits = 0;
  EXPECT_EQ(cost_sheet(use, {}).problem().where, "kits");
  use.kits = 1;
  use.materials = {material(std::int64_t{9'000'000'000'000'000'000}),
                   material(std::int64_t{9'000'000'000'000'000'000})};
  EXPECT_EQ(cost_sheet(use, {}).problem().where, "cost");
}

}  // namespace
}  // namespace evencount::materials
