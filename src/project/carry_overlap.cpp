#include "project/carry_overlap.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>

namespace evencount::project {
namespace {

using chart::Cell;

int shift_of(const Frame& frame, int column) {
  return frame.in_squares() ? 0 : frame.lattice.along_halves({column, 0});
}

bool is_shifted(const Frame& frame) {
  return !frame.in_squares() && frame.lattice.drop > 0 && frame.lattice.columns > frame.lattice.drop;
}

/// The piece's length in quarter steps.
std::int64_t length_of(const Frame& frame) {
  const std::int64_t whole = 4 * static_cast<std::int64_t>(frame.lattice.edge);
  return frame.edge_round || !is_shifted(frame) || frame.half_last_step ? whole : whole + 2;
}

int steps_of(const Frame& frame, int shift) {
  return frame.lattice.edge - (shift == 1 && frame.half_last_step ? 1 : 0);
}

/// A stretch of a column that belongs to a step.
struct Stretch {
  std::int64_t begin = 0, end = 0;
  int step = 0;
};

/// A column with this shift, divided into its steps, in quarter steps times `scale`.
std::vector<Stretch> divided(const Frame& frame, int shift, std::int64_t scale, int pin) {
  const std::int64_t length = length_of(frame);
  const int steps = steps_of(frame, shift);
  std::vector<Stretch> stretches;
  for (int step = 0; step < steps; ++step) {
    std::int64_t begin = 4 * static_cast<std::int64_t>(step) + 2 * shift, end = begin + 4;
    if (!frame.edge_round) {
      if (step == 0) begin = 0;
      if (step == steps - 1) end = length;
      stretches.push_back({begin * scale, end * scale, step});
      continue;
    }
    begin = ((begin - pin) % length + length) % length;
    end = begin + 4;
    stretches.push_back({begin * scale, std::min(end, length) * scale, step});
    if (end > length) stretches.push_back({0, (end - length) * scale, step});
  }
  std::sort(stretches.begin(), stretches.end(),
            [](const Stretch& a, const Stretch& b) { return a.begin < b.begin; });
  return stretches;
}

void add_share(std::vector<Share>& shares, int index, std::int64_t length) {
  for (Share& share : shares)
    if (share.index == index) {
      share.length += length;
      return;
    }
  shares.push_back({index, length});
}

/// For each step of `to` its shares of the steps of `from`; both cover the same length.
std::vector<std::vector<Share>> shared(const std::vector<Stretch>& from, const std::vector<Stretch>& to,
                                       int steps) {
  std::vector<std::vector<Share>> shares(static_cast<std::size_t>(steps));
  for (std::size_t i = 0, j = 0; i < from.size() && j < to.size();) {
    const std::int64_t common = std::min(from[i].end, to[j].end) - std::max(from[i].begin, to[j].begin);
    if (common > 0) add_share(shares[static_cast<std::size_t>(to[j].step)], from[i].step, common);
    const bool both = from[i].end == to[j].end, first = from[i].end < to[j].end;
    if (first || both) ++i;
    if (!first) ++j;
  }
  return shares;
}

/// `count` equal columns, each times `scale`.
std::vector<Stretch> columns_of(int count, std::int64_t scale) {
  std::vector<Stretch> columns;
  for (int column = 0; column < count; ++column)
    columns.push_back({column * scale, (column + 1) * scale, column});
  return columns;
}

/// The squares beside one, inside the piece.
std::vector<Cell> beside(const weave::Lattice& lattice, Cell cell) {
  std::vector<Cell> cells;
  for (const auto& [across, along] : std::array<std::pair<int, int>, 4>{{{0, -1}, {-1, 0}, {1, 0}, {0, 1}}}) {
    const Cell next{cell.column + across, cell.step + along};
    if (next.column >= 0 && next.column < lattice.columns && next.step >= 0 && next.step < lattice.edge)
      cells.push_back(next);
  }
  return cells;
}

constexpr std::int64_t whole_square = 12;  // divides by the 2, 3 or 4 beads that share an empty one

}  // namespace

bool Frame::holds(Cell cell) const {
  if (!lattice.holds_bead(cell)) return false;
  return !half_last_step || cell.step < lattice.edge - 1 || lattice.along_halves({cell.column, 0}) == 0;
}

Frame frame_of(const chart::Chart& chart, const Piece& piece) {
  Frame frame{piece.lattice, weave::closes_round_edge(piece.closure), false};
  if (!is_shifted(frame) || chart.edge() < 2) return frame;
  bool half = true;
  for (int column = 0; column < chart.columns(); ++column)
    half = half && (chart.at({column, chart.edge() - 1}) == chart::no_bead) == (shift_of(frame, column) == 1);
  frame.half_last_step = half;
  return frame;
}

bool alike(const Frame& one, const Frame& other) {
  return one.in_squares() == other.in_squares() &&
         (one.in_squares() || one.lattice.drop == other.lattice.drop);
}

Overlaps::Overlaps(const Frame& from, const Frame& to, int pin) : from_(from), to_(to), pin_(pin) {
  columns_ = shared(columns_of(from.lattice.columns, to.lattice.columns),
                    columns_of(to.lattice.columns, from.lattice.columns), to.lattice.columns);
  const std::int64_t from_length = length_of(from), to_length = length_of(to);
  for (const int shift : {0, 1})
    for (const int old_shift : {0, 1})
      steps_[shift][old_shift] = shared(divided(from, old_shift, to_length, pin),
                                        divided(to, shift, from_length, pin), to.lattice.edge);
}

void Overlaps::add(Cell square, std::int64_t weight, std::vector<Overlap>& found) const {
  const int shift = shift_of(to_, square.column);
  const auto add_to = [&](Cell old, std::int64_t across, std::int64_t along, std::int64_t area) {
    for (Overlap& overlap : found)
      if (overlap.old == old) {
        overlap.area += area;
        overlap.across += across;
        return;
      }
    found.push_back({old, across, along, area});
  };
  for (const Share& column : columns_[static_cast<std::size_t>(square.column)])
    for (const Share& step :
         steps_[shift][shift_of(from_, column.index)][static_cast<std::size_t>(square.step)]) {
      const Cell old{column.index, step.index};
      const std::int64_t area = column.length * step.length * weight;
      if (!from_.in_squares()) {
        add_to(old, to_.in_squares() ? area : column.length, step.length, area * whole_square);
        continue;
      }
      if (from_.lattice.holds_bead(old)) {
        add_to(old, area * whole_square, 0, area * whole_square);
        continue;
      }
      const std::vector<Cell> owners = beside(from_.lattice, old);
      const std::int64_t part = area * (whole_square / static_cast<std::int64_t>(owners.size()));
      for (const Cell owner : owners) add_to(owner, part, 0, part);
    }
}

void Overlaps::of(Cell cell, std::vector<Overlap>& found) const {
  found.clear();
  if (!to_.in_squares()) return add(cell, 1, found);
  // Its own square, and a quarter of each empty one beside it.
  add(cell, 4, found);
  for (const Cell square : beside(to_.lattice, cell)) add(square, 1, found);
}

Overlaps::Distance Overlaps::from_middle(Cell cell) const {
  const std::int64_t across = std::abs(2 * cell.column + 1 - to_.lattice.columns);
  const std::int64_t length = length_of(to_);
  const std::int64_t middle = 4 * static_cast<std::int64_t>(cell.step) + 2 * shift_of(to_, cell.column) + 2;
  if (!to_.edge_round) return {std::abs(2 * middle - length), across};
  const std::int64_t past = ((middle - pin_) % length + length) % length;
  return {std::abs(2 * past - length), across};
}

}  // namespace evencount::project
