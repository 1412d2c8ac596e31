#include "picture/isolated.hpp"

#include <algorithm>

namespace evencount::picture {
namespace {

// What joining a bead that stands alone may cost, in CIEDE2000, step by step. Tried: finer steps and more passes join less than 1 % more.
constexpr double first_price = 0.05, last_price = 100, dearer = 1.2;
constexpr int passes = 4;
constexpr double least_gain = 1e-9;  // less is rounding

/// Makes changes that lower the sum of CIEDE2000 + price * beads that stand alone.
class Joiner {
 public:
  Joiner(const Neighbours& neighbours, Beading& beading, double most)
      : neighbours_(neighbours),
        beading_(beading),
        given_(beading),
        isolation_(neighbours, beading),
        alone_before_(isolation_.count()),
        most_(most),
        sum_(beading.mean() * beading.cells()) {}

  /// Goes through the cells that stand alone, those round them and those changed before.
  bool pass(double price) {
    bool changed = false;
    for (int cell = 0; cell < beading_.cells(); ++cell)
      if (beading_.at(cell) != given_.at(cell) || isolation_.is_near_one(cell))
        changed |= improve(cell, price);
    return changed;
  }

  void take_back_if_worse() {
    if (isolation_.count() > alone_before_) beading_ = given_;
  }

 private:
  /// One change, or two at once where `other` is a cell.
  struct Move {
    int cell = -1, place = 0, other = -1, other_place = 0;
    double gain = least_gain;
  };

  bool improve(int cell, double price) {
    Move best;
    try_bead(cell, given_.at(cell), price, best);
    for (const int other : neighbours_.of(cell)) try_bead(cell, beading_.at(other), price, best);
    // A pair may take a bead that neither could alone.
    if (isolation_.is_alone(cell))
      for (const int other : neighbours_.of(cell))
        for (int place = 0; place < beading_.places(); ++place)
          for (const int other_place : {place, given_.at(other)})
            try_move({cell, place, other, other_place, 0}, price, best);
    if (best.cell < 0) return false;
    sum_ += make(best);
    return true;
  }

  void try_bead(int cell, int place, double price, Move& best) {
    if (place != beading_.at(cell)) try_move({cell, place, -1, 0, 0}, price, best);
  }

  void try_move(Move move, double price, Move& best) {
    if (beading_.is_pinned(move.cell) || (move.other >= 0 && beading_.is_pinned(move.other))) return;
    const Move back{move.cell, beading_.at(move.cell), move.other,
                    move.other >= 0 ? beading_.at(move.other) : 0, 0};
    const int before = isolation_.count();
    const double cost = make(move);
    const bool enough =
        beading_.room(move.place) >= 0 && (move.other < 0 || beading_.room(move.other_place) >= 0);
    move.gain = price * (before - isolation_.count()) - cost;
    make(back);
    const bool cheap = cost <= 0 || sum_ + cost <= most_;
    if (enough && cheap && move.gain > best.gain) best = move;
  }

  /// What it costs.
  double make(const Move& move) {
    double cost = 0;
    const auto set = [&](int cell, int place) {
      cost += beading_.difference(cell, place) - beading_.difference(cell);
      isolation_.set(cell, place);
    };
    set(move.cell, move.place);
    if (move.other >= 0) set(move.other, move.other_place);
    return cost;
  }

  const Neighbours& neighbours_;
  Beading& beading_;
  const Beading given_;
  Isolation isolation_;
  int alone_before_;
  double most_, sum_;
};

}  // namespace

Isolation::Isolation(const Neighbours& neighbours, Beading& beading)
    : neighbours_(neighbours), beading_(beading), same_(static_cast<std::size_t>(beading.cells()), 0) {
  for (int cell = 0; cell < beading.cells(); ++cell) {
    for (const int other : neighbours.of(cell))
      same_[static_cast<std::size_t>(cell)] += beading.at(other) == beading.at(cell);
    count_ += is_alone(cell);
  }
}

bool Isolation::is_near_one(int cell) const {
  const std::span<const int> near = neighbours_.of(cell);
  return is_alone(cell) || std::any_of(near.begin(), near.end(), [&](int other) { return is_alone(other); });
}

void Isolation::add(int cell, int more) {
  count_ -= is_alone(cell);
  same_[static_cast<std::size_t>(cell)] += more;
  count_ += is_alone(cell);
}

void Isolation::set(int cell, int place) {
  for (const int other : neighbours_.of(cell)) {
    if (beading_.at(other) == beading_.at(cell)) add(other, -1), add(cell, -1);
    if (beading_.at(other) == place) add(other, 1), add(cell, 1);
  }
  beading_.set(cell, place);
}

void join_isolated(const Neighbours& neighbours, Beading& beading, double most) {
  Joiner joiner(neighbours, beading, most);
  for (double price = first_price; price < last_price; price *= dearer)
    for (int pass = 0; pass < passes && joiner.pass(price); ++pass) {
    }
  joiner.take_back_if_worse();
}

}  // namespace evencount::picture
