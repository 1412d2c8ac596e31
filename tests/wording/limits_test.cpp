// Sizes and bytes that no maker writes.

#include <gtest/gtest.h>

#include <tuple>

#include "base/text.hpp"
#include "random_chart.hpp"
#include "support/sanitized.hpp"
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

TEST(Limits, TheLargestPiecesOfOtherTechniquesComeBack) {
  const auto letters = testing_support::legend_of(3);
  for (const auto& [technique, columns, edge] :
       {std::tuple{"loom", 100, 10000}, std::tuple{"brick", 1000, 1000},
        std::tuple{"two-drop-even-count", 1000, 1000}, std::tuple{"tubular-even-count", 1000, 1000}}) {
    auto chart = chart::Chart::make(columns, edge).value();
    for (int i = 0; i < columns * edge; ++i)
      chart.set({i % columns, i / columns}, static_cast<chart::Bead>(i * 7 % 3));
    const bool round = std::string_view(technique).starts_with("tubular");
    const auto plan =
        weave::make_plan(technique, chart, {round ? weave::Closure::round : weave::Closure::open}).value();
    const auto read = read_words(to_text(write_words(plan, letters, "Large")), {.legend = letters});
    ASSERT_TRUE(read) << message(read.problem());
    EXPECT_EQ(read->front().chart, chart);
  }
}

// A short text may ask for a chart of the largest size, but not for one that is larger, nor for many of them.
// What a list is worked for counts towards the longest row as if it were written out.
TEST(Limits, ARowsListsAreNoLongerThanARow) {
  EXPECT_TRUE(read_words("Rows 1-2: *A, B* x 500\nRow 3: 500A\n"));
  for (const std::string text :
       {"Rows 1-2: *A, B* x 501\nRow 3: 501A\n", "Rows 1-2: A, *A, B* x 500\nRow 3: 500A\n"}) {
    const auto read = read_words(text);
    ASSERT_FALSE(read) << text;
    EXPECT_EQ(read.problem().found, "more than 1000 beads");
  }
}

TEST(Limits, RepeatsOpenNoFloodgates) {
  const std::string band =
      "Rows 1-2: *A, B* x 50\nRow 3: *A, B* x 25\nRows 4-20000: work row 3 19997 times\n";
  const auto one = read_words(band);
  ASSERT_TRUE(one) << message(one.problem());
  EXPECT_EQ(one->front().chart.cells().size(), static_cast<std::size_t>(chart::most_cells));

  const auto wider = read_words("Rows 1-2: *A, B* x 51\nRow 3: 51A\nRows 4-20000: work row 3 19997 times\n");
  ASSERT_FALSE(wider);
  EXPECT_EQ(wider.problem().code, ProblemCode::out_of_range);

  const auto many = read_words(repeated(band, 10'000));
  ASSERT_FALSE(many);
  EXPECT_EQ(many.problem().code, ProblemCode::out_of_range);

  // A strip that leans takes few beads and a large chart.
  const std::string leaning =
      "Shaped flat peyote: 1000 columns, 1000 beads along the edge, 1999 rows, open.\nRows 1-2 (L): 2A\n"
      "Row 3 (R), increase at the end: 2A\nRow 4 (L), decrease at the beginning: 1A\n"
      "Rows 5-20000: work rows 3-4 9998 times\n";
  const auto leans = read_words(leaning);
  ASSERT_FALSE(leans);
  EXPECT_TRUE(is_utf8(message(leans.problem())));
}

// Texts made to send a careless reader over the same ground again and again. One that takes time by the square of the length
// would run for hours here and meet the test runner's own limit.
TEST(Limits, HostileTextsAreReadInOneGo) {
  const std::string parts[] = {"A  ",
                               "Row 3 ",
                               "3: A ",
                               "Row 3: 2A,    ",
                               "(",
                               "2A ",
                               "A A A - ",
                               "Rows 1-2:",
                               "1-2: A ",
                               "Row 3 (L): A\n",
                               "x ",
                               ",",
                               "\xE2",
                               "Rows 1-2: 2A, \n",
                               "  1A 1A -",
                               "R3.  ",
                               "*",
                               "*A ",
                               "*2A* x 2, ",
                               "*2A ",
                               "* A ",
                               "dec  x 3",
                               "; ",
                               "* x 2",
                               "Row 3 (R), increase at the ",
                               "Row 3 (R), increase at the\n",
                               "Row 3 (R),  ",
                               "Rows 3-4: work rows ",
                               "Rows 3-4: work rows\n",
                               "Rows 5-6: work rows 3-4 ",
                               "Round 3 (R): 2A ",
                               "Brick stitch: 3 ",
                               "Brick\n"};
  for (const std::string& part : parts)
    for (const std::string& before :
         {std::string(), std::string("Rows 1-2: 2A,\n"), std::string("Rows 1-2: 2A\nRow 3: "),
          std::string("Brick stitch: 2 columns.\nRow 1 (D): 2A\nRow 2 (U): *1A, "),
          std::string("Peyote bezel: 400 columns.\nRounds 1-2: 400A\nRound 3: *dec, ")}) {
      const auto bands = read_words(before + repeated(part, sanitized ? 8'000 : 80'000));
      EXPECT_TRUE(bands.ok() ? !bands->empty() : !message(bands.problem()).empty()) << part;
    }
}

}  // namespace
}  // namespace evencount::wording
