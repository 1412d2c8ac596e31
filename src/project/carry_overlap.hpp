#pragma once
/// How the places of two pieces' cells overlap when one is stretched over the other: in whole numbers, so that what is
/// symmetric stays so to the last bit. Internal to the room.

#include <cstdint>
#include <vector>

#include "project/carry.hpp"

namespace evencount::project {

/// What is worked of a piece.
struct Frame {
  weave::Lattice lattice;
  bool edge_round = false;
  bool half_last_step = false;  ///< the last shifted beads are left out
  /// Whether a cell of the lattice lies in the piece.
  [[nodiscard]] bool holds(chart::Cell cell) const;
  [[nodiscard]] bool in_squares() const { return lattice.holes == weave::Holes::round_squares; }
};

/// The frame of a chart drawn on a piece.
[[nodiscard]] Frame frame_of(const chart::Chart& chart, const Piece& piece);
/// Whether its cells stand against each other as the other frame's do.
[[nodiscard]] bool alike(const Frame& one, const Frame& other);

struct Share {
  int index = 0;
  std::int64_t length = 0;
};

/// An old cell on a new one.
struct Overlap {
  chart::Cell old;
  std::int64_t across = 0, along = 0;  ///< lengths; across only in squares of four
  std::int64_t area = 0;
};

/// Where columns are shifted, the first and last beads of a column count as reaching to the end of the piece, so that every
/// column covers all of it. In right-angle weave a bead has a diamond, a quarter of each square beside it.
class Overlaps {
 public:
  /// A ring is pinned at `pin` quarter steps from its start, elsewhere stretched from end to end.
  Overlaps(const Frame& from, const Frame& to, int pin);

  /// The old cells on a new one, in order of first sight. `found` is cleared first.
  void of(chart::Cell cell, std::vector<Overlap>& found) const;

  /// How far a new cell lies from the middle of the piece (on a ring, from across the pin), along and across.
  struct Distance {
    std::int64_t along = 0, across = 0;
    auto operator<=>(const Distance&) const = default;
  };
  [[nodiscard]] Distance from_middle(chart::Cell cell) const;

 private:
  void add(chart::Cell square, std::int64_t weight, std::vector<Overlap>& found) const;

  Frame from_, to_;
  int pin_;
  std::vector<std::vector<Share>> columns_;      // by new column
  std::vector<std::vector<Share>> steps_[2][2];  // by new shift, old shift, new step
};

}  // namespace evencount::project
