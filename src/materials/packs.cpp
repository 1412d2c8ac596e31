#include "materials/packs.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <numeric>
#include <queue>
#include <tuple>
#include <unordered_map>

#include "base/text.hpp"

namespace evencount::materials {
namespace {

__extension__ using Wide = __int128;  // a price times an amount

/// An offer worth considering; amounts are divided by their common measure.
struct Pack {
  std::int64_t amount = 0;
  std::int64_t cost = 0;
  std::size_t offer = 0;
};

std::int64_t divide_up(std::int64_t amount, std::int64_t part) {
  return amount / part + (amount % part != 0 ? 1 : 0);
}

/// Whether a set with `a` in it is always bettered by `b` in its place.
bool is_bettered(const Pack& a, const Pack& b) {
  if (b.amount >= a.amount && b.cost < a.cost) return true;
  return b.amount == a.amount && b.cost == a.cost && b.offer < a.offer;
}

/// Cheaper for what is in it; of equals the larger.
bool is_better_value(const Pack& a, const Pack& b) {
  const Wide left = Wide{a.cost} * b.amount, right = Wide{b.cost} * a.amount;
  return left != right ? left < right : a.amount > b.amount;
}

/// The search of docs/algorithms/packs.md: sets of packs other than the best value, the one that wastes least first, each filled up with
/// packs of the best value. Costs, packs and positions are kept times the best value's amount, so that all are whole.
class Search {
 public:
  Search(std::vector<Pack> packs, std::int64_t need) : packs_(std::move(packs)), need_(need) {
    const auto best = std::min_element(packs_.begin(), packs_.end(), is_better_value);
    base_ = *best;
    packs_.erase(best);
    for (const Pack& pack : packs_)
      steps_.push_back({Wide{base_.amount} * pack.cost - Wide{base_.cost} * pack.amount,
                        Wide{base_.amount} - pack.amount,
                        Wide{base_.amount} * position(pack) - position(base_) * pack.amount});
  }

  void run() {
    open_.push({{}, 0, no_set, 0});
    while (!open_.empty()) {
      const Open next = open_.top();
      open_.pop();
      if (best_set_ && !(least_of(next.excess) < best_)) return;
      if (!close(next)) continue;
      if (sets_.size() >= static_cast<std::size_t>(most_pack_sets)) {
        proved_ = false;
        return;
      }
      sets_.push_back({next.amount, next.outer, next.pack});
      take_if_better(next, sets_.size() - 1);
      if (next.amount < need_) extend(next, sets_.size() - 1);
    }
  }

  [[nodiscard]] bool proved() const { return proved_; }

  [[nodiscard]] std::vector<PackCount> packs() const {
    std::vector<std::size_t> offers;
    const std::int64_t in_set = sets_[*best_set_].amount;
    for (std::size_t set = *best_set_; sets_[set].outer != no_set; set = sets_[set].outer)
      offers.push_back(packs_[sets_[set].pack].offer);
    std::sort(offers.begin(), offers.end());
    std::vector<PackCount> counts;
    if (in_set < need_) counts.push_back({base_.offer, divide_up(need_ - in_set, base_.amount)});
    for (const std::size_t offer : offers) {
      if (counts.empty() || counts.back().offer != offer) counts.push_back({offer, 0});
      ++counts.back().packs;
    }
    std::sort(counts.begin(), counts.end(),
              [](const PackCount& a, const PackCount& b) { return a.offer < b.offer; });
    return counts;
  }

 private:
  static constexpr std::size_t no_set = std::numeric_limits<std::size_t>::max();

  /// What a set costs, takes and stands beyond packs of the best value of the same amount; never below 0 in this order.
  struct Excess {
    Wide cost = 0, packs = 0, position = 0;
    auto operator<=>(const Excess&) const = default;
    friend Excess operator+(const Excess& a, const Excess& b) {
      return {a.cost + b.cost, a.packs + b.packs, a.position + b.position};
    }
  };
  /// What is compared, in this order.
  struct Total {
    Wide cost = 0, bought = 0, packs = 0, position = 0;
    auto operator<=>(const Total&) const = default;
  };
  struct Open {
    Excess excess;
    std::int64_t amount = 0;
    std::size_t outer = no_set;                ///< the set it extends
    std::size_t pack = 0;                      ///< by this one
    bool operator<(const Open& other) const {  // for a queue whose top is the greatest
      return std::tie(other.excess, other.amount, other.outer, other.pack) <
             std::tie(excess, amount, outer, pack);
    }
  };
  struct Set {
    std::int64_t amount;
    std::size_t outer, pack;
  };

  static Wide position(const Pack& pack) { return static_cast<Wide>(pack.offer); }

  [[nodiscard]] Total total_of(const Excess& excess, Wide bought) const {
    return {base_.cost * bought + excess.cost, bought, bought + excess.packs,
            position(base_) * bought + excess.position};
  }
  /// No set that is still open, nor what it may grow to, comes before this.
  [[nodiscard]] Total least_of(const Excess& excess) const { return total_of(excess, need_); }

  /// False for a set whose like is known: as good, of no greater amount, and whole packs of the best value apart.
  bool close(const Open& set) {
    const auto [known, is_new] = least_amount_.try_emplace(set.amount % base_.amount, set.amount);
    if (is_new) return true;
    if (known->second <= set.amount) return false;
    known->second = set.amount;
    return true;
  }

  void take_if_better(const Open& set, std::size_t index) {
    const std::int64_t fill = set.amount < need_ ? divide_up(need_ - set.amount, base_.amount) : 0;
    const Total total = total_of(set.excess, Wide{set.amount} + Wide{fill} * base_.amount);
    if (best_set_ && !(total < best_)) return;
    best_ = total;
    best_set_ = index;
  }

