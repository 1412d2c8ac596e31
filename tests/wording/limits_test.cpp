// Sizes and bytes that no maker writes.

#include <gtest/gtest.h>

#include "base/text.hpp"
#include "random_chart.hpp"
#include "weave/technique.hpp"
#include "wording/reader.hpp"
#include "wording/words.hpp"

namespace evencount::wording {
namespace {

std::string repeated(std::string_view part, std::size_t times) {
  std::string text;
  for (std::size_t i = 0; i < times; ++i) text += part;
  return text;
}

TEST(Limits, TheLargestBandsComeBack) {
  for (const auto& [columns, edge] : {std::pair{1000, 1000}, std::pair{100, 10000}}) {
    auto chart = chart::Chart::make(columns, edge).value();
    for (int i = 0; i < columns * edge; ++i)
      chart.set({i % columns, i / columns}, static_cast<chart::Bead>(i * 7 % 3));
    const auto plan = weave::make_plan("peyote-even-count", chart, {weave::Closure::zip}).value();
    const auto letters = testing_support::legend_of(3);
    const auto read = read_words(to_text(write_words(plan, letters, "Large")), {.legend = letters});
    ASSERT_TRUE(read) << message(read.problem());
    EXPECT_EQ(read->front().chart, chart);
  }
}

TEST(Limits, TooManyCellsAreRefused) {
  std::string text = "Rows 1-2: 1000A\n";
  for (int row = 3; row <= 2002; ++row) text += "Row " + std::to_string(row) + ": 500A\n";
  const auto read = read_words(text);
  ASSERT_FALSE(read);
  EXPECT_EQ(read.problem().code, ProblemCode::out_of_range);
}

TEST(Limits, InvalidUtf8IsSkippedAndNeverHandedOn) {
  const auto read = read_words(
      "\xFF\xFE\nWord chart: moo\xC3\nRows 1\xE2\x80\x93"
      "2: 2A\n\xE2\x98\nRow 3: 1A\n\x80Row 4: 1A\n");
  ASSERT_TRUE(read) << message(read.problem());
  EXPECT_EQ(read->front().name, "moo?");
  const auto broken = read_words("Rows 1-2: 2A, \xC3\x28");
  ASSERT_FALSE(broken);
  EXPECT_TRUE(is_utf8(message(broken.problem())));
}

TEST(Limits, HugeTextIsRefused) {
  const auto read = read_words(std::string((64u << 20) + 1, ' '));
  ASSERT_FALSE(read);
  EXPECT_EQ(read.problem().code, ProblemCode::out_of_range);
}

TEST(Limits, LegendsAreChecked) {
  const std::string text = "Rows 1-2: 2A";
  EXPECT_EQ(read_words(text, {.legend = {"A", "?"}}).problem().code, ProblemCode::bad_text);
  EXPECT_EQ(read_words(text, {.legend = {"A", "A"}}).problem().code, ProblemCode::duplicate_name);
}

// Texts made to send a careless reader over the same ground again and again. One that takes time by the square of the length
// would run for hours here and meet the test runner's own limit.
TEST(Limits, HostileTextsAreReadInOneGo) {
  const std::string parts[] = {"A  ",      "Row 3 ",           "3: A ",     "Row 3: 2A,    ", "(",  "2A ",
                               "A A A - ", "Rows 1-2:",        "1-2: A ",   "Row 3 (L): A\n", "x ", ",",
                               "\xE2",     "Rows 1-2: 2A, \n", "  1A 1A -", "R3.  "};
  for (const std::string& part : parts)
    for (const std::string& before :
         {std::string(), std::string("Rows 1-2: 2A,\n"), std::string("Rows 1-2: 2A\nRow 3: ")}) {
      const auto bands = read_words(before + repeated(part, 160'000));
      EXPECT_TRUE(bands.ok() ? !bands->empty() : !message(bands.problem()).empty()) << part;
    }
}

}  // namespace
}  // namespace evencount::wording
