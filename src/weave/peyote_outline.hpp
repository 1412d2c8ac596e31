#pragma once
/// Which beads each row of flat peyote holds. Internal to the room.
///
/// Groups of `drop` columns are worked as one; row `a` (in half steps along the lattice) holds every second group from `first`
/// to `last`.

#include <vector>

#include "chart/chart.hpp"

namespace evencount::weave {

struct GroupSpan {
  int first = 0;
  int last = 0;
  bool operator==(const GroupSpan&) const = default;
};

struct PeyoteOutline {
  int groups = 0;           ///< across
  int begin = 0;            ///< the first row, in half steps
  std::vector<GroupSpan> rows;  ///< from `begin` on, each row

  [[nodiscard]] int end() const { return begin + static_cast<int>(rows.size()); }
  [[nodiscard]] const GroupSpan& at(int row) const { return rows[static_cast<std::size_t>(row - begin)]; }
  [[nodiscard]] bool holds(int group, int row) const {
    return row >= begin && row < end() && (row - group) % 2 == 0 && group >= at(row).first && group <= at(row).last;
  }
};

/// The outline of a chart without gaps: every row is whole, and every next row begins and ends one group further out or in.
/// Errors: wrong_size, naming the cell, when a row has a gap, an end jumps, a group is filled in part, an outer column or step
/// is empty, or there are fewer than two rows.
[[nodiscard]] Result<PeyoteOutline> outline_of(const chart::Chart& chart, int drop);

/// Errors: wrong_size, naming the first empty cell, when anything but the whole last row is empty.
[[nodiscard]] Result<Done> check_rectangular(const chart::Chart& chart, int drop);

}  // namespace evencount::weave
