#include "app/studio/byte_budget.hpp"

#include <gtest/gtest.h>

#include <atomic>
#include <random>
#include <thread>
#include <vector>

namespace evencount::app::studio {
namespace {

TEST(ByteBudget, NoMoreIsTakenThanThereIs) {
  ByteBudget budget(100);
  auto first = budget.take(60);
  ASSERT_TRUE(first.has_value());
  EXPECT_FALSE(budget.take(41).has_value());
  auto second = budget.take(40);
  ASSERT_TRUE(second.has_value());
  EXPECT_FALSE(budget.take(1).has_value());
  first.reset();
  EXPECT_TRUE(budget.take(60).has_value()) << "what was given back can be taken again";
  EXPECT_FALSE(budget.take(61).has_value());
}

TEST(ByteBudget, OneAloneMayBeLargerThanAll) {
  ByteBudget budget(100);
  auto large = budget.take(1000);
  ASSERT_TRUE(large.has_value());
  EXPECT_FALSE(budget.take(1).has_value());
  EXPECT_FALSE(budget.take(~std::size_t{0}).has_value()) << "no sum overflows";
  large.reset();
  EXPECT_TRUE(budget.take(100).has_value());
}

TEST(ByteBudget, AShareThatMovesIsGivenBackOnce) {
  ByteBudget budget(10);
  {
    auto taken = budget.take(10);
    const ByteBudget::Share moved = std::move(*taken);
    EXPECT_FALSE(budget.take(1).has_value());
  }
  EXPECT_TRUE(budget.take(10).has_value());
}

TEST(ByteBudget, HoldsForManyThreads) {
  constexpr std::size_t most = 1000;
  ByteBudget budget(most);
  std::atomic<std::size_t> held = 0, highest = 0, given = 0;
  std::vector<std::thread> threads;
  for (unsigned seed = 0; seed < 8; ++seed)
    threads.emplace_back([&, seed] {
      std::mt19937 random(seed);
      for (int i = 0; i < 2000; ++i) {
        const std::size_t bytes = 1 + random() % 400;
        const auto share = budget.take(bytes);
        if (!share) continue;
        const std::size_t now = held += bytes;
        for (std::size_t seen = highest; now > seen && !highest.compare_exchange_weak(seen, now);) {
        }
        ++given;
        held -= bytes;
      }
    });
  for (std::thread& thread : threads) thread.join();
  EXPECT_LE(highest, most);
  EXPECT_GT(given, 100u);
  EXPECT_TRUE(budget.take(most).has_value());
}

}  // namespace
}  // namespace evencount::app::studio
