#include "page/chart_parts.hpp"

#include <algorithm>
#include <cassert>

namespace evencount::page {

std::vector<Span> spans_of(int cells, int most) {
  assert(most > overlap_cells);
  if (cells <= most) return {{0, cells, cells}};
  const int own_most = most - overlap_cells;
  const int parts = (cells + own_most - 1) / own_most;
  const int own = (cells + parts - 1) / parts;
  std::vector<Span> spans;
  for (int first = 0; first < cells; first += own) {
    const int end = std::min(cells, first + own);
    spans.push_back({first, end, std::min(cells, end + overlap_cells)});
  }
  return spans;
}

int mark_to_the_right(const PartsGrid& grid, std::size_t row, std::size_t column) {
  const std::size_t a_row = grid.across.size() - 1;
  return static_cast<int>(row * (a_row + grid.across.size()) + column) + 1;
}

int mark_below(const PartsGrid& grid, std::size_t row, std::size_t column) {
  const std::size_t a_row = grid.across.size() - 1;
  return static_cast<int>(row * (a_row + grid.across.size()) + a_row + column) + 1;
}

}  // namespace evencount::page
