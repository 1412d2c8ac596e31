#include "stockroom/stockroom.hpp"

#include <gtest/gtest.h>

#include <filesystem>
#include <map>

#include "stockroom/amounts.hpp"
#include "stockroom/random_stock.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::stockroom {
namespace {

using namespace evencount::materials;
using evencount::testing::noon;

StockItem bead_item(const std::string& code) {
  return {.code = code,
          .name = "night",
          .what = BeadStock{"cylinder-11", bead::Finish::opaque, {}, {}},
          .packs = {},
          .note = ""};
}

class StockroomTest : public ::testing::Test {
 protected:
  StockroomTest() {
    for (const char* code : {"A", "B", "C"}) {
      EXPECT_TRUE(stock.put(bead_item(code)));
      EXPECT_TRUE(stock.count_in(code, 1000, noon));
    }
  }
  StockLevel level(const std::string& code) { return stock.item(code)->level; }

  evencount::testing::TemporaryFolder folder;
  Stockroom stock = *Stockroom::open(folder / "deep/down/stock.sqlite");
};

TEST_F(StockroomTest, IsMadeOnFirstUseAndOpensAgain) {
  EXPECT_TRUE(std::filesystem::exists(folder / "deep/down/stock.sqlite"));
  const auto again = Stockroom::open(folder / "deep/down/stock.sqlite");
  ASSERT_TRUE(again) << message(again.problem());
  EXPECT_EQ(*again->items(), *stock.items());
}

TEST_F(StockroomTest, QuantitiesComeFromMovements) {
  EXPECT_EQ(stock.use("A", 400, noon, "a sample")->amount, -400);
  EXPECT_EQ((*stock.correct("A", 650, noon, "weighed"))->amount, 50);
  EXPECT_EQ(*stock.correct("A", 650, noon), std::nullopt) << "nothing to correct";
  EXPECT_EQ(level("A"), (StockLevel{650, 0}));
  const auto journal = *stock.journal("A");
  ASSERT_EQ(journal.size(), 3u);
  EXPECT_EQ(journal[1].note, "a sample");
  EXPECT_EQ(journal[2].cause, Cause::corrected);
  EXPECT_EQ(journal[2].at, noon);
}

TEST_F(StockroomTest, RefusesWhatThereIsNot) {
  EXPECT_EQ(message(stock.use("A", 1001, noon).problem()),
            "A: found 1.001 g, expected at most 1 g, which is free");
  EXPECT_EQ(stock.use("A", 0, noon).problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(stock.count_in("A", -1, noon).problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(stock.count_in("A", most_amount, noon).problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(stock.correct("A", -1, noon).problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(stock.use("Z", 1, noon).problem().code, ProblemCode::unknown_name);
  EXPECT_EQ(stock.journal("Z").problem().code, ProblemCode::unknown_name);
  EXPECT_EQ(stock.use("A", 1, noon, "bell\x07").problem().code, ProblemCode::bad_text);
  EXPECT_EQ(level("A"), (StockLevel{1000, 0}));
}

TEST_F(StockroomTest, WritesOverAnItemButNotItsQuantity) {
  StockItem item = bead_item("A");
  item.name = "nightfall";
  item.packs = {{5000, Money{340, "EUR"}, "", "", ""}};
  ASSERT_TRUE(stock.put(item));
  EXPECT_EQ(*stock.item("A"), (materials::StockedItem{item, {1000, 0}}));
  item.what = FindingStock{"clasp"};
  EXPECT_EQ(stock.put(item).problem().code, ProblemCode::wrong_type);
  item = bead_item("A");
  std::get<BeadStock>(item.what).size = "cylinder-12";
  EXPECT_EQ(stock.put(item).problem().code, ProblemCode::unknown_name);
}

TEST_F(StockroomTest, WhatIsReservedIsNotFree) {
  ASSERT_TRUE(stock.reserve("spring", {{"A", 600}, {"B", 1000}}, noon, "twelve kits"));
  EXPECT_EQ(level("A"), (StockLevel{1000, 600}));
  EXPECT_EQ(message(stock.reserve("summer", {{"C", 1}, {"A", 401}}, noon).problem()),
            "A: found 0.401 g, expected at most 0.4 g, which is free");
  EXPECT_EQ(level("C"), (StockLevel{1000, 0})) << "all of it, or nothing";
  EXPECT_EQ(stock.runs()->size(), 1u) << "and no run";
  EXPECT_FALSE(stock.use("A", 401, noon));
  EXPECT_FALSE(stock.correct("A", 599, noon));
  EXPECT_TRUE(stock.use("A", 400, noon));
}

TEST_F(StockroomTest, ReleaseGivesBackAndTakeUses) {
  const auto before = *stock.items();
  ASSERT_TRUE(stock.reserve("spring", {{"A", 600}, {"B", 10}, {"A", 100}}, noon));
  EXPECT_EQ(level("A").reserved, 700) << "a code given twice counts twice";
  const auto released = stock.release("spring", noon + std::chrono::hours{1});
  ASSERT_TRUE(released);
  EXPECT_EQ(released->state, RunState::released);
  EXPECT_EQ(*stock.items(), before);
  EXPECT_TRUE(stock.journal(std::nullopt, "spring")->empty());

  ASSERT_TRUE(stock.reserve("summer", {{"A", 600}}, noon));
  ASSERT_TRUE(stock.reserve("summer", {{"B", 10}}, noon)) << "an open run grows";
  const auto taken = stock.take("summer", noon + std::chrono::hours{2});
  ASSERT_TRUE(taken);
  EXPECT_EQ(taken->items, (std::vector<RunItem>{{"A", 600}, {"B", 10}}));
  EXPECT_EQ(taken->closed, noon + std::chrono::hours{2});
  EXPECT_EQ(level("A"), (StockLevel{400, 0}));
  const auto journal = *stock.journal(std::nullopt, "summer");
  ASSERT_EQ(journal.size(), 2u);
  EXPECT_EQ(journal[0].amount, -600);
  EXPECT_EQ(journal[0].run, "summer");

  EXPECT_EQ(stock.release("summer", noon).problem().code, ProblemCode::unknown_name) << "closed is closed";
  EXPECT_EQ(stock.take("spring", noon).problem().code, ProblemCode::unknown_name);
  EXPECT_EQ(stock.reserve("spring", {{"A", 1}}, noon).problem().code, ProblemCode::duplicate_name);
  EXPECT_EQ(stock.reserve("autumn", {}, noon).problem().code, ProblemCode::missing_field);
  EXPECT_EQ(stock.reserve("", {{"A", 1}}, noon).problem().code, ProblemCode::missing_field);
  EXPECT_EQ(stock.reserve("autumn", {{"A", 0}}, noon).problem().code, ProblemCode::out_of_range);
  EXPECT_TRUE(stock.check()->empty());
}

TEST_F(StockroomTest, AClockThatIsSetBackChangesNoOrder) {
  using std::chrono::hours;
  ASSERT_TRUE(stock.reserve("later", {{"A", 600}}, noon));
  ASSERT_TRUE(stock.use("A", 100, noon - hours{24}));
  ASSERT_TRUE(stock.reserve("earlier", {{"A", 300}}, noon - hours{48}));
  EXPECT_EQ(stock.use("A", 1, noon - hours{72}).problem().code, ProblemCode::out_of_range) << "it is promised, whenever that was";
  ASSERT_TRUE(stock.take("later", noon - hours{72})) << "taken before it was opened";
  const auto runs = *stock.runs();
  ASSERT_EQ(runs.size(), 2u);
  EXPECT_EQ(runs[0].name, "later") << "the order in which they were opened";
  const auto journal = *stock.journal("A");
  for (std::size_t i = 1; i < journal.size(); ++i) EXPECT_LT(journal[i - 1].number, journal[i].number);
  EXPECT_EQ(journal.back().run, "later");
  EXPECT_EQ(level("A"), (StockLevel{300, 300}));
  EXPECT_TRUE(stock.check()->empty());
}

/// A second book, kept the slow way: every movement and promise in a list, summed up afresh.
struct Book {
  std::vector<std::pair<std::string, std::int64_t>> movements;
  std::map<std::string, std::map<std::string, std::int64_t>> open_runs;

  [[nodiscard]] StockLevel level(const std::string& code) const {
    StockLevel level;
    for (const auto& [moved, amount] : movements)
      if (moved == code) level.on_hand += amount;
    for (const auto& [name, items] : open_runs)
      if (const auto found = items.find(code); found != items.end()) level.reserved += found->second;
    return level;
  }
};

TEST_F(StockroomTest, AgreesWithABookKeptByHand) {
  std::mt19937 random(99);
  Book book;
  const std::vector<std::string> codes{"A", "B", "C"};
  for (const std::string& code : codes) book.movements.emplace_back(code, 1000);
  int done = 0, refused = 0, run_number = 0;
  for (int step = 0; step < 1500; ++step) {
    const std::string& code = codes[random() % codes.size()];
    const auto amount = static_cast<std::int64_t>(random() % 400);
    const StockLevel before = book.level(code);
    const auto act = random() % 6;
    bool expected = false, did = false;
    if (act == 0) {
      expected = amount > 0;
      did = stock.count_in(code, amount, noon).ok();
      if (did) book.movements.emplace_back(code, amount);
    } else if (act == 1) {
      expected = amount > 0 && amount <= before.free();
      did = stock.use(code, amount, noon).ok();
      if (did) book.movements.emplace_back(code, -amount);
    } else if (act == 2) {
      expected = amount >= before.reserved;
      did = stock.correct(code, amount, noon).ok();
      if (did) book.movements.emplace_back(code, amount - before.on_hand);
    } else if (act == 3) {
      const std::string run = "run " + std::to_string(random() % 2 == 0 ? run_number : ++run_number);
      const bool was_open = book.open_runs.contains(run) || !stock.journal(std::nullopt, run).ok();
      expected = amount > 0 && amount <= before.free() && was_open;
      did = stock.reserve(run, {{code, amount}}, noon).ok();
      if (did) book.open_runs[run][code] += amount;
    } else if (!book.open_runs.empty()) {
      const auto [run, items] = *book.open_runs.begin();
      expected = true;
      did = act == 4 ? stock.take(run, noon).ok() : stock.release(run, noon).ok();
      if (act == 4)
        for (const auto& [held, reserved] : items) book.movements.emplace_back(held, -reserved);
      book.open_runs.erase(run);
    }
    EXPECT_EQ(did, expected) << step;
    ++(did ? done : refused);
    for (const std::string& each : codes) ASSERT_EQ(level(each), book.level(each)) << step;
  }
  EXPECT_GT(done, 500);
  EXPECT_GT(refused, 100);
  EXPECT_TRUE(stock.check()->empty());
}

}  // namespace
}  // namespace evencount::stockroom
