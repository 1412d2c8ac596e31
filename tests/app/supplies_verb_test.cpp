#include <gtest/gtest.h>

#include "app/project_file.hpp"
#include "app/run.hpp"
#include "app/verbs/supplies_answer.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::app {
namespace {

using namespace evencount::testing;
using nlohmann::json;

/// The demo with a pack for every bead, saved in the folder.
std::string priced_demo(const TemporaryFolder& folder) {
  auto project = load_project(example("moonwatch")).value();
  for (project::LegendEntry& entry : project.legend) entry.pack = project::Pack{grams(5), Money{320}, {}};
  const std::string path = folder / "priced.evencount.json";
  EXPECT_TRUE(save_project(path, project).ok());
  return path;
}

Ran run_with(const SuppliesArguments& arguments, project::Stock stock) {
  std::ostringstream out, err;
  const int status = supplies_from_stock(arguments, stock, {out, err});
  return {status, out.str(), err.str()};
}

std::vector<materials::StockedItem> stock() {
  materials::StockedItem ivory, cream, thread, clasp;
  ivory.item = {"C-1",
                "Moon ivory",
                materials::BeadStock{"cylinder-11", bead::Finish::opaque, colour::Rgb{0xf3, 0xe9, 0xcf}, {}},
                {{5'000, Money{300}, "A supplier", "51", ""}, {50'000, Money{2'100}, "", "", ""}},
                ""};
  ivory.level = {4'000, 1'000};
  cream.item = {"C-2",
                "cream",
                materials::BeadStock{"cylinder-11", bead::Finish::lustre, colour::Rgb{0xf0, 0xe4, 0xc8}, {}},
                {{5'000, Money{150}, "", "", ""}},
                ""};
  cream.level = {40'000, 0};
  thread.item = {
      "T-1", "braided", materials::ThreadStock{"braided-6lb", {}}, {{114'000, Money{990}, "", "", ""}}, ""};
  thread.level = {10'000, 0};
  clasp.item = {"N-1",
                "Two-strand slide clasp",
                materials::FindingStock{"clasp"},
                {{1, Money{280}, "", "", ""}, {10, Money{1'900}, "", "", ""}},
                ""};
  clasp.level = {3, 0};
  return {ivory, cream, thread, clasp};
}

TEST(SuppliesVerb, AnswersWhatOthersRelyOn) {
  const TemporaryFolder folder;
  const Ran ran = run({"supplies", priced_demo(folder), "--kits", "10", "--json"});
  ASSERT_EQ(ran.status, exit_done) << ran.err;
  const json answer = ran.json();
  ASSERT_EQ(answer["beads"].size(), 8u);
  EXPECT_EQ(answer["beads"][0]["letter"], "A");
  EXPECT_EQ(answer["beads"][0]["name"], "night blue");
  EXPECT_EQ(answer["beads"][0]["size"], "11/0 cylinder bead");
  EXPECT_EQ(answer["beads"][0]["count"], 2670);
  EXPECT_EQ(answer["beads"][0]["grams"], 15.1);
  EXPECT_EQ(answer["beads"][0]["packs"], 4);
  EXPECT_EQ(answer["beads"][0]["cost"], (json{{"minor", 1280}, {"currency", "EUR"}}));
  EXPECT_EQ(answer["thread"]["name"], "6 lb braided beading thread");
  EXPECT_GT(answer["thread"]["cut_mm"], 60'000);
  EXPECT_EQ(answer["findings"][0]["count"], 10);
  std::int64_t total = 0;
  for (const json& bead : answer["beads"]) total += bead["cost"]["minor"].get<std::int64_t>();
  EXPECT_EQ(answer["total"]["minor"], total);
}

TEST(SuppliesVerb, WithoutPacksNothingIsCounted) {
  const json answer = run({"supplies", example("moonwatch"), "--json"}).json();
  EXPECT_TRUE(answer["beads"][0]["packs"].is_null());
  EXPECT_TRUE(answer["beads"][0]["cost"].is_null());
  EXPECT_TRUE(answer["total"].is_null());
}

TEST(SuppliesVerb, ACollectionIsOneList) {
  const json one = run({"supplies", example("moonwatch"), "--json"}).json();
  const json other = run({"supplies", example("moonwatch-necklace"), "--json"}).json();
  const json both = run({"supplies", example("moonwatch"), example("moonwatch-necklace"), "--json"}).json();
  const auto beads_of = [](const json& answer) {
    std::int64_t count = 0;
    for (const json& bead : answer["beads"]) count += bead["count"].get<std::int64_t>();
    return count;
  };
  EXPECT_EQ(beads_of(both), beads_of(one) + beads_of(other));
  EXPECT_EQ(both["beads"].size(), 9u);
  EXPECT_EQ(both["beads"][0]["letters"].size(), 2u);
  EXPECT_NEAR(both["thread"]["cut_mm"],
              one["thread"]["cut_mm"].get<double>() + other["thread"]["cut_mm"].get<double>(), 0.2);
}

TEST(SuppliesVerb, TheStockIsUsedBeforeAnythingIsBought) {
  const auto owned = stock();
  const Ran ran = run_with({.projects = {example("moonwatch")}, .kits = 10, .json = true}, owned);
  ASSERT_EQ(ran.status, exit_done) << ran.err;
  const json answer = ran.json();
  const json& ivory = answer["beads"][1];
  EXPECT_EQ(ivory["code"], "C-1");
  EXPECT_EQ(ivory["purchase"]["on_hand"], 3) << "one gram of four is promised";
  EXPECT_EQ(ivory["purchase"]["short"], 5.1);
  EXPECT_EQ(ivory["purchase"]["buy"][0]["packs"], 2);
  EXPECT_EQ(ivory["purchase"]["buy"][0]["supplier"], "A supplier");
  EXPECT_EQ(ivory["purchase"]["left_over"], 4.9);
  EXPECT_EQ(answer["findings"][0]["purchase"]["short"], 7);
  EXPECT_EQ(answer["findings"][0]["purchase"]["cost"]["minor"], 1900) << "ten cost less than seven";
  EXPECT_NEAR(answer["thread"]["cut_mm"], answer["threads"][0]["count"].get<double>(), 0.06);
  EXPECT_EQ(answer["threads"][0]["purchase"]["buy"][0]["packs"], 1);
  EXPECT_EQ(answer["short"].size(), 3u) << "nothing in the stock comes near the others";
}

TEST(SuppliesVerb, WhatIsShortHasSubstitutes) {
  const auto owned = stock();
  const Ran ran = run_with({.projects = {example("moonwatch")}, .kits = 10}, owned);
  ASSERT_EQ(ran.status, exit_done) << ran.err;
  EXPECT_NE(ran.out.find("B moon ivory: 5.1 g short; its nearest neighbour in the charts is"),
            std::string::npos)
      << ran.out;
  EXPECT_NE(ran.out.find("C-2 cream, lustre: "), std::string::npos) << ran.out;
  EXPECT_NE(ran.out.find("40 g on hand, enough; then "), std::string::npos) << ran.out;
}

TEST(SuppliesVerb, ThePickListFillsEveryBag) {
  const Ran ran = run({"supplies", example("moonwatch"), "--kits", "10", "--pick", "--json"});
  ASSERT_EQ(ran.status, exit_done) << ran.err;
  const json answer = ran.json();
  const json& kit = answer["pick"][0];
  ASSERT_EQ(kit["bags"].size(), answer["beads"].size());
  for (std::size_t i = 0; i < kit["bags"].size(); ++i) {
    const json &bag = kit["bags"][i], &bead = answer["beads"][i];
    EXPECT_EQ(10 * bag["count"].get<int>(), bead["count"]);
    EXPECT_GE(bag["packed"].get<int>(), 1.1 * bag["count"].get<int>() - 1e-9);
    EXPECT_NEAR(10 * bag["grams"].get<double>(), bead["grams"].get<double>(), 1e-9);
  }
  EXPECT_EQ(kit["thread"]["lengths"], (json::array({{{"length_mm", 800.0}, {"count", 8}}})));
  EXPECT_NE(run({"supplies", example("moonwatch"), "--pick"}).out.find("[ ] bag A "), std::string::npos);
}

TEST(SuppliesVerb, RatesComeFromTheProjectAFileAndOptions) {
  const TemporaryFolder folder;
  const std::string path = priced_demo(folder);
  auto project = load_project(path).value();
  project.costing.emplace().settings.hour_minor = 2000;
  ASSERT_TRUE(save_project(path, project).ok());
  const auto assembly_of = [](const Ran& ran) {
    return ran.json()["price"]["labour"]["lines"][2]["minor"].get<int>();
  };
  EXPECT_EQ(assembly_of(run({"supplies", path, "--price", "--json"})), 667);  // 20 minutes at 20.00
  spill(folder / "rates.json", R"({"hour_minor": 2400, "assembly_minutes": 30})");
  EXPECT_EQ(assembly_of(run({"supplies", path, "--price", "--json", "--costing", folder / "rates.json"})),
            1200);
  const Ran ran = run({"supplies", path, "--price", "--json", "--hour", "15", "--retail", "2.2"});
  EXPECT_EQ(assembly_of(ran), 500);
  const json price = ran.json()["price"];
  EXPECT_EQ(price["prices"][2]["rule"], "own rule");
  EXPECT_EQ(price["prices"][2]["retail"], (22 * price["cost"].get<int>() + 5) / 10);
  const Ran text = run({"supplies", path, "--price"});
  EXPECT_NE(text.out.find("4 × materials: (4 × materials "), std::string::npos) << text.out;
}

TEST(SuppliesVerb, ASwapShowsWhatItSaves) {
  const auto owned = stock();
  const TemporaryFolder folder;
  const std::string path = priced_demo(folder);
  const Ran ran = run_with({.projects = {path}, .kits = 100, .swaps = {"B=C-2"}, .json = true}, owned);
  ASSERT_EQ(ran.status, exit_done) << ran.err;
  const json swap = ran.json()["swaps"][0];
  // 80.2 g of ivory: 77.2 to buy, a fifty and six fives, 39.00. 40 g of cream are there: 40.2 to buy, nine fives, 13.50.
  EXPECT_EQ(swap["packs_saved"], 3900 - 1350);
  EXPECT_EQ(swap["packs"].size(), 2u);
  const Ran by_letter = run({"supplies", path, "--swap", "B=H", "--swap", "C=H"});
  ASSERT_EQ(by_letter.status, exit_done) << by_letter.err;
  EXPECT_NE(by_letter.out.find("With H in place of B"), std::string::npos);
  EXPECT_NE(by_letter.out.find("With H in place of C"), std::string::npos);
  EXPECT_EQ(run({"supplies", "--swap", "B=H", path, path}).status, exit_done)
      << "the swap must not swallow the project";
}

TEST(SuppliesVerb, BadInputIsNamed) {
  const TemporaryFolder folder;
  spill(folder / "rates.json", R"({"hour_minor": "much"})");
  const auto expect = [](const Ran& ran, std::string_view part) {
    EXPECT_EQ(ran.status, exit_bad_input) << ran.err;
    EXPECT_NE(ran.err.find(part), std::string::npos) << ran.err;
    EXPECT_EQ(ran.out, "");
  };
  const std::string demo = example("moonwatch");
  expect(run({"supplies"}), "PROJECT");
  expect(run({"supplies", demo, "--kits", "0"}), "kits: found 0, expected from 1 to 100000");
  expect(run({"supplies", demo, "--swap", "B"}), "LETTER=CODE");
  expect(run({"supplies", demo, "--swap", "Q=B"}), "'Q'");
  expect(run({"supplies", demo, "--swap", "B=C-99"}), "'C-99'");
  expect(run({"supplies", demo, "--hour", "18.555"}), "at most two decimals");
  expect(run({"supplies", demo, "--beads-a-day", "0"}), "beads_a_day");
  expect(run({"supplies", demo, "--costing", folder / "rates.json"}), "rates.json: /hour_minor");
  EXPECT_EQ(run({"supplies", demo, folder / "none.json"}).status, exit_failure);
}

}  // namespace
}  // namespace evencount::app
