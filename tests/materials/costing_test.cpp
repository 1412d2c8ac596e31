#include "materials/costing.hpp"

#include <gtest/gtest.h>

#include <functional>
#include <limits>
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

// Another way round: floor, then one more where the rest is half or more. Amounts here stay far below 2^63.
std::int64_t nearest(std::int64_t amount, std::int64_t part) {
  return amount / part + (2 * (amount % part) >= part ? 1 : 0);
}

using Line = std::pair<std::string, std::int64_t>;

std::int64_t sum_of(const std::vector<Line>& lines) {
  std::int64_t sum = 0;
  for (const Line& line : lines) sum += line.second;
  return sum;
}

std::vector<Line> material_lines(const PieceUse& use, const CostSettings& settings) {
  std::vector<Line> lines;
  for (const MaterialUse& one : use.materials)
    lines.push_back({one.what, nearest(one.rate->cost.minor * one.amount, one.rate->amount * use.kits)});
  if (settings.other_materials_minor > 0)
    lines.push_back({"other materials", settings.other_materials_minor * use.pieces});
  if (settings.waste.hundredths > 0 && sum_of(lines) > 0)
    lines.push_back({"waste", nearest(sum_of(lines) * settings.waste.hundredths, 10'000)});
  return lines;
}

std::vector<Line> labour_lines(const PieceUse& use, const CostSettings& settings) {
  std::vector<Line> lines;
  for (const StitchingUse& one : use.stitching) {
    const std::int64_t slower = technique_percent(settings, one.technique).hundredths;
    lines.push_back({"stitching, " + one.name,
                     nearest(one.beads * settings.minutes_a_day * slower / 100 * settings.hour_minor,
                             settings.beads_a_day * 100 * 60)});
  }
  if (use.bands * settings.finishing_minutes > 0)
    lines.push_back({"finishing", nearest(use.bands * settings.finishing_minutes * settings.hour_minor, 60)});
  if (use.pieces * settings.assembly_minutes > 0)
    lines.push_back({"assembly", nearest(use.pieces * settings.assembly_minutes * settings.hour_minor, 60)});
  return lines;
}

std::vector<Line> overhead_lines(const PieceUse& use, const CostSettings& settings, std::int64_t so_far) {
  std::vector<Line> lines;
  if (settings.overhead.hundredths > 0)
    lines.push_back({"overhead", nearest(so_far * settings.overhead.hundredths, 10'000)});
  if (settings.overhead_minor > 0) lines.push_back({"fixed overhead", settings.overhead_minor * use.pieces});
  return lines;
}

std::vector<Line> without_words(const CostPart& part) {
  std::vector<Line> lines;
  for (const CostLine& line : part.lines) lines.push_back({line.what, line.minor});
  return lines;
}

TEST(costing, every_line_is_there_and_to_the_cent) {
  std::mt19937 random(43);
  for (int round = 0; round < 400; ++round) {
    PieceUse use = random_use(random);
    CostSettings settings = random_settings(random);
    use.pieces = below(random, 4);
    settings.assembly_minutes = below(random, 3);
    settings.finishing_minutes = below(random, 3);
    settings.other_materials_minor = below(random, 3);
    settings.overhead_minor = below(random, 3);
    // None at all, and so little that it may round to nothing: the line is there all the same.
    if (round % 3 == 0) settings.waste = {below(random, 3)};
    if (round % 4 == 0) settings.overhead = {below(random, 3)};
    if (round % 5 == 0) use.materials.assign(1, material(below(random, 3)));
    const auto sheet = cost_sheet(use, settings);
    ASSERT_TRUE(sheet.ok());
    const auto materials = material_lines(use, settings), labour = labour_lines(use, settings);
    EXPECT_EQ(without_words(sheet->materials), materials);
    EXPECT_EQ(without_words(sheet->labour), labour);
    EXPECT_EQ(without_words(sheet->overhead),
              overhead_lines(use, settings, sum_of(materials) + sum_of(labour)));
  }
}

TEST(costing, every_line_says_where_its_figure_comes_from) {
  CostSettings settings = plain_settings();
  settings.hour_minor = 1800;
  settings.other_materials_minor = 25;
  settings.waste = {750};
  settings.overhead = {1250};
  settings.overhead_minor = 40;
  settings.finishing_minutes = 30;
  settings.assembly_minutes = 59;
  PieceUse use;
  use.materials = {{"clasp", "1 piece", 1, PackRate{{300, "EUR"}, 1}}};
  use.stitching = {{"square", "square stitch", 1200}};
  use.bands = 2;
  const auto sheet = cost_sheet(use, settings);
  std::vector<std::string> said;
  for (const CostPart* part : {&sheet->materials, &sheet->labour, &sheet->overhead})
    for (const CostLine& line : part->lines) said.push_back(line.what + ": " + line.how);
  EXPECT_EQ(said, (std::vector<std::string>{
                      "clasp: 1 piece", "other materials: as set", "waste: 7.5 % of the materials",
                      "stitching, square stitch: 1200 beads, 1200 in 360 min, 170 % of the time of flat peyote: 10 h 12 min",
                      "finishing: 2 bands, 30 min each: 1 h 00 min", "assembly: 59 min",
                      "overhead: 12.5 % of materials and labour", "fixed overhead: as set"}));
}

TEST(costing, a_price_says_its_rule_with_its_figures) {
  const auto how = [](const PriceRule& rule) {
    CostSettings settings = plain_settings();
    settings.hour_minor = 1800;
    settings.assembly_minutes = 10;
    settings.overhead_minor = 105;
    settings.own_rule = rule;
    PieceUse use;
    use.materials = {material(200)};
    return cost_sheet(use, settings)->prices.back().how;
  };
  EXPECT_EQ(how(multiple_of_cost()),
            "(materials 2.00 + labour 3.00 + overhead 1.05) × 2 wholesale, × 2.5 retail, × 3 at the most");
  EXPECT_EQ(how(materials_four_times()), "(4 × materials 2.00 + labour 3.00) × 1.1 retail");
  EXPECT_EQ(how({"", {0}, {0}, {101}, Factor{0}, {}, {}}), "(1.01 × overhead 1.05) × 0 wholesale");
  EXPECT_EQ(how({"", {0}, {0}, {0}, {}, {}, Factor{100}}), "(nothing) × 1 at the most");
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
  // From memory, as they are offered.
  for (const auto& [technique, in_hundred] :
       {std::pair{"two-drop-even-count", 70}, {"two-drop-odd-count", 75}, {"peyote-odd-count", 110},
        {"peyote-odd-count-figure-8", 110}, {"peyote-shaped", 115}, {"tubular-even-count", 110},
        {"tubular-odd-count", 110}, {"peyote-bezel", 130}, {"brick", 120}, {"brick-shaped", 125}, {"square", 170},
        {"loom", 50}, {"herringbone", 80}, {"right-angle", 130}})
    EXPECT_EQ(technique_percent({}, technique), percent(in_hundred)) << technique;
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

TEST(costing, every_figure_has_its_limits) {
  struct Limits {
    std::string_view where;
    std::int64_t least, most;
    std::function<void(CostSettings&, PieceUse&, std::int64_t)> set;
  };
  const auto of_rule = [](Factor PriceRule::*factor) {
    return [factor](CostSettings& s, PieceUse&, std::int64_t v) { s.own_rule.emplace().*factor = {v}; };
  };
  const auto of_price = [](std::optional<Factor> PriceRule::*factor) {
    return [factor](CostSettings& s, PieceUse&, std::int64_t v) { s.own_rule.emplace().*factor = Factor{v}; };
  };
  const auto of_settings = [](std::int64_t CostSettings::*member) {
    return [member](CostSettings& s, PieceUse&, std::int64_t v) { s.*member = v; };
  };
  const std::int64_t any = std::numeric_limits<std::int64_t>::max();
  const Limits table[] = {
      {"hour_minor", 0, most_setting_minor, of_settings(&CostSettings::hour_minor)},
      {"beads_a_day", 1, most_setting_minor, of_settings(&CostSettings::beads_a_day)},
      {"minutes_a_day", 0, most_minutes, of_settings(&CostSettings::minutes_a_day)},
      {"finishing_minutes", 0, most_minutes, of_settings(&CostSettings::finishing_minutes)},
      {"assembly_minutes", 0, most_minutes, of_settings(&CostSettings::assembly_minutes)},
      {"other_materials_minor", 0, most_setting_minor, of_settings(&CostSettings::other_materials_minor)},
      {"overhead_minor", 0, most_setting_minor, of_settings(&CostSettings::overhead_minor)},
      {"waste_percent", 0, most_hundredths, [](auto& s, auto&, auto v) { s.waste = {v}; }},
      {"overhead_percent", 0, most_hundredths, [](auto& s, auto&, auto v) { s.overhead = {v}; }},
      {"technique_percent/loom", 0, most_hundredths,
       [](auto& s, auto&, auto v) {
         s.technique_time = {{"brick", percent(1)}, {"loom", {v}}};
       }},
      {"rule/materials", 0, most_hundredths, of_rule(&PriceRule::materials)},
      {"rule/labour", 0, most_hundredths, of_rule(&PriceRule::labour)},
      {"rule/overhead", 0, most_hundredths, of_rule(&PriceRule::overhead)},
      {"rule/wholesale", 0, most_hundredths, of_price(&PriceRule::wholesale)},
      {"rule/retail", 0, most_hundredths, of_price(&PriceRule::retail)},
      {"rule/retail_to", 0, most_hundredths, of_price(&PriceRule::retail_to)},
      {"kits", 1, 100'000, [](auto&, auto& use, auto v) { use.kits = v; }},
      {"bands", 0, 1'000'000'000'000, [](auto&, auto& use, auto v) { use.bands = v; }},
      {"pieces", 0, 100'000, [](auto&, auto& use, auto v) { use.pieces = v; }},
      {"beads", 0, 1'000'000'000'000, [](auto&, auto& use, auto v) { use.stitching = {{"loom", "", v}}; }},
      {"amount", 0, 1'000'000'000'000'000, [](auto&, auto& use, auto v) { use.materials = {material(0, v)}; }},
      {"rate", 0, any, [](auto&, auto& use, auto v) { use.materials = {material(v, 0)}; }},
      {"rate", 1, 2'000'000'000'000'000, [](auto&, auto& use, auto v) { use.materials = {material(1, 1, v)}; }},
  };
  for (const Limits& limits : table) {
    SCOPED_TRACE(limits.where);
    const auto problem_at = [&](std::int64_t value) -> std::optional<Problem> {
      CostSettings settings = plain_settings();
      settings.hour_minor = 0;
      PieceUse use;
      limits.set(settings, use, value);
      const auto sheet = cost_sheet(use, settings);
      return sheet ? std::nullopt : std::optional(sheet.problem());
    };
    EXPECT_EQ(problem_at(limits.least), std::nullopt);
    EXPECT_EQ(problem_at(limits.most), std::nullopt);
    const auto refused = [&](std::int64_t value) {
      return Problem{ProblemCode::out_of_range, std::string(limits.where), std::to_string(value),
                     "from " + std::to_string(limits.least) + " to " + std::to_string(limits.most)};
    };
    EXPECT_EQ(problem_at(limits.least - 1), refused(limits.least - 1));
    if (limits.most < any) {
      EXPECT_EQ(problem_at(limits.most + 1), refused(limits.most + 1));
    }
  }
}

TEST(costing, a_sum_is_held_to_the_last_cent) {
  const std::int64_t most = std::numeric_limits<std::int64_t>::max();
  CostSettings settings = plain_settings();
  PieceUse use;
  use.materials = {material(most / 8)};
  settings.own_rule = PriceRule{"", {100}, {}, {}, Factor{500}, {}, {}};  // 5 / 8 of what money holds: the others are 3 / 8 and 4.4 / 8
  EXPECT_TRUE(cost_sheet(use, settings).ok());
  settings.own_rule->wholesale = Factor{900};
  EXPECT_EQ(cost_sheet(use, settings).problem(),
            (Problem{ProblemCode::out_of_range, "cost", "more than can be written down", "a smaller sum"}));
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
