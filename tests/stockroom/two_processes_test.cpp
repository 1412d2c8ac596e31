/// Processes that reserve at once: together they get what there is, and never more.

#include <gtest/gtest.h>
#include <sched.h>

#include <atomic>
#include <cstdio>

#include "stockroom/other_process.hpp"
#include "stockroom/random_stock.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::stockroom {
namespace {

using namespace evencount::testing;

struct Tally {
  std::atomic<int> ready{0};
  std::array<std::atomic<std::int64_t>, 3> got{};
};

/// Reserves one piece after another, each for a run of its own, until there are none. Its exit status tells how it ended.
int reserve_all(const std::string& file, std::size_t me, Tally& tally) {
  auto stock = Stockroom::open(file);
  if (!stock) return 1;
  ++tally.ready;
  while (tally.ready < static_cast<int>(tally.got.size())) {
    ::sched_yield();
  }
  for (int number = 0;; ++number) {
    const std::string run = "run " + std::to_string(me) + "." + std::to_string(number);
    const auto reserved = stock->reserve(run, {{"bolt", 1}, {"clasp", 2}}, noon);
    if (!reserved) return reserved.problem().code == ProblemCode::out_of_range ? 0 : 2;
    ++tally.got[me];
  }
}

TEST(TwoProcesses, NeverReserveMoreThanThereIs) {
  constexpr std::int64_t there = 150;
  const TemporaryFolder folder;
  const std::string file = folder / "stock.sqlite";
  {
    Stockroom stock = *Stockroom::open(file);
    for (const char* code : {"bolt", "clasp"})
      ASSERT_TRUE(stock.put(
          {.code = code, .name = code, .what = materials::FindingStock{"clasp"}, .packs = {}, .note = ""}));
    ASSERT_TRUE(stock.count_in("bolt", there + 50, noon));
    ASSERT_TRUE(stock.count_in("clasp", 2 * there + 1, noon));
  }
  Shared<Tally> tally;
  OtherProcess first([&] { return reserve_all(file, 0, *tally); }),
      second([&] { return reserve_all(file, 1, *tally); }),
      third([&] { return reserve_all(file, 2, *tally); });
  EXPECT_EQ(first.wait(), 0);
  EXPECT_EQ(second.wait(), 0);
  EXPECT_EQ(third.wait(), 0);
  EXPECT_EQ(tally->got[0] + tally->got[1] + tally->got[2], there);
  const Stockroom stock = *Stockroom::open(file);
  EXPECT_EQ(stock.item("bolt")->level, (materials::StockLevel{there + 50, there}));
  EXPECT_EQ(stock.item("clasp")->level, (materials::StockLevel{2 * there + 1, 2 * there}));
  EXPECT_EQ(stock.runs()->size(), static_cast<std::size_t>(there));
  EXPECT_EQ(*stock.check(), std::vector<std::string>{});
}

/// Several open a file that isn't there at once: one makes it, all go on.
TEST(TwoProcesses, MakeOneFileTogether) {
  for (int round = 0; round < 20; ++round) {
    const TemporaryFolder folder;
    const std::string file = folder / "stock.sqlite";
    Shared<std::atomic<int>> ready;
    const auto work = [&](const char* code) {
      ++*ready;
      while (*ready < 3) {
        ::sched_yield();
      }
      auto stock = Stockroom::open(file);
      if (!stock) std::fprintf(stderr, "%s\n", message(stock.problem()).c_str());
      if (!stock) return 1;
      return stock->put({.code = code,
                         .name = code,
                         .what = materials::FindingStock{"clasp"},
                         .packs = {},
                         .note = ""})
                     .ok()
                 ? 0
                 : 2;
    };
    OtherProcess first([&] { return work("a"); }), second([&] { return work("b"); }),
        third([&] { return work("c"); });
    EXPECT_EQ(first.wait(), 0);
    EXPECT_EQ(second.wait(), 0);
    EXPECT_EQ(third.wait(), 0);
    EXPECT_EQ(Stockroom::open(file)->items()->size(), 3u);
  }
}

}  // namespace
}  // namespace evencount::stockroom
