#include "stockroom/palette.hpp"

#include <gtest/gtest.h>

#include "stockroom/random_stock.hpp"
#include "stockroom/stock_file.hpp"

namespace evencount::stockroom {
namespace {

TEST(Palette, ReadsHexLinesAndPalettes) {
  const auto colours = parse_palette(
      "GIMP Palette\nName: Tides\nColumns: 2\n#\n34 48 79 night\n239,227,180, moon\n\n#4f8f91 tide "
      "pool\n#ab12cd\n");
  ASSERT_TRUE(colours) << message(colours.problem());
  const std::vector<NamedColour> expected{{"night", {34, 48, 79}, 5},
                                          {"moon", {239, 227, 180}, 6},
                                          {"tide pool", {0x4f, 0x8f, 0x91}, 8},
                                          {"#ab12cd", {0xab, 0x12, 0xcd}, 9}};
  EXPECT_EQ(*colours, expected);
}

TEST(Palette, NamesTheLineThatIsWrong) {
  const auto wrong = [](const char* text) { return message(parse_palette(text).problem()); };
  EXPECT_EQ(wrong("#22304f night\n300 0 0 red\n"),
            "line 2: found '300 0 0 red', expected #rrggbb NAME, or R G B NAME");
  EXPECT_NE(wrong("night\n").find("line 1"), std::string::npos);
  EXPECT_EQ(wrong("#22304f night\n#efe3b4 mo\xffon\n"),
            "line 2: found bytes that are no UTF-8, expected a name in UTF-8");
  EXPECT_NE(wrong("# only a remark\n").find("no colours"), std::string::npos);
}

TEST(Palette, WhatIsWrittenIsReadBack) {
  std::mt19937 random(3);
  for (int round = 0; round < 200; ++round) {
    std::vector<NamedColour> colours;
    for (int i = 0; i <= round % 9; ++i) {
      const auto channel = [&] { return static_cast<std::uint8_t>(random() % 256); };
      colours.push_back(
          {"a" + evencount::testing::random_text(random), {channel(), channel(), channel()}, 0});
    }
    auto read = parse_palette(write_palette(colours, "Tides\nand more"));
    ASSERT_TRUE(read) << message(read.problem());
    for (NamedColour& named : *read) named.line = 0;
    for (NamedColour& named : colours)
      for (char& c : named.name)
        if (c == '\n' || c == '\t') c = ' ';
    EXPECT_EQ(*read, colours);
  }
}

TEST(StockFile, ATableHasItsItemsAndWhatWasCounted) {
  const auto items = read_items(
      "code,name,size,colour,counted_g\nN,night,cylinder-11,#22304f,12.5\nM,moon,round-8,#efe3b4,\n", "cylinder-11");
  ASSERT_TRUE(items) << message(items.problem());
  ASSERT_EQ(items->size(), 2u);
  EXPECT_EQ(items->front().item.code, "N");
  EXPECT_EQ(items->front().level.on_hand, 12'500);
  EXPECT_EQ(std::get<materials::BeadStock>(items->back().item.what).size, "round-8");
  EXPECT_EQ(message(read_items("code,name,size,colour\nN,night,cylinder-11,#22g04f\n", "cylinder-11").problem()),
            "line 2: colour: found '#22g04f', expected a colour, #rrggbb");
}

TEST(StockFile, APalettesColoursAreBeadsOfTheSizeAskedFor) {
  const auto items = read_items("#22304f night\n#17233f night\n", "round-15");
  ASSERT_TRUE(items) << message(items.problem());
  ASSERT_EQ(items->size(), 2u);
  for (const materials::StockedItem& one : *items) {
    EXPECT_EQ(one.item.name, "night");
    EXPECT_EQ(std::get<materials::BeadStock>(one.item.what).size, "round-15");
    EXPECT_EQ(one.level, materials::StockLevel{});
  }
}

}  // namespace
}  // namespace evencount::stockroom
