#include "chart/chart.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

namespace evencount::chart {
namespace {

TEST(Chart, IsMadeOfOneBead) {
  const auto chart = Chart::make(3, 5, 7).value();
  EXPECT_EQ(chart.columns(), 3);
  EXPECT_EQ(chart.edge(), 5);
  EXPECT_EQ(chart.cells().size(), 15u);
  EXPECT_EQ(std::count(chart.cells().begin(), chart.cells().end(), 7), 15);
}

TEST(Chart, SizesHaveTheirLimits) {
  for (const auto& [columns, edge] : {std::pair{0, 5},
                                      {-1, 5},
                                      {most_columns + 1, 1},
                                      {5, 0},
                                      {1, most_edge + 1},
                                      {1000, 1001},
                                      {101, 10'000}}) {
    const auto chart = Chart::make(columns, edge);
    ASSERT_FALSE(chart.ok()) << columns << " x " << edge;
    EXPECT_EQ(chart.problem().code, ProblemCode::out_of_range);
  }
  EXPECT_TRUE(Chart::make(1, 1).ok());
  EXPECT_TRUE(Chart::make(most_columns, most_cells / most_columns).ok());
  EXPECT_TRUE(Chart::make(most_cells / most_edge, most_edge).ok());
}

RC_GTEST_PROP(ChartProperty, SettingACellChangesNoOther, ()) {
  const int columns = *rc::gen::inRange(1, 20), edge = *rc::gen::inRange(1, 20);
  const Cell cell{*rc::gen::inRange(0, columns), *rc::gen::inRange(0, edge)};
  const auto bead = *rc::gen::inRange<Bead>(1, 100);
  Chart chart = Chart::make(columns, edge, 0).value();
  chart.set(cell, bead);
  for (int step = 0; step < edge; ++step) {
    for (int column = 0; column < columns; ++column) {
      RC_ASSERT(chart.at({column, step}) == (Cell{column, step} == cell ? bead : 0));
      RC_ASSERT(chart.step(step)[column] == chart.at({column, step}));
    }
  }
}

TEST(Chart, KnowsWhatIsInside) {
  const auto chart = Chart::make(3, 2).value();
  EXPECT_TRUE(chart.contains({0, 0}));
  EXPECT_TRUE(chart.contains({2, 1}));
  for (const Cell cell : {Cell{-1, 0}, Cell{0, -1}, Cell{3, 0}, Cell{0, 2}})
    EXPECT_FALSE(chart.contains(cell));
}

TEST(Chart, MirroredTwiceIsTheSame) {
  Chart chart = Chart::make(4, 3).value();
  for (int i = 0; i < 12; ++i) chart.set({i % 4, i / 4}, static_cast<Bead>(i));
  const Chart other = mirrored(chart);
  EXPECT_EQ(other.at({0, 1}), chart.at({3, 1}));
  EXPECT_NE(other, chart);
  EXPECT_EQ(mirrored(other), chart);
}

}  // namespace
}  // namespace evencount::chart
