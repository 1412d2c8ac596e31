#pragma once
/// The chart: which bead stands in which cell of a band.

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"

namespace evencount::chart {

/// A place in a legend, from 0: which of the project's beads. `no_bead` marks a cell that stays empty.
using Bead = std::uint16_t;
inline constexpr Bead no_bead = 0xFFFF;

/// A cell: `column` counts across the band, `step` along its edge, both from 0.
/// In peyote the odd columns lie half a bead further on than the even ones.
struct Cell {
  int column = 0;
  int step = 0;
  auto operator<=>(const Cell&) const = default;
};

/// Largest sizes that input may ask for. 1,000 columns is over a metre wide, 10,000 beads along the edge
/// about 16 metres; a million cells keeps a project under 10 MB and every pass over it under 10 ms.
inline constexpr int most_columns = 1'000;
inline constexpr int most_edge = 10'000;
inline constexpr int most_cells = 1'000'000;

/// A rectangle of cells, `columns()` across and `edge()` along.
///
/// Properties (tests/chart/chart_test.cpp):
///  (1) make(w, n, b) holds w * n cells, all b
///  (2) after set(c, b), at(c) == b and no other cell has changed
class Chart {
 public:
  Chart() = default;

  /// Errors: out_of_range when a size is below 1 or above its largest.
  static Result<Chart> make(int columns, int edge, Bead fill = 0);

  [[nodiscard]] int columns() const { return columns_; }
  [[nodiscard]] int edge() const { return edge_; }
  [[nodiscard]] bool contains(Cell cell) const {
    return cell.column >= 0 && cell.column < columns_ && cell.step >= 0 && cell.step < edge_;
  }

  /// The bead of a cell. The cell must be inside.
  [[nodiscard]] Bead at(Cell cell) const { return cells_[index(cell)]; }
  void set(Cell cell, Bead bead) { cells_[index(cell)] = bead; }

  /// The cells of one step, from column 0 on.
  [[nodiscard]] std::span<const Bead> step(int step) const {
    return {cells_.data() + static_cast<std::size_t>(step) * columns_, static_cast<std::size_t>(columns_)};
  }

  /// All cells, step after step.
  [[nodiscard]] std::span<const Bead> cells() const { return cells_; }

  bool operator==(const Chart&) const = default;

 private:
  [[nodiscard]] std::size_t index(Cell cell) const {
    assert(contains(cell));
    return static_cast<std::size_t>(cell.step) * columns_ + cell.column;
  }

  int columns_ = 0;
  int edge_ = 0;
  std::vector<Bead> cells_;
};

/// The chart with column 0 on the other side: what is seen from the back, and what a left-handed maker
/// stitches. mirrored(mirrored(c)) == c.
[[nodiscard]] Chart mirrored(const Chart& chart);

}  // namespace evencount::chart
