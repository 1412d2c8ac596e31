#include "picture/limited_assignment.hpp"

#include <algorithm>
#include <cmath>

namespace evencount::picture {
namespace {

using ColumnRefs = std::vector<const std::vector<float>*>;

void find_nearest(const ChoiceModel& model, const ColumnRefs& columns, Assignment& result) {
  const auto spots = static_cast<std::size_t>(model.spots().size());
  result.first.assign(spots, 0);
  result.near.assign(spots, farther_than_any);
  result.next.assign(spots, farther_than_any);
  for (std::size_t place = 0; place < columns.size(); ++place) {
    const std::vector<float>& column = *columns[place];
    const double price = result.price[place];
    for (std::size_t spot = 0; spot < spots; ++spot) {
      const double cost = column[spot] + price;
      if (cost < result.near[spot]) {
        result.next[spot] = result.near[spot];
        result.near[spot] = cost;
        result.first[spot] = static_cast<int>(place);
      } else if (cost < result.next[spot]) {
        result.next[spot] = cost;
      }
    }
  }
}

/// Sends cells from overfull beads on to others.
class Transport {
 public:
  Transport(const ChoiceModel& model, const ColumnRefs& columns, const Assignment& nearest)
      : model_(model),
        columns_(columns),
        beads_(columns.size()),
        cells_(beads_),
        load_(beads_, 0),
        most_(beads_),
        offers_(beads_),
        cheapest_(beads_) {
    for (std::size_t place = 0; place < beads_; ++place) {
      most_[place] = model.stock().most_cells[static_cast<std::size_t>(nearest.chosen[place])];
      cells_[place].assign(nearest.first.size(), 0);
    }
    for (std::size_t spot = 0; spot < nearest.first.size(); ++spot) {
      const auto place = static_cast<std::size_t>(nearest.first[spot]);
      cells_[place][spot] = model.spots().weight[spot];
      load_[place] += model.spots().weight[spot];
      cost_ += model.spots().weight[spot] * nearest.near[spot];
    }
  }

  [[nodiscard]] bool is_overfull() const {
    for (std::size_t place = 0; place < beads_; ++place)
      if (load_[place] > most_[place]) return true;
    return false;
  }

  /// False when there is nowhere to go, or when the total will exceed `give_up`: no later path is shorter than this one.
  bool send_some_on(double give_up) {
    std::vector<double> far(beads_, without_limit);
    std::vector<std::size_t> before(beads_, beads_);
    for (std::size_t place = 0; place < beads_; ++place)
      if (load_[place] > most_[place]) far[place] = 0;
    for (bool nearer = true; nearer;) {
      nearer = false;
      for (std::size_t from = 0; from < beads_; ++from)
        for (std::size_t to = 0; to < beads_ && far[from] < without_limit; ++to) {
          if (from == to || far[from] + cheapest(from, to) >= far[to] - hair) continue;
          far[to] = far[from] + cheapest(from, to);
          before[to] = from;
          nearer = true;
        }
    }
    std::size_t sink = beads_;
    for (std::size_t place = 0; place < beads_; ++place)
      if (load_[place] < most_[place] && far[place] < (sink == beads_ ? without_limit : far[sink]))
        sink = place;
    if (sink == beads_) return false;
    double excess = 0;
    for (std::size_t place = 0; place < beads_; ++place) excess += std::max(load_[place] - most_[place], 0.0);
    if (cost_ + excess * far[sink] > give_up) return false;
    cost_ += move_along(before, sink) * far[sink];
    return true;
  }

  /// What one cell more in a bead would cost: the way from it to the nearest bead that has some left.
  [[nodiscard]] std::vector<double> prices() {
    std::vector<double> price(beads_, farther_than_any);
    for (std::size_t place = 0; place < beads_; ++place)
      if (load_[place] < most_[place]) price[place] = 0;
    for (bool cheaper = true; cheaper;) {
      cheaper = false;
      for (std::size_t from = 0; from < beads_; ++from)
        for (std::size_t to = 0; to < beads_; ++to)
          if (from != to && cheapest(from, to) + price[to] < price[from] - hair) {
            price[from] = std::max(cheapest(from, to) + price[to], 0.0);
            cheaper = true;
          }
    }
    return price;
  }

  [[nodiscard]] std::vector<Share> shares() const {
    std::vector<Share> shares;
    for (std::size_t spot = 0; spot < model_.spots().weight.size(); ++spot)
      for (std::size_t place = 0; place < beads_; ++place)
        if (cells_[place][spot] > 0)
          shares.push_back({static_cast<int>(spot), static_cast<int>(place), cells_[place][spot]});
    return shares;
  }

