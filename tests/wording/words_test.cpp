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

// Rows that are worked again are told in one line, which counts the beads of them all.
TEST(Words, RepeatedRowsCountTheirBeads) {
  std::vector<std::vector<chart::Bead>> steps(12, {0, 0, 1, 1});
  steps[2] = {1, 0, 0, 2};
  const auto plan = plan_of(steps, weave::Closure::open);
  const auto folded = write_words(plan, letters, "x", {.fold_rows = true});
  EXPECT_LT(folded.lines.size(), write_words(plan, letters, "x").lines.size());
  for (const WordLine& line : folded.lines) {
    int beads = 0;
    for (int row = line.first_row; row <= line.last_row; ++row) beads += 2;  // of four columns
    EXPECT_EQ(line.count, beads) << line.label << " " << line.beads;
  }
}

// A semicolon parts units, whether or not the beads beside it are alike; within a unit runs are parted by commas.
TEST(Words, UnitsAreParted) {
  const auto technique = weave::find_technique("right-angle").value();
  const weave::Lattice lattice = technique.lattice(7, 3);
  auto chart = chart::Chart::make(7, 3).value();
  for (int step = 0; step < 3; ++step)
    for (int column = 0; column < 7; ++column)
      chart.set({column, step}, lattice.holds_bead({column, step}) ? chart::Bead{0} : chart::no_bead);
  chart.set({6, 1}, 1);
  const auto words = write_words(weave::make_plan("right-angle", chart, {weave::Closure::open}).value(), letters, "x");
  ASSERT_EQ(words.lines.size(), 1u);
  EXPECT_EQ(words.lines[0].beads, "(4)A; (3)A; (1)A, (1)B, (1)A");
  EXPECT_EQ(words.lines[0].count, 10);
}

// Units that are alike are a list of one, whatever comes before and after them.
TEST(Words, UnitsThatAreAlikeAreFolded) {
  const auto technique = weave::find_technique("right-angle").value();
  const auto beads_of_row_1 = [&](int columns, int odd_one) {
    const weave::Lattice lattice = technique.lattice(columns, 3);
    auto chart = chart::Chart::make(columns, 3).value();
    for (int step = 0; step < 3; ++step)
      for (int column = 0; column < columns; ++column)
        chart.set({column, step}, lattice.holds_bead({column, step}) ? chart::Bead{0} : chart::no_bead);
    if (odd_one >= 0) chart.set({odd_one, 1}, 1);
    const auto plan = weave::make_plan("right-angle", chart, {weave::Closure::open}).value();
    return write_words(plan, letters, "x", {.fold_runs = true}).lines.at(0).beads;
  };
  EXPECT_EQ(beads_of_row_1(5, -1), "(4)A; (3)A");
  EXPECT_EQ(beads_of_row_1(7, -1), "(4)A; (3)A; (3)A");
  EXPECT_EQ(beads_of_row_1(9, -1), "(4)A; *(3)A* × 3");
  EXPECT_EQ(beads_of_row_1(15, -1), "(4)A; *(3)A* × 6");
  EXPECT_EQ(beads_of_row_1(11, 10), "(4)A; *(3)A* × 3; (1)A, (1)B, (1)A");
}

/// The row lines of a flat band whose steps are these.
std::vector<std::string> folded_rows(const std::vector<std::vector<chart::Bead>>& steps) {
  std::vector<std::string> lines;
  for (const WordLine& line : write_words(plan_of(steps, weave::Closure::open), letters, "x", {.fold_rows = true}).lines)
    lines.push_back(line.label + ": " + line.beads);
  return lines;
}

// Folding must save a reader lines: two rows worked once more would be two lines against one and a jump back.
TEST(Words, FewRowsAreNotFolded) {
  const std::vector<chart::Bead> plain{0, 0, 0, 0}, mixed{1, 0, 0, 2};
  const auto once_more = folded_rows({plain, mixed, mixed});
  EXPECT_EQ(once_more.size(), 5u);
  const auto twice_more = folded_rows({plain, mixed, mixed, mixed});
  ASSERT_EQ(twice_more.size(), 4u);
  EXPECT_EQ(twice_more.back(), "Rows 5–8: work rows 3–4 twice");
}

TEST(Words, HeadingStaysOnOneLine) {
  const auto words = write_words(plan_of({{0, 0}}, weave::Closure::open), letters, " New\n  moon\t");
  EXPECT_EQ(words.heading, "Word chart: New moon");
  EXPECT_EQ(words.facts, "Flat peyote, even count: 2 columns, 1 bead along the edge, 2 rows, open.");
}

}  // namespace
}  // namespace evencount::wording