  void extend(const Open& set, std::size_t index) {
    for (std::size_t i = 0; i < packs_.size(); ++i) {
      const Open next{set.excess + steps_[i], set.amount + packs_[i].amount, index, i};
      if (!(least_of(next.excess) < best_)) continue;
      const auto [like, is_new] =
          lately_opened_.try_emplace(next.amount % base_.amount, next.excess, next.amount);
      if (!is_new) {
        auto& [excess, amount] = like->second;
        if (excess <= next.excess && amount <= next.amount) continue;
        excess = next.excess;
        amount = next.amount;
      }
      open_.push(next);
    }
  }

  std::vector<Pack> packs_;  ///< without the best value
  std::vector<Excess> steps_;
  Pack base_;  ///< the best value
  std::int64_t need_;
  std::priority_queue<Open> open_;
  std::vector<Set> sets_;
  /// Of the sets looked at, by their amount beyond whole packs of the best value. Never walked through.
  std::unordered_map<std::int64_t, std::int64_t> least_amount_;
  std::unordered_map<std::int64_t, std::pair<Excess, std::int64_t>> lately_opened_;
  Total best_;
  std::optional<std::size_t> best_set_;
  bool proved_ = true;
};

Result<Done> check(std::int64_t need, std::span<const PackOffer> offers) {
  if (need < 0 || need > most_amount)
    return out_of_range("need", fmt::format("{}", need), fmt::format("from 0 to {}", most_amount));
  if (offers.empty()) return Problem{ProblemCode::missing_field, "packs", "no offer", "at least one"};
  std::string_view currency;
  for (std::size_t i = 0; i < offers.size(); ++i) {
    const PackOffer& offer = offers[i];
    const std::string where = fmt::format("pack {}", i + 1);
    if (offer.amount < 1 || offer.amount > most_amount)
      return out_of_range(where, fmt::format("an amount of {}", offer.amount),
                          fmt::format("from 1 to {}", most_amount));
    if (!offer.price) continue;
    if (offer.price->minor < 0 || offer.price->minor > most_pack_price)
      return out_of_range(where, "a price of " + to_text(*offer.price), "a price of 0 or more");
    if (!currency.empty() && currency != offer.price->currency)
      return Problem{ProblemCode::bad_usage, where, "a price in " + offer.price->currency,
                     fmt::format("prices in one currency, here {}", currency)};
    currency = offer.price->currency;
  }
  return Done{};
}

/// The offers worth considering, their amounts divided by `measure`.
std::vector<Pack> packs_on_offer(std::span<const PackOffer> offers, bool priced, std::int64_t& measure) {
  std::vector<Pack> all, packs;
  for (std::size_t i = 0; i < offers.size(); ++i)
    if (!priced || offers[i].price)
      all.push_back({offers[i].amount, priced ? offers[i].price->minor : offers[i].amount, i});
  measure = 0;
  for (const Pack& pack : all) {
    if (std::any_of(all.begin(), all.end(), [&](const Pack& other) { return is_bettered(pack, other); }))
      continue;
    packs.push_back(pack);
    measure = std::gcd(measure, pack.amount);
  }
  for (Pack& pack : packs) pack.amount /= measure;
  return packs;
}

Result<Done> add_up(std::span<const PackOffer> offers, bool priced, PackChoice& choice) {
  Wide bought = 0, cost = 0;
  for (const PackCount& count : choice.packs) {
    bought += Wide{count.packs} * offers[count.offer].amount;
    if (priced) cost += Wide{count.packs} * offers[count.offer].price->minor;
  }
  if (bought > std::numeric_limits<std::int64_t>::max() || cost > std::numeric_limits<std::int64_t>::max())
    return out_of_range("packs", "a sum too large to write down", "a smaller need");
  choice.bought = static_cast<std::int64_t>(bought);
  if (!priced) return Done{};
  const auto first = std::find_if(offers.begin(), offers.end(), [](const PackOffer& o) { return o.price; });
  choice.cost = Money{static_cast<std::int64_t>(cost), first->price->currency};
  return Done{};
}

}  // namespace

Result<PackChoice> cheapest_packs(std::int64_t need, std::span<const PackOffer> offers) {
  if (const auto fine = check(need, offers); !fine) return fine.problem();
  const bool priced = std::any_of(offers.begin(), offers.end(),
                                  [](const PackOffer& offer) { return offer.price.has_value(); });
  PackChoice choice;
  if (need > 0) {
    std::int64_t measure = 1;
    std::vector<Pack> packs = packs_on_offer(offers, priced, measure);
    Search search(std::move(packs), divide_up(need, measure));
    search.run();
    choice.packs = search.packs();
    choice.proved = search.proved();
  }
  if (const auto added = add_up(offers, priced, choice); !added) return added.problem();
  choice.left_over = choice.bought - need;
  return choice;
}

std::vector<std::size_t> offers_in(std::span<const PackOffer> offers, std::string_view currency) {
  const auto positions = [&](auto wanted) {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < offers.size(); ++i)
      if (wanted(offers[i])) found.push_back(i);
    return found;
  };
  const auto priced_in = [&](std::string_view code) {
    return positions([&](const PackOffer& o) { return o.price && o.price->currency == code; });
  };
  if (auto found = priced_in(currency); !found.empty()) return found;
  for (const PackOffer& offer : offers)
    if (offer.price) return priced_in(offer.price->currency);
  return positions([](const PackOffer&) { return true; });
}

}  // namespace evencount::materials
