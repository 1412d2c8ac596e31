#include "stockroom/import.hpp"

#include <gtest/gtest.h>

#include "stockroom/random_stock.hpp"
#include "stockroom/stock_table.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::stockroom {
namespace {

using namespace evencount::materials;
using evencount::testing::noon;

constexpr const char* header = "code,name,size,finish,colour,counted_g,note,pack_g,price,currency,supplier\n";

class Import : public ::testing::Test {
 protected:
  Result<ImportReport> import(const std::string& text, ImportOptions options = {}) {
    const auto table = read_csv(text);
    if (!table) return table.problem();
    return stock.import_table(*table, options, noon);
  }
  BeadStock beads(const std::string& code) { return std::get<BeadStock>(stock.item(code)->item.what); }

  evencount::testing::TemporaryFolder folder;
  Stockroom stock = *Stockroom::open(folder / "stock.sqlite");
};

TEST_F(Import, ReadsItemsWithSeveralPacks) {
  const auto report =
      import(std::string(header) +
             "N,night,cylinder-11,matte,#22304f,12.5,by the window,5,3.40,EUR,The bead barrow\n"
             "N,,,,,,,25,14,,Glass loft\n"
             "M,moon,round-8,,,,,,,,\n");
  ASSERT_TRUE(report) << message(report.problem());
  EXPECT_TRUE(report->written);
  EXPECT_EQ(report->count(ImportEffect::added), 2u);
  const materials::StockedItem night = *stock.item("N");
  const StockItem expected{
      .code = "N",
      .name = "night",
      .what = BeadStock{"cylinder-11", bead::Finish::matte, colour::Rgb{0x22, 0x30, 0x4f}, {}},
      .packs = {{5000, Money{340, "EUR"}, "The bead barrow", "", ""},
                {25'000, Money{1400, "EUR"}, "Glass loft", "", ""}},
      .note = "by the window"};
  EXPECT_EQ(night.item, expected);
  EXPECT_EQ(night.level, (StockLevel{12'500, 0}));
  EXPECT_EQ(beads("M").finish, bead::Finish::opaque);
  const auto journal = stock.journal();
  ASSERT_EQ(journal->size(), 1u);
  EXPECT_EQ(journal->front().cause, Cause::counted_in);
  EXPECT_EQ(journal->front().amount, 12'500);
}

TEST_F(Import, ListsWhatChangesFieldByField) {
  ASSERT_TRUE(import(std::string(header) +
                     "N,night,cylinder-11,matte,#22304f,12.5,,5,3.40,,\nM,moon,round-8,,,,,,,,\n"));
  const std::string changed =
      std::string(header) + "N,nightfall,cylinder-11,matte,,13,,5,3.60,,\nM,moon,round-8,,,,,,,,\n";
  ImportOptions options{.dry_run = true};
  const auto dry = import(changed, options);
  ASSERT_TRUE(dry) << message(dry.problem());
  EXPECT_FALSE(dry->written);
  EXPECT_EQ(stock.item("N")->item.name, "night");
  const std::vector<FieldChange> expected{{"name", "night", "nightfall"},
                                          {"colour", "#22304f", ""},
                                          {"counted_g", "12.5", "13"},
                                          {"packs", "5 g 3.40 EUR", "5 g 3.60 EUR"}};
  ASSERT_EQ(dry->items.size(), 2u);
  EXPECT_EQ(dry->items[0].changes, expected);
  EXPECT_EQ(dry->items[1].effect, ImportEffect::unchanged);

  const auto wet = import(changed);
  ASSERT_TRUE(wet && wet->written);
  EXPECT_EQ(wet->items[0].changes, expected) << "what the dry run listed is what the import does";
  EXPECT_EQ(stock.item("N")->item, dry->items[0].item);
  const auto journal = *stock.journal("N");
  ASSERT_EQ(journal.size(), 2u);
  EXPECT_EQ(journal[1].cause, Cause::corrected);
  EXPECT_EQ(journal[1].amount, 500);
  EXPECT_EQ(import(changed)->count(ImportEffect::unchanged), 2u);
}

TEST_F(Import, AColumnThatIsLeftOutLeavesThingsAsTheyAre) {
  ASSERT_TRUE(import(std::string(header) + "N,night,cylinder-11,matte,#22304f,12.5,,5,3.40,,\n"));
  const materials::StockedItem before = *stock.item("N");
  const auto counts = import("code,counted_g\nN,10\n", {.kind = StockKind::beads});
  ASSERT_TRUE(counts) << message(counts.problem());
  materials::StockedItem expected = before;
  expected.level.on_hand = 10'000;
  EXPECT_EQ(*stock.item("N"), expected);
  const auto unknown = import("code,counted_g\nN,10\nX,3\n", {.kind = StockKind::beads});
  EXPECT_EQ(message(unknown.problem()),
            "line 1: found no column name, size, expected what new items need, such as 'X' on line 3");
}

TEST_F(Import, UnderstandsSemicolonsDecimalCommasAndTheWeightOfAThousand) {
  const auto report = import(
      "\xEF\xBB\xBF"
      "code;name;size;thousand_g;pack_g;price\nN;Blau, tief;cylinder-11;5,0;7,2;3,4\n");
  ASSERT_TRUE(report) << message(report.problem());
  ASSERT_TRUE(report->written);
  EXPECT_EQ(beads("N").beads_per_gram, 200.0);
  EXPECT_EQ(stock.item("N")->item.packs, (std::vector<PackOffer>{{7200, Money{340, "EUR"}, "", "", ""}}));
  EXPECT_EQ(stock.item("N")->item.name, "Blau, tief");
}

TEST_F(Import, ReadsWhateverASupplierSends) {
  ImportOptions options{.column_of = {{"Art. No.", "code"},
                                      {"Description", "name"},
                                      {"Net = each", "price"},
                                      {"Bag", "pack_g"},
                                      {"Rating", ""}},
                        .constants = {{"size", "round-15"}, {"supplier", "Glass loft"}},
                        .currency = "DKK"};
  const auto report = import(
      "Art. No.,Description,Rating,Bag,Net = each,FINISH\n77,dew,5,10,22.50,pearl\n78,rime,4,,,\n", options);
  ASSERT_TRUE(report) << message(report.problem());
  ASSERT_TRUE(report->written) << message(report->faults.front());
  EXPECT_EQ(beads("77").size, "round-15");
  EXPECT_EQ(beads("77").finish, bead::Finish::pearl);
  EXPECT_EQ(stock.item("77")->item.packs,
            (std::vector<PackOffer>{{10'000, Money{2250, "DKK"}, "Glass loft", "", ""}}));
  EXPECT_TRUE(stock.item("78")->item.packs.empty()) << "a constant makes no pack";
  EXPECT_EQ(import("a,b\n", {.kind = StockKind::beads, .column_of = {{"c", "code"}}}).problem().code,
            ProblemCode::unknown_name);
}

TEST_F(Import, EveryKindTellsItself) {
  for (const auto& [kind, text] : std::vector<std::pair<StockKind, std::string>>{
           {StockKind::beads, "code,name,size\na,x,round-8\n"},
           {StockKind::forms, "code,name,form,counted\nb,x,\"lens:17x5x9,holes=6.8,hole=2\",12\n"},
           {StockKind::thread, "code,name,thread,counted_m\nc,x,braided-6lb,45.5\n"},
           {StockKind::cord, "code,name,cord,diameter_mm\nd,x,elastic,0.8\n"},
           {StockKind::findings, "code,name,finding\ne,x,clasp\n"}}) {
    const auto report = import(text);
    ASSERT_TRUE(report) << message(report.problem());
    EXPECT_TRUE(report->written);
    EXPECT_EQ(report->kind, kind);
  }
  EXPECT_EQ(stock.item("b")->level.on_hand, 12);
  EXPECT_EQ(stock.item("c")->level.on_hand, 45'500);
  EXPECT_EQ(import("code,name\na,x\n").problem().code, ProblemCode::bad_usage);
  EXPECT_EQ(import("code,name,size,form\na,x,round-8,bar:20x4x10\n").problem().code, ProblemCode::bad_usage);
  const auto other = import("code,name,finding\na,x,clasp\n");
  ASSERT_TRUE(other);
  EXPECT_EQ(message(other->faults.front()),
            "line 2: code: found 'a', which is of the beads, expected a code of the findings");
}

TEST_F(Import, SkipsWholeItemsOrWritesNothing) {
  const std::string text = std::string(header) +
                           "N,night,cylinder-11,,,1,,5,3.40,,\n"
                           "M,moon,round-8,,,2,,5,3.40,,\n"
                           "M,,,,,,,25,cheap,,\n"
                           "T,tide,round-80,,,3,,,,,\n"
                           "S,sand,round-8,,,4,,,,,\n";
  const auto refused = import(text);
  ASSERT_TRUE(refused);
  EXPECT_FALSE(refused->written);
  EXPECT_EQ(refused->fault_count, 2u);
  EXPECT_EQ(refused->faults[0].line, 4);
  EXPECT_EQ(refused->faults[1].line, 5);
  EXPECT_TRUE(stock.items()->empty());
  const auto skipped = import(text, {.skip_bad = true});
  ASSERT_TRUE(skipped);
  EXPECT_TRUE(skipped->written);
  std::string codes;
  const auto items = *stock.items();
  for (const materials::StockedItem& held : items) codes += held.item.code;
  EXPECT_EQ(codes, "NS") << "an item with a bad pack is left out as a whole";
}

TEST_F(Import, WhatIsReservedCanNotBeCountedAway) {
  ASSERT_TRUE(import(std::string(header) + "N,night,cylinder-11,,,10,,,,,\n"));
  ASSERT_TRUE(stock.reserve("spring", {{"N", 4000}}, noon));
  const auto report = import("code,counted_g\nN,3.999\n", {.kind = StockKind::beads});
  ASSERT_TRUE(report);
  ASSERT_EQ(report->fault_count, 1u);
  EXPECT_EQ(message(report->faults.front()),
            "line 2: counted_g: found 3.999 g, expected at least 4 g, which are reserved");
  EXPECT_TRUE(import("code,counted_g\nN,4\n", {.kind = StockKind::beads})->written);
}

}  // namespace
}  // namespace evencount::stockroom
