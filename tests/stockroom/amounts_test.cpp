#include "stockroom/amounts.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace evencount::stockroom {
namespace {

using namespace evencount::materials;

StockItem beads(std::optional<double> per_gram = std::nullopt) {
  StockItem item;
  item.what = BeadStock{"cylinder-11", bead::Finish::opaque, {}, per_gram};
  return item;
}

StockItem of_kind(StockKind kind) {
  StockItem item;
  if (kind == StockKind::beads) item = beads();
  if (kind == StockKind::forms) item.what = FormStock{};
  if (kind == StockKind::thread) item.what = ThreadStock{};
  if (kind == StockKind::cord) item.what = CordStock{};
  if (kind == StockKind::findings) item.what = FindingStock{};
  return item;
}

RC_GTEST_PROP(Amounts, DecimalsComeBack, ()) {
  const auto value = *rc::gen::inRange<std::int64_t>(-most_amount, most_amount);
  const int decimals = *rc::gen::inRange(0, 7);
  const bool fixed = *rc::gen::arbitrary<bool>();
  RC_ASSERT(parse_decimal(decimal_text(value, decimals, fixed), decimals) == std::optional(value));
}

RC_GTEST_PROP(Amounts, AmountsComeBack, ()) {
  const StockKind kind = stock_kinds[*rc::gen::inRange<std::size_t>(0, stock_kinds.size())];
  const auto amount = *rc::gen::inRange<std::int64_t>(0, most_amount);
  const auto parsed = parse_amount(of_kind(kind), amount_text(kind, amount));
  RC_ASSERT(parsed.ok());
  RC_ASSERT(*parsed == amount);
}

TEST(Amounts, NoNumberIsReadThroughFloatingPoint) {
  EXPECT_EQ(parse_decimal("0.1", 3), 100);
  EXPECT_EQ(parse_decimal("0,1", 3), 100);
  EXPECT_EQ(parse_decimal("1.2500", 3), 1250);
  EXPECT_EQ(parse_decimal("9007199254740993", 0), 9007199254740993) << "2^53 + 1";
  for (const char* wrong :
       {"", "-", ".5", "5.", "1.2345", "1e3", "0x10", "1 000", "+1", "1.2.3", "99999999999999999999", "nan"})
    EXPECT_EQ(parse_decimal(wrong, 3), std::nullopt) << wrong;
}

TEST(Amounts, AreReadInEachKindsUnits) {
  EXPECT_EQ(*parse_amount(beads(), "12.5"), 12'500);
  EXPECT_EQ(*parse_amount(beads(), "12.5g"), 12'500);
  EXPECT_EQ(*parse_amount(beads(), " 1.2 kg "), 1'200'000);
  EXPECT_EQ(*parse_amount(of_kind(StockKind::thread), "3m"), 3000);
  EXPECT_EQ(*parse_amount(of_kind(StockKind::cord), "40.5 cm"), 405);
  EXPECT_EQ(*parse_amount(of_kind(StockKind::findings), "12"), 12);
  EXPECT_EQ(*parse_amount(of_kind(StockKind::forms), "1 piece"), 1);
  for (const char* wrong : {"3", "3 in", "m", "40.55 cm", ""})
    EXPECT_FALSE(parse_amount(of_kind(StockKind::cord), wrong)) << wrong << ": a length needs its unit";
  EXPECT_EQ(parse_amount(beads(), "-1g").problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(parse_amount(beads(), "1000000001g").problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(parse_amount(of_kind(StockKind::forms), "1.5").problem().code, ProblemCode::bad_text);
}

TEST(Amounts, CountedBeadsAreWeighedByTheirOwnFigureOrTheirSizes) {
  EXPECT_EQ(*parse_amount(beads(), "195 beads"), 1000) << "the size's figure: 195 to the gram";
  EXPECT_EQ(*parse_amount(beads(200), "200beads"), 1000);
  EXPECT_EQ(*parse_amount(beads(200), "1 beads"), 5);
  EXPECT_EQ(*parse_amount(beads(300), "100 beads"), 334) << "rounded up";
  EXPECT_FALSE(parse_amount(beads(), "1.5 beads"));
  EXPECT_FALSE(parse_amount(beads(), "-5 beads"));
}

}  // namespace
}  // namespace evencount::stockroom
