#include "project/carry_trails.hpp"

#include <algorithm>
#include <array>

namespace evencount::project {
namespace {

using chart::Bead;
using chart::Cell;
using chart::Chart;

class Finder {
 public:
  Finder(const Chart& chart, const Frame& frame, bool columns_round)
      : chart_(chart), frame_(frame), grid_{frame.lattice.drop, frame.edge_round, columns_round} {}

  Trails find() {
    thin_.resize(chart_.cells().size());
    for_each(
        [this](Cell cell) { thin_[index(cell)] = chart_.at(cell) != chart::no_bead && !in_block(cell); });
    Trails found;
    found.of_cell.assign(chart_.cells().size(), -1);
    const Bead ground = most_common(chart_);
    for_each([&](Cell cell) {
      if (thin_[index(cell)] && found.of_cell[index(cell)] < 0) follow(cell, ground, found);
    });
    return found;
  }

 private:
  template <typename Use>
  void for_each(Use use) {
    for (int step = 0; step < chart_.edge(); ++step)
      for (int column = 0; column < chart_.columns(); ++column) use(Cell{column, step});
  }
  [[nodiscard]] std::size_t index(Cell cell) const {
    return static_cast<std::size_t>(cell.step) * static_cast<std::size_t>(chart_.columns()) +
           static_cast<std::size_t>(cell.column);
  }

  /// The beads of the same colour that touch this one along a side.
  [[nodiscard]] std::vector<Cell> alike_beside(Cell cell) const {
    std::vector<Cell> cells = frame_.in_squares() ? diagonals(cell) : chart::neighbours(chart_, grid_, cell);
    std::erase_if(cells, [&](Cell other) { return chart_.at(other) != chart_.at(cell); });
    return cells;
  }

  [[nodiscard]] std::vector<Cell> diagonals(Cell cell) const {
    std::vector<Cell> cells;
    const int columns = chart_.columns(), edge = chart_.edge();
    for (const auto& [across, along] :
         std::array<std::pair<int, int>, 4>{{{-1, -1}, {1, -1}, {-1, 1}, {1, 1}}}) {
      Cell next{cell.column + across, cell.step + along};
      if (grid_.columns_round) next.column = (next.column + columns) % columns;
      if (grid_.edge_round) next.step = (next.step + edge) % edge;
      if (chart_.contains(next)) cells.push_back(next);
    }
    return cells;
  }

  /// Three that touch each other, or four around a corner.
  [[nodiscard]] bool in_block(Cell cell) const {
    const std::vector<Cell> beside = alike_beside(cell);
    for (std::size_t i = 0; i + 1 < beside.size(); ++i) {
      const std::vector<Cell> next = alike_beside(beside[i]);
      for (std::size_t j = i + 1; j < beside.size(); ++j) {
        if (std::find(next.begin(), next.end(), beside[j]) != next.end()) return true;
        if (grid_.drop == 1 && !frame_.in_squares()) continue;  // every corner is one of three beads
        const std::vector<Cell> other = alike_beside(beside[j]);
        for (const Cell corner : next)
          if (corner != cell && std::find(other.begin(), other.end(), corner) != other.end() &&
              !straight(beside[i], cell, beside[j]))
            return true;
      }
    }
    return false;
  }

  /// Two on either side of one, which together are no corner.
  [[nodiscard]] static bool straight(Cell one, Cell middle, Cell other) {
    return one.column + other.column == 2 * middle.column && one.step + other.step == 2 * middle.step;
  }

  void follow(Cell first, Bead ground, Trails& found) {
    const int number = static_cast<int>(found.trails.size());
    Trail trail{chart_.at(first), first, 0, TrailRank::none};
    std::vector<Cell> ahead{first};
    found.of_cell[index(first)] = number;
    while (!ahead.empty()) {
      const Cell cell = ahead.back();
      ahead.pop_back();
      ++trail.beads;
      std::vector<Cell> next = alike_beside(cell);
      if (grid_.drop == 0 && !frame_.in_squares())
        for (const Cell corner : diagonals(cell))
          if (chart_.at(corner) == trail.bead) next.push_back(corner);
      for (const Cell other : next) {
        if (!thin_[index(other)] || found.of_cell[index(other)] >= 0) continue;
        found.of_cell[index(other)] = number;
        ahead.push_back(other);
      }
    }
    const bool long_enough = trail.beads >= fewest_in_line;
    if (trail.bead == ground)
      trail.rank = long_enough ? TrailRank::speck_or_ground_line : TrailRank::ground_speck;
    else
      trail.rank = long_enough ? TrailRank::line : TrailRank::speck_or_ground_line;
    found.trails.push_back(trail);
  }

  const Chart& chart_;
  const Frame& frame_;
  chart::Grid grid_;
  std::vector<char> thin_;
};

}  // namespace

Trails find_trails(const Chart& chart, const Frame& frame, bool columns_round) {
  return Finder(chart, frame, columns_round).find();
}

}  // namespace evencount::project
