#pragma once
/// A chart that is larger than its page, cut into parts. Private to this room.
///
/// Properties (tests/page/chart_parts_test.cpp):
///  (1) every cell is one part's own
///  (2) a part shows at most `most_columns` by `most_steps` cells, its own and behind them the first `overlap` of its neighbours'
///  (3) a chart that fits is one part without an overlap

#include <vector>

namespace evencount::page {

/// Columns and steps of one part: its own up to `end`, shown up to `shown_end`.
struct Span {
  int first = 0, end = 0, shown_end = 0;
  bool operator==(const Span&) const = default;
};

/// So many cells of the part that follows are shown again.
inline constexpr int overlap_cells = 2;

/// Spans as even as they come. `most` is above `overlap_cells`.
[[nodiscard]] std::vector<Span> spans_of(int cells, int most);

struct PartsGrid {
  std::vector<Span> across, down;
  [[nodiscard]] std::size_t count() const { return across.size() * down.size(); }
};
[[nodiscard]] inline PartsGrid parts_of(int columns, int steps, int most_columns, int most_steps) {
  return {spans_of(columns, most_columns), spans_of(steps, most_steps)};
}

/// Where two parts meet there is a mark on both, numbered from 1, row by row: of a part to the one on its right, and to the one below.
[[nodiscard]] int mark_to_the_right(const PartsGrid& grid, std::size_t row, std::size_t column);
[[nodiscard]] int mark_below(const PartsGrid& grid, std::size_t row, std::size_t column);

}  // namespace evencount::page
