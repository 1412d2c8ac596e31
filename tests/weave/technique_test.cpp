#include "weave/technique.hpp"

#include <gtest/gtest.h>

namespace evencount::weave {
namespace {

chart::Chart blank(int columns, int edge) {
  return chart::Chart::make(columns, edge).value();
}

TEST(Technique, IsFoundByItsId) {
  for (const Technique& technique : techniques())
    EXPECT_EQ(find_technique(technique.id)->name, technique.name);
  const auto unknown = find_technique("knotting");
  ASSERT_FALSE(unknown);
  EXPECT_EQ(unknown.problem().code, ProblemCode::unknown_name);
  EXPECT_NE(unknown.problem().expected.find("peyote-even-count"), std::string::npos);
}

TEST(Technique, SuitsItsColumns) {
  for (int columns = 2; columns <= 20; ++columns) {
    EXPECT_TRUE(flat_peyote_for(columns).check_size(columns, 4).ok() || columns == 1);
    const int other = columns % 2 == 0 ? 1 : 0;
    EXPECT_FALSE(techniques()[other].check_size(columns, 4).ok());
  }
  EXPECT_EQ(make_plan("peyote-odd-count", blank(1, 4), {Closure::open}).problem().code,
            ProblemCode::wrong_size);
  EXPECT_EQ(make_plan("peyote-even-count", blank(5, 4), {Closure::open}).problem().code,
            ProblemCode::wrong_size);
}

TEST(Technique, ZipNeedsEvenRowsAndThreeBeads) {
  chart::Chart odd_rows = blank(4, 3);
  odd_rows.set({1, 2}, chart::no_bead);
  odd_rows.set({3, 2}, chart::no_bead);
  EXPECT_TRUE(make_plan("peyote-even-count", odd_rows, {Closure::open}).ok());
  EXPECT_EQ(make_plan("peyote-even-count", odd_rows, {Closure::zip}).problem().code,
            ProblemCode::needs_even_rows);
  EXPECT_EQ(make_plan("peyote-even-count", blank(4, 2), {Closure::zip}).problem().code,
            ProblemCode::too_few_beads);
}

TEST(Technique, OnlyTheWholeLastRowMayBeEmpty) {
  for (const chart::Cell cell :
       {chart::Cell{0, 0}, chart::Cell{1, 1}, chart::Cell{2, 2}, chart::Cell{3, 2}}) {
    chart::Chart chart = blank(4, 3);
    chart.set(cell, chart::no_bead);
    EXPECT_EQ(make_plan("peyote-even-count", chart, {Closure::open}).problem().code, ProblemCode::wrong_size);
  }
}

}  // namespace
}  // namespace evencount::weave
