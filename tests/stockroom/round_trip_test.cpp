#include <gtest/gtest.h>

#include "stockroom/random_stock.hpp"
#include "stockroom/stock_table.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::stockroom {
namespace {

using namespace evencount::materials;
using evencount::testing::noon;

/// Puts the items in by hand, one by one.
void fill(Stockroom& stock, const std::vector<materials::StockedItem>& items) {
  for (const materials::StockedItem& held : items) {
    ASSERT_TRUE(stock.put(held.item)) << message(stock.put(held.item).problem());
    if (held.level.on_hand > 0) {
      ASSERT_TRUE(stock.count_in(held.item.code, held.level.on_hand, noon));
    }
  }
}

TEST(RoundTrip, WhatIsExportedIsImportedAgain) {
  std::mt19937 random(2024);
  int rounds = 0;
  for (int round = 0; round < 8; ++round) {
    for (const StockKind kind : stock_kinds) {
      const evencount::testing::TemporaryFolder folder;
      Stockroom first = *Stockroom::open(folder / "first.sqlite"),
                second = *Stockroom::open(folder / "second.sqlite");
      ASSERT_NO_FATAL_FAILURE(fill(first, evencount::testing::random_stock(random, kind, 1 + round)));
      const auto items = *first.items();
      const ExportOptions options{.semicolons = round % 2 == 1, .byte_order_mark = round % 3 == 0};
      const std::string text = write_table(items, kind, options);
      const auto table = read_csv(text);
      ASSERT_TRUE(table) << message(table.problem()) << "\n" << text;

      const auto again = first.import_table(*table, {}, noon);
      ASSERT_TRUE(again) << message(again.problem());
      EXPECT_EQ(again->fault_count, 0u) << message(again->faults.front()) << "\n" << text;
      EXPECT_EQ(again->count(ImportEffect::unchanged), items.size()) << text;

      const auto moved = second.import_table(*table, {}, noon);
      ASSERT_TRUE(moved && moved->written);
      const auto there = *second.items();
      EXPECT_EQ(there, items) << text;
      EXPECT_EQ(write_table(there, kind, options), text);
      EXPECT_TRUE(second.check()->empty());
      ++rounds;
    }
  }
  EXPECT_EQ(rounds, 40);
}

TEST(RoundTrip, AnEmptyStockIsAHeader) {
  for (const StockKind kind : stock_kinds) {
    const std::string text = write_table({}, kind);
    const auto table = read_csv(text);
    ASSERT_TRUE(table) << message(table.problem());
    EXPECT_EQ(plan_import(*table, {}, {})->kind, kind);
  }
}

}  // namespace
}  // namespace evencount::stockroom
