#pragma once
/// Joining beads that stand alone to their neighbours. This room's own.

#include "picture/beading.hpp"

namespace evencount::picture {

/// Which cells stand alone: they touch others, none of which has their bead.
class Isolation {
 public:
  Isolation(const Neighbours& neighbours, Beading& beading);

  [[nodiscard]] int count() const { return count_; }
  [[nodiscard]] bool is_alone(int cell) const {
    return same_[static_cast<std::size_t>(cell)] == 0 && !neighbours_.of(cell).empty();
  }
  /// The cell or one that it touches stands alone.
  [[nodiscard]] bool is_near_one(int cell) const;
  /// Gives a cell another bead.
  void set(int cell, int place);

 private:
  void add(int cell, int more);

  const Neighbours& neighbours_;
  Beading& beading_;
  std::vector<int> same_;  // by cell: neighbours with its bead
  int count_ = 0;
};

/// Lowers the number of beads that stand alone by changing single cells and pairs that touch, as long as the sum of CIEDE2000 is at
/// most `most`. Never leaves more alone than before.
void join_isolated(const Neighbours& neighbours, Beading& beading, double most);

}  // namespace evencount::picture
