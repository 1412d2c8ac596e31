#include "page/chart_parts.hpp"

#include <gtest/gtest.h>

#include <set>

namespace evencount::page {
namespace {

TEST(ChartParts, EveryCellIsOnePartsOwn) {
  for (int cells = 1; cells <= 300; ++cells)
    for (int most = overlap_cells + 1; most <= 80; ++most) {
      int next = 0;
      for (const Span& span : spans_of(cells, most)) {
        EXPECT_EQ(span.first, next);
        EXPECT_LT(span.first, span.end);
        next = span.end;
      }
      EXPECT_EQ(next, cells);
    }
}

TEST(ChartParts, ShowTheFirstOfTheirNeighbours) {
  for (int cells = 1; cells <= 300; ++cells)
    for (int most = overlap_cells + 1; most <= 80; ++most) {
      const auto spans = spans_of(cells, most);
      for (const Span& span : spans) {
        EXPECT_LE(span.shown_end - span.first, most);
        EXPECT_EQ(span.shown_end, std::min(cells, span.end + overlap_cells));
      }
    }
}

TEST(ChartParts, AChartThatFitsIsOne) {
  EXPECT_EQ(spans_of(40, 40), (std::vector<Span>{{0, 40, 40}}));
  EXPECT_EQ(parts_of(10, 20, 10, 20).count(), 1u);
}

TEST(ChartParts, EveryMeetingHasItsOwnMark) {
  const PartsGrid grid = parts_of(100, 130, 30, 40);
  std::set<int> marks;
  int meetings = 0;
  for (std::size_t row = 0; row < grid.down.size(); ++row)
    for (std::size_t column = 0; column < grid.across.size(); ++column) {
      if (column + 1 < grid.across.size()) marks.insert(mark_to_the_right(grid, row, column)), ++meetings;
      if (row + 1 < grid.down.size()) marks.insert(mark_below(grid, row, column)), ++meetings;
    }
  EXPECT_EQ(static_cast<int>(marks.size()), meetings);
  EXPECT_EQ(*marks.begin(), 1);
  EXPECT_EQ(*marks.rbegin(), meetings);
}

}  // namespace
}  // namespace evencount::page
