#include "strand/layout_edit.hpp"

#include <gtest/gtest.h>

#include <sstream>
#include <algorithm>

#include "strand/layouts.hpp"

namespace evencount::strand {
namespace {

const std::string commented = R"(# for the summer
cords 2 of braided 0.6mm  # waxed
bead stop 6mm hole 1.5mm "moon" # its printed name is no reference
crimp tube 5mm hole 1.3mm across 2mm thick 2mm
clasp slide 14mm holes 2 apart 9.6mm hole 1.5mm across 16mm
close with slide
on hand round-8 200
string tube, fill moon with round-8, stop, between gaps with round-8 from 1 to 1 (3 moon, "Big moon"), both stop,
  mirror (carrier, 2 (moon, round-8)) about moon, fill moon with round-8, tube)";

Layout layout_of(const std::string& text) {
  const auto layout = parse_layout(text, catalogue());
  EXPECT_TRUE(layout) << (layout ? "" : message(layout.problem())) << "\n" << text;
  return *layout;
}

TEST(LayoutEdit, ItemsReadBackAsTheyWereWritten) {
  for (const std::string& text : {commented, bracelet_text, necklace_text})
    for (const Item& item : layout_of(text).items) {
      const std::string head = text.substr(0, text.find("string"));
      EXPECT_EQ(layout_of(head + "string " + to_text(item)).items, std::vector<Item>{item}) << to_text(item);
    }
}

TEST(LayoutEdit, AnotherListLeavesTheRestAsItStands) {
  const Layout before = layout_of(commented);
  std::vector<Item> items = before.items;
  std::rotate(items.begin(), items.begin() + 2, items.end());
  const auto text = with_items(commented, items);
  ASSERT_TRUE(text);
  EXPECT_EQ(text->substr(0, text->find("string")), commented.substr(0, commented.find("string")));
  Layout after = layout_of(*text);
  EXPECT_EQ(after.items, items);
  after.items = before.items;
  EXPECT_EQ(after, before);
  std::size_t begin = 0;
  for (std::size_t end = 0; end != std::string::npos; begin = end + 1) {
    end = text->find('\n', begin);
    EXPECT_LE((end == std::string::npos ? text->size() : end) - begin, 100u);
  }
  EXPECT_FALSE(with_items("cords 2 of braided 0.6mm", items));
  EXPECT_FALSE(with_items("string \"open", items));
}

// A line ends only where the next thing would make it too long.
TEST(LayoutEdit, LinesAreAsFullAsTheyMayBe) {
  std::string list;
  for (int i = 1; i <= 60; ++i) list += (i > 1 ? ", " : "") + std::to_string(1 + i % 12) + (i % 3 == 0 ? " moon" : " round-8");
  const auto text = with_items("string moon", layout_of("string " + list).items);
  ASSERT_TRUE(text);
  std::vector<std::string> lines;
  std::istringstream in(*text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  ASSERT_GT(lines.size(), 3u);
  for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
    EXPECT_LE(lines[i].size(), 91u) << lines[i];
    EXPECT_TRUE(lines[i + 1].starts_with("  ")) << lines[i + 1];
    const std::string next = lines[i + 1].substr(2, lines[i + 1].find(',') - 1);
    EXPECT_GT(lines[i].size() + next.size(), 90u) << lines[i] << "|" << next;
  }
}

TEST(LayoutEdit, StatementsComeAndChange) {
  EXPECT_EQ(layout_of(*with_statement(commented, "bead large 9mm")).parts.size(),
            layout_of(commented).parts.size() + 1);
  const auto knotted = with_closing(commented, "");
  ASSERT_TRUE(knotted);
  EXPECT_EQ(layout_of(*knotted).closing, "");
  EXPECT_EQ(layout_of(*with_closing(*knotted, "slide")).closing, "slide");
  EXPECT_EQ(layout_of(*with_closing(commented, "Big moon")).closing, "Big moon");
  const auto cords = with_cords(commented, 1, {CordKind::elastic, millimetres(0.8)});
  ASSERT_TRUE(cords);
  EXPECT_EQ(layout_of(*cords).cords, 1);
  EXPECT_EQ(layout_of(*cords).cord, (Cord{CordKind::elastic, millimetres(0.8)}));
  EXPECT_NE(cords->find("# waxed"), std::string::npos);
  EXPECT_EQ(layout_of(*with_cords("string moon", 2, {CordKind::wire, millimetres(0.5)})).cords, 2);
}

TEST(LayoutEdit, AnotherNameWhereverItMeansTheBand) {
  auto other = catalogue();
  for (Element& element : other)
    if (element.id == "moon") element.id = "Crescent \"1\"";
  const auto renamed = with_name(commented, catalogue(), "moon", "Crescent \"1\"");
  ASSERT_TRUE(renamed);
  const auto layout = parse_layout(*renamed, other);
  ASSERT_TRUE(layout) << message(layout.problem()) << *renamed;
  EXPECT_EQ(layout->parts.front().name, "moon");
  EXPECT_EQ(layout->items[1].group, "moon");  // a run's own name
  EXPECT_EQ(layout->items[3].items.front().name, "Crescent \"1\"");
  EXPECT_EQ(layout->items[5].about.front().name, "Crescent \"1\"");
  const auto back = with_name(*renamed, other, "Crescent \"1\"", "moon");
  ASSERT_TRUE(back);
  EXPECT_EQ(*back, commented);
  EXPECT_EQ(*with_name(commented, catalogue(), "stop", "end"),
            commented);  // a part's name is the layout's own
  EXPECT_FALSE(with_name("string", catalogue(), "moon", "x"));
}

TEST(LayoutEdit, WithoutLeavesNoEmptyBrackets) {
  const auto items = layout_of(
                         "string 2 (moon, carrier), 3 (moon), fill with moon, fill with (moon, round-8), "
                         "between with moon (carrier, carrier), between with round-8 (moon), mirror (moon) "
                         "about carrier, moon")
                         .items;
  const auto left = without(items, "moon");
  std::string text;
  for (const Item& item : left) text += to_text(item) + "; ";
  EXPECT_EQ(text, "2 (carrier); fill with round-8; carrier; carrier; carrier; ");
  for (const Item& item : left) EXPECT_FALSE(names(item, "moon"));
  EXPECT_TRUE(names(items[2], "moon"));
  EXPECT_TRUE(without(layout_of("string 2 (moon, 3 moon)").items, "moon").empty());
}

}  // namespace
}  // namespace evencount::strand
