#pragma once
/// Giving cells other beads, one at a time, while the chart comes nearer to the picture at viewing distance. This room's own.
///
/// What falls is the *cost*: the sum over the cells of the CIEDE2000 at viewing distance and `closeness` times the CIEDE2000 between
/// the cell itself and its bead. Every change is costed exactly before it is made, on all cells that show it.

#include <optional>

#include "picture/beading.hpp"
#include "picture/viewing.hpp"

namespace evencount::picture {

/// The picture at viewing distance, to compare charts with.
struct Target {
  Target(const Viewing& viewing, std::span<const colour::Rgb> cells);

  const Viewing& viewing;
  std::vector<colour::Linear> light;  ///< of the cells
  std::vector<colour::Linear> seen;   ///< at viewing distance
  std::vector<colour::LabD65> labs;   ///< of `seen`
};

/// The light of a chart's cells at viewing distance.
[[nodiscard]] std::vector<colour::Linear> seen_of(const Viewing& viewing, const Beading& beading);

/// Mean CIEDE2000 at viewing distance.
[[nodiscard]] double viewing_mean(const Target& target, const Beading& beading);

class ViewingSearch {
 public:
  ViewingSearch(const Target& target, Beading start, double closeness);

  /// Goes through the cells until no single change helps, at most so many times.
  void improve(int rounds);

  [[nodiscard]] const Beading& beading() const { return beading_; }

 private:
  struct Change {
    int cell = -1, place = 0;
  };
  /// A change, or an exchange of two cells' beads. `second.cell` is -1 for one alone.
  struct Move {
    Change first, second;
    double gain = 0;
  };

  bool improve_cell(int cell);
  [[nodiscard]] std::vector<int> promising(int cell) const;
  [[nodiscard]] Move best_exchange(int cell);
  [[nodiscard]] double gain_of(const Move& move);
  void spread(const Change& change);
  void make(const Move& move);
  [[nodiscard]] double difference_at(int cell, const colour::Linear& seen) const;

  const Target& target_;
  Beading beading_;
  double closeness_;
  std::optional<Neighbours> neighbours_;    // where beads may be short
  std::vector<colour::Linear> bead_light_;  // by place
  std::vector<colour::Linear> seen_;        // by cell, as it is now
  std::vector<double> difference_;          // by cell, at viewing distance
  std::vector<bool> due_;                   // something near has changed since the cell was last looked at
  // What a move changes: the cells that show it, and by how much.
  std::vector<int> touched_;
  std::vector<bool> is_touched_;
  std::vector<colour::Linear> by_;
};

}  // namespace evencount::picture
