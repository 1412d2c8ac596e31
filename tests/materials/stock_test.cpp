#include "materials/stock.hpp"

#include <gtest/gtest.h>

namespace evencount::materials {
namespace {

TEST(Stock, KindsAreWhatItemsAre) {
  EXPECT_EQ(kind_of({.code = "b", .what = BeadStock{}}), StockKind::beads);
  EXPECT_EQ(kind_of({.code = "f", .what = FormStock{}}), StockKind::forms);
  EXPECT_EQ(kind_of({.code = "t", .what = ThreadStock{}}), StockKind::thread);
  EXPECT_EQ(kind_of({.code = "c", .what = CordStock{}}), StockKind::cord);
  EXPECT_EQ(kind_of({.code = "n", .what = FindingStock{}}), StockKind::findings);
}

TEST(Stock, KindsReadBack) {
  for (const StockKind kind : stock_kinds) EXPECT_EQ(*parse_stock_kind(kind_name(kind)), kind);
  EXPECT_EQ(parse_stock_kind("pearls").problem().expected, "one of beads, forms, thread, cord, findings");
}

}  // namespace
}  // namespace evencount::materials
