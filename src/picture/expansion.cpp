#include "picture/expansion.hpp"

#include <algorithm>
#include <cmath>

#include "colour/difference.hpp"

namespace evencount::picture {
namespace {

constexpr double one = 65536;  // whole numbers in a CIEDE2000 of 1
constexpr Flow more_than_any_difference = 256 * 65536;

/// The network of one expansion. A cell on the source's side takes the bead.
///
/// Two touching cells i, j cost A = E(keep, keep), B = E(keep, take) = C = E(take, keep), D = E(take, take) = 0. That is A, plus -B when i
/// takes, plus B - A when j takes, plus 2 B - A >= 0 when i takes and j does not (V. Kolmogorov, R. Zabih, "What energy functions can be
/// minimized via graph cuts?", IEEE TPAMI 26(2), 2004).
class Expansion {
 public:
  Expansion(const SmoothCost& cost, const Beading& beading, int place)
      : beading_(beading), place_(place), node_of_cell_(static_cast<std::size_t>(beading.cells()), -1) {
    for (int cell = 0; cell < beading.cells(); ++cell) {
      if (beading.at(cell) == place || beading.is_pinned(cell)) continue;
      node_of_cell_[static_cast<std::size_t>(cell)] = static_cast<int>(cells_.size());
      cells_.push_back(cell);
    }
    taking_.assign(cells_.size(), 0);
    for (std::size_t node = 0; node < cells_.size(); ++node) add_cell(cost, node);
  }

  /// The cells that take the bead when each costs `price` more, and what they save without it.
  struct Takers {
    std::vector<int> cells;
    Flow saved = 0;
  };
  [[nodiscard]] Takers takers(Flow price) const {
    FlowNetwork network(static_cast<int>(cells_.size()));
    for (std::size_t node = 0; node < cells_.size(); ++node) {
      const Flow taking = taking_[node] + price;
      network.add_ends(static_cast<int>(node), std::max<Flow>(-taking, 0), std::max<Flow>(taking, 0));
    }
    for (const Between& between : between_)
      network.add_edge(between.from, between.to, between.cost, between.cost_back);
    network.find_flow();
    Takers takers;
    for (std::size_t node = 0; node < cells_.size(); ++node) {
      if (!network.is_with_source(static_cast<int>(node))) continue;
      takers.cells.push_back(cells_[node]);
      takers.saved -= taking_[node];
    }
    for (const Between& between : between_) {
      const bool first = network.is_with_source(between.from), second = network.is_with_source(between.to);
      if (first && !second) takers.saved -= between.cost;
      if (second && !first) takers.saved -= between.cost_back;
    }
    return takers;
  }

 private:
  struct Between {
    int from, to;
    Flow cost, cost_back;
  };

  void add_cell(const SmoothCost& cost, std::size_t node) {
    const int cell = cells_[node];
    Flow& taking = taking_[node];
    taking += SmoothCost::own(beading_, cell, place_) - SmoothCost::own(beading_, cell, beading_.at(cell));
    const std::span<const int> near = cost.neighbours().of(cell);
    for (std::size_t n = 0; n < near.size(); ++n) {
      const Flow border = cost.border(cell, n);
      const bool same = beading_.at(cell) == beading_.at(near[n]);
      const int other = node_of_cell_[static_cast<std::size_t>(near[n])];
      if (other < 0) {
        // It keeps its bead, which is this one or another.
        taking += (beading_.at(near[n]) == place_ ? 0 : border) - (same ? 0 : border);
      } else if (cell < near[n]) {
        const Flow both_keep = same ? 0 : border;
        taking -= border;
        taking_[static_cast<std::size_t>(other)] += border - both_keep;
        between_.push_back({static_cast<int>(node), other, 2 * border - both_keep, 0});
      }
    }
  }

  const Beading& beading_;
  int place_;
  std::vector<int> node_of_cell_, cells_;
  std::vector<Flow> taking_;  // by node: what taking the bead costs more than keeping its own
  std::vector<Between> between_;
};

}  // namespace

SmoothCost::SmoothCost(const Neighbours& neighbours, std::span<const colour::Rgb> cells, double strength,
                       double outline)
    : neighbours_(neighbours) {
  std::vector<colour::LabD65> labs;
  for (const colour::Rgb cell : cells) labs.push_back(colour::to_lab_d65(cell));
  border_.reserve(neighbours.touching.size());
  for (std::size_t cell = 0; cell < cells.size(); ++cell)
    for (const int other : neighbours.of(static_cast<int>(cell))) {
      const double jump = colour::ciede2000(labs[cell], labs[static_cast<std::size_t>(other)]) / outline;
      border_.push_back(std::llround(one * strength / (1 + jump * jump)));
    }
}

Flow SmoothCost::own(const Beading& beading, int cell, int place) {
  return std::llround(one * beading.difference(cell, place));
}

Flow SmoothCost::of(const Beading& beading) const {
  Flow sum = 0;
  for (int cell = 0; cell < beading.cells(); ++cell) {
    sum += own(beading, cell, beading.at(cell));
    const std::span<const int> near = neighbours_.of(cell);
    for (std::size_t n = 0; n < near.size(); ++n)
      if (cell < near[n] && beading.at(cell) != beading.at(near[n])) sum += border(cell, n);
  }
  return sum;
}

bool expand(const SmoothCost& cost, Beading& beading, int place) {
  const int room = beading.room(place);
  if (room <= 0) return false;
  const Expansion expansion(cost, beading, place);
  const auto fits = [&](const Expansion::Takers& takers) {
    return static_cast<int>(takers.cells.size()) <= room;
  };
  Expansion::Takers takers = expansion.takers(0);
  if (!fits(takers)) {
    // The dearer, the fewer take it: the least price at which there are beads enough.
    Flow too_low = 0, enough = more_than_any_difference;
    while (enough - too_low > 1) {
      const Flow price = too_low + (enough - too_low) / 2;
      Expansion::Takers some = expansion.takers(price);
      if (fits(some))
        enough = price, takers = std::move(some);
      else
        too_low = price;
    }
    if (!fits(takers)) return false;
  }
  if (takers.saved <= 0) return false;
  for (const int cell : takers.cells) beading.set(cell, place);
  return true;
}

void expand_all(const SmoothCost& cost, Beading& beading) {
  int since_change = 0;
  for (int place = 0; since_change < beading.places(); place = (place + 1) % beading.places())
    since_change = expand(cost, beading, place) ? 0 : since_change + 1;
}

}  // namespace evencount::picture
