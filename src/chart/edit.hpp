#pragma once
/// Drawing on a chart: pure operations that say what they changed.
///
/// Every operation returns the new chart and the cells that differ, so that it can be undone. Cells that stay empty (no_bead) are no
/// part of the drawing: no operation but `set` puts a bead into one or takes one away.
///
/// Properties (tests/chart/edit_test.cpp):
///  (1) undone(edit) is the chart before, and `changes` lists exactly the cells that differ, each once, in order
///  (2) a symmetry twice (of order two) gives the chart back; one that the chart has not is refused, never approximated
///  (3) shifting round a ring by a whole round changes nothing; by a, then b, is by a + b
///  (4) inserting steps or columns and deleting them again gives the chart back

#include <optional>
#include <string_view>
#include <vector>

#include "chart/grid.hpp"

namespace evencount::chart {

struct CellChange {
  Cell cell;
  Bead before = no_bead;
  Bead after = no_bead;
  bool operator==(const CellChange&) const = default;
};

struct Edit {
  Chart chart;
  std::vector<CellChange> changes;  ///< step after step; empty when the size changed
  std::optional<Chart> before;      ///< the whole chart before, when the size changed
  bool operator==(const Edit&) const = default;
};

/// The chart before the edit.
[[nodiscard]] Chart undone(const Edit& edit);

/// Both ends of a line, or two opposite corners. Inside the chart, else out_of_range.
struct Stretch {
  Cell from, to;
};

[[nodiscard]] Result<Edit> set(const Chart& chart, Cell cell, Bead bead);
/// A straight line from middle to middle: one cell to each column or step on a plain grid; on a shifted grid the cells it passes
/// through; where every second column is shifted they all hang together.
[[nodiscard]] Result<Edit> draw_line(const Chart& chart, const Grid& grid, Stretch stretch, Bead bead);
/// Filled, or its outline one bead wide.
[[nodiscard]] Result<Edit> draw_rectangle(const Chart& chart, const Grid& grid, Stretch stretch, Bead bead, bool filled);
/// The ellipse that touches the sides of the rectangle, by the true middles of the cells; filled, or its outline one bead wide.
[[nodiscard]] Result<Edit> draw_ellipse(const Chart& chart, const Grid& grid, Stretch stretch, Bead bead, bool filled);
/// All cells of one bead that hang together with `from`.
[[nodiscard]] Result<Edit> flood_fill(const Chart& chart, const Grid& grid, Cell from, Bead bead);
/// Every bead `from` becomes `to`: recolouring, or merging two colours into one.
[[nodiscard]] Edit replace_bead(const Chart& chart, Bead from, Bead to);

/// A symmetry of the whole chart.
enum class Symmetry {
  mirror_across,  ///< column 0 becomes the last column
  mirror_along,   ///< step 0 becomes the last step
  half_turn,      ///< both
};
[[nodiscard]] std::string_view symmetry_name(Symmetry symmetry);

/// Those that map every cell of the chart exactly onto a cell of it: on a shifted grid an even number of columns has a half turn
/// but no mirror across, an odd number a mirror across but no half turn; with the last row left out, or as a ring, there are more.
[[nodiscard]] std::vector<Symmetry> symmetries(const Chart& chart, const Grid& grid);

/// Errors: wrong_size, naming the symmetries there are.
[[nodiscard]] Result<Edit> apply(const Chart& chart, const Grid& grid, Symmetry symmetry);

/// Moves the drawing along a ring by so many steps, or round a tube by so many columns (a whole number of shifted pairs of groups).
/// Errors: wrong_size when the chart isn't round that way, has empty cells, or the columns do not keep the shift.
[[nodiscard]] Result<Edit> shift_steps(const Chart& chart, const Grid& grid, int steps);
[[nodiscard]] Result<Edit> shift_columns(const Chart& chart, const Grid& grid, int columns);

/// New steps before step `at`, or new columns before column `at`, all of one bead; or steps and columns taken out. Columns
/// go in and out by whole pairs of shifted groups, so that what lies beyond keeps its shift.
/// Errors: out_of_range (outside the chart, nothing left, or too large), wrong_size (columns that break the shift).
[[nodiscard]] Result<Edit> insert_steps(const Chart& chart, int at, int count, Bead bead);
[[nodiscard]] Result<Edit> delete_steps(const Chart& chart, int at, int count);
[[nodiscard]] Result<Edit> insert_columns(const Chart& chart, const Grid& grid, int at, int count, Bead bead);
[[nodiscard]] Result<Edit> delete_columns(const Chart& chart, const Grid& grid, int at, int count);

/// A piece of a drawing, to be stamped elsewhere. Its empty cells leave what is there.
struct Stamp {
  Chart cells;
  int shift = 0;  ///< where its first column stands among the columns of a shifted pair of groups: 0 or 1, up to 3 in two-drop
  bool operator==(const Stamp&) const = default;
};

/// The cells of a rectangle, `leave` among them as empty ones (the ground, say).
[[nodiscard]] Result<Stamp> copy(const Chart& chart, const Grid& grid, Stretch stretch, std::optional<Bead> leave = {});
/// The stamp with its first cell at `at`; what falls outside is cut off, and goes on at the other side of a ring. Its columns must keep their shift.
/// Errors: wrong_size when they would not; out_of_range when `at` lies outside.
[[nodiscard]] Result<Edit> press(const Chart& chart, const Grid& grid, const Stamp& stamp, Cell at);

/// The rectangle's drawing again and again over the whole chart, from its own place on.
/// Errors: those of copy; wrong_size when its columns would not keep their shift.
[[nodiscard]] Result<Edit> repeat(const Chart& chart, const Grid& grid, Stretch stretch);

}  // namespace evencount::chart
