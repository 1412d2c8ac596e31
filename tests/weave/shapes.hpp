#pragma once
/// Seeded outlines for shaped flat peyote.

#include <algorithm>
#include <vector>

#include "weave/random_band.hpp"

namespace evencount::weave::testing_support {

/// A chart whose rows begin and end one column further out or in than the row before, at random; tight.
inline chart::Chart random_shape(Random& random, int most_rows) {
  struct Span {
    int first, last;
  };
  std::vector<Span> rows;
  const int rows_wanted = pick(random, 2, most_rows);
  const int first = 2 * pick(random, 0, 2), last = first + 2 * pick(random, 0, 5);
  rows.push_back({first, last});
  while (static_cast<int>(rows.size()) < rows_wanted) {
    const Span before = rows.back();
    Span next{before.first + (pick(random, 0, 1) == 0 ? 1 : -1), before.last + (pick(random, 0, 1) == 0 ? 1 : -1)};
    if (next.first > next.last) next = {before.first - 1, before.last + 1};
    rows.push_back(next);
  }
  int low = rows[0].first, high = rows[0].last;
  for (const Span& span : rows) {
    low = std::min(low, span.first);
    high = std::max(high, span.last);
  }
  // Moving by an odd number of columns moves the first row half a step down.
  const int begin = ((low % 2) + 2) % 2;
  const int end = begin + static_cast<int>(rows.size());
  auto chart = chart::Chart::make(high - low + 1, (end + 1) / 2, chart::no_bead).value();
  for (std::size_t r = 0; r < rows.size(); ++r)
    for (int column = rows[r].first - low; column <= rows[r].last - low; column += 2)
      chart.set({column, (begin + static_cast<int>(r)) / 2}, static_cast<Bead>(pick(random, 0, 3)));
  return chart;
}

/// A triangle that grows from one bead (or shrinks to one), or a diamond.
inline chart::Chart triangle(int rows, bool grows, bool and_back) {
  std::vector<int> widths;
  for (int r = 1; r <= rows; ++r) widths.push_back(r);
  if (and_back)
    for (int r = rows - 1; r >= 1; --r) widths.push_back(r);
  if (!grows) std::reverse(widths.begin(), widths.end());
  const int most = rows, begin = grows ? (most - 1) % 2 : 0;
  const int end = begin + static_cast<int>(widths.size());
  auto chart = chart::Chart::make(2 * most - 1, (end + 1) / 2, chart::no_bead).value();
  for (std::size_t r = 0; r < widths.size(); ++r)
    for (int i = 0; i < widths[r]; ++i)
      chart.set({most - widths[r] + 2 * i, (begin + static_cast<int>(r)) / 2}, static_cast<Bead>(r % 3));
  return chart;
}

}  // namespace evencount::weave::testing_support
