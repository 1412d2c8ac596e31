#include "wording/words.hpp"

#include <gtest/gtest.h>

#include "weave/technique.hpp"

namespace evencount::wording {
namespace {

const std::vector<std::string> letters{"A", "B", "C"};

weave::Plan plan_of(const std::vector<std::vector<chart::Bead>>& steps, weave::Closure closure) {
  auto chart =
      chart::Chart::make(static_cast<int>(steps.front().size()), static_cast<int>(steps.size())).value();
  for (int step = 0; step < chart.edge(); ++step)
    for (int column = 0; column < chart.columns(); ++column) chart.set({column, step}, steps[step][column]);
  return weave::make_plan(weave::flat_peyote_for(chart.columns()).id, chart, {closure}).value();
}

TEST(Words, AreWrittenInTheOrderOfStringing) {
  const auto plan = plan_of({{0, 0, 1, 0}, {1, 0, 0, 2}, {0, 0, 0, 0}}, weave::Closure::zip);
  EXPECT_EQ(to_text(write_words(plan, letters, "New moon")),
            "Word chart: New moon\n"
            "Flat peyote, even count: 4 columns, 3 beads along the edge, 6 rows, zipped.\n"
            "Rows 1–2 (L): (1)A, (1)B, (2)A\n"
            "Row 3 (R): (1)B, (1)A\n"
            "Row 4 (L): (1)C, (1)A\n"
            "Row 5 (R): (2)A\n"
            "Row 6 (L): (2)A\n");
}

TEST(Words, OddCountWithAnOddNumberOfRows) {
  const auto plan = plan_of({{0, 1, 0}, {2, chart::no_bead, 0}}, weave::Closure::open);
  EXPECT_EQ(to_text(write_words(plan, letters, "")),
            "Word chart: \n"
            "Flat peyote, odd count: 3 columns, 2 beads along the edge, 3 rows, open.\n"
            "Rows 1–2 (L): (1)A, (1)B, (1)A\n"
            "Row 3 (R): (1)C, (1)A\n");
}

TEST(Words, LinesTellTheirRowsAndBeads) {
  const auto words = write_words(plan_of({{0, 0}, {0, 1}}, weave::Closure::open), letters, "x");
  ASSERT_EQ(words.lines.size(), 3u);
  EXPECT_EQ(words.lines[0], (WordLine{"Rows 1–2 (L)", "(2)A", 1, 2, 2}));
  EXPECT_EQ(words.lines[2], (WordLine{"Row 4 (L)", "(1)B", 4, 4, 1}));
}

TEST(Words, HeadingStaysOnOneLine) {
  const auto words = write_words(plan_of({{0, 0}}, weave::Closure::open), letters, " New\n  moon\t");
  EXPECT_EQ(words.heading, "Word chart: New moon");
  EXPECT_EQ(words.facts, "Flat peyote, even count: 2 columns, 1 bead along the edge, 2 rows, open.");
}

}  // namespace
}  // namespace evencount::wording
