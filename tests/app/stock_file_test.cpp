#include "app/stock_file.hpp"

#include <gtest/gtest.h>

namespace evencount::app {
namespace {

TEST(StockFile, ReadsHexLinesAndPalettes) {
  const auto stock = parse_stock(
      "GIMP Palette\nName: Tides\nColumns: 2\n#\n34 48 79 night\n239,227,180, moon\n\n#4f8f91 tide pool\n#ab12cd\n");
  ASSERT_TRUE(stock) << message(stock.problem());
  const std::vector<NamedColour> expected{{"night", {34, 48, 79}},
                                          {"moon", {239, 227, 180}},
                                          {"tide pool", {0x4f, 0x8f, 0x91}},
                                          {"#ab12cd", {0xab, 0x12, 0xcd}}};
  EXPECT_EQ(*stock, expected);
}

TEST(StockFile, NamesTheLineThatIsWrong) {
  const auto wrong = [](const char* text) { return message(parse_stock(text).problem()); };
  EXPECT_EQ(wrong("#22304f night\n300 0 0 red\n"), "line 2: found '300 0 0 red', expected #rrggbb NAME, or R G B NAME");
  EXPECT_NE(wrong("night\n").find("line 1"), std::string::npos);
  EXPECT_EQ(wrong("#22304f night\n#efe3b4 mo\xffon\n"), "line 2: found bytes that are no UTF-8, expected a name in UTF-8");
  EXPECT_NE(wrong("# only a remark\n").find("no colours"), std::string::npos);
}

}  // namespace
}  // namespace evencount::app