 private:
  struct Offer {
    double more;
    std::size_t spot;
    bool operator<(const Offer& other) const {  // the cheapest on top of a heap
      return more != other.more ? more > other.more : spot > other.spot;
    }
  };
  /// So that rounding can't make a way round in a circle look shorter.
  static constexpr double hair = 1e-9;

  Offer offer(std::size_t spot, std::size_t from, std::size_t to) const {
    return {static_cast<double>((*columns_[to])[spot]) - (*columns_[from])[spot], spot};
  }

  void list_offers(std::size_t from) {
    offers_[from].resize(beads_);
    for (std::size_t to = 0; to < beads_; ++to) {
      std::vector<Offer>& heap = offers_[from][to];
      for (std::size_t spot = 0; spot < cells_[from].size(); ++spot)
        if (cells_[from][spot] > 0) heap.push_back(offer(spot, from, to));
      std::make_heap(heap.begin(), heap.end());
    }
  }

  /// The heap whose top still holds: spots that have left a bead are dropped when they come up.
  std::vector<Offer>& valid_offers(std::size_t from, std::size_t to) {
    if (offers_[from].empty()) list_offers(from);
    std::vector<Offer>& heap = offers_[from][to];
    while (!heap.empty() && cells_[from][heap.front().spot] <= 0) {
      std::pop_heap(heap.begin(), heap.end());
      heap.pop_back();
    }
    return heap;
  }

  /// What moving a cell on costs at least. Looked up anew only where cells have come or gone.
  double cheapest(std::size_t from, std::size_t to) {
    std::vector<double>& least = cheapest_[from];
    if (least.empty()) {
      for (std::size_t next = 0; next < beads_; ++next) {
        const std::vector<Offer>& heap = valid_offers(from, next);
        least.push_back(heap.empty() ? without_limit : heap.front().more);
      }
    }
    return least[to];
  }

  /// How many cells were moved.
  double move_along(const std::vector<std::size_t>& before, std::size_t sink) {
    struct Step {
      std::size_t from, to, spot;
    };
    std::vector<Step> steps;
    double amount = most_[sink] - load_[sink];
    std::size_t source = sink;
    for (; before[source] != beads_; source = before[source]) {
      const std::size_t from = before[source], spot = valid_offers(from, source).front().spot;
      steps.push_back({from, source, spot});
      amount = std::min(amount, cells_[from][spot]);
    }
    amount = std::min(amount, load_[source] - most_[source]);
    load_[source] -= amount, load_[sink] += amount;
    for (const auto& [from, to, spot] : steps) {
      cheapest_[from].clear(), cheapest_[to].clear();
      cells_[from][spot] -= amount;
      const bool arrives = cells_[to][spot] <= 0;
      cells_[to][spot] += amount;
      if (!arrives || offers_[to].empty()) continue;
      for (std::size_t next = 0; next < beads_; ++next) {
        offers_[to][next].push_back(offer(spot, to, next));
        std::push_heap(offers_[to][next].begin(), offers_[to][next].end());
      }
    }
    return amount;
  }

  const ChoiceModel& model_;
  const ColumnRefs& columns_;
  std::size_t beads_;
  std::vector<std::vector<double>> cells_;  // cells_[place][spot]
  std::vector<double> load_, most_;
  double cost_ = 0;
  std::vector<std::vector<std::vector<Offer>>> offers_;  // offers_[from][to]: what moving a cell costs
  std::vector<std::vector<double>> cheapest_;            // cheapest_[from][to]; empty: to be looked up
};

}  // namespace

std::optional<Assignment> assign(ChoiceModel& model, Candidates chosen, double give_up) {
  ColumnRefs columns;
  double room = 0;
  for (const int candidate : chosen) {
    columns.push_back(&model.column(candidate));
    room += model.stock().most_cells[static_cast<std::size_t>(candidate)];
  }
  if (room < model.spots().cells) return {};
  Assignment result{.chosen = std::move(chosen), .price = std::vector<double>(columns.size(), 0)};
  find_nearest(model, columns, result);
  const std::vector<double>& weight = model.spots().weight;
  if (model.stock().limited) {
    Transport transport(model, columns, result);
    if (transport.is_overfull()) {
      while (transport.is_overfull())
        if (!transport.send_some_on(give_up)) return {};
      result.price = transport.prices();
      find_nearest(model, columns, result);
      result.shares = transport.shares();
      for (const auto& [spot, place, cells] : result.shares)
        result.total += cells * (*columns[static_cast<std::size_t>(place)])[static_cast<std::size_t>(spot)];
      return result;
    }
  }
  for (std::size_t spot = 0; spot < weight.size(); ++spot) result.total += weight[spot] * result.near[spot];
  return result;
}

}  // namespace evencount::picture
