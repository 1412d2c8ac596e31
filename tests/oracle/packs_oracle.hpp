#pragma once
/// The cheapest packs by trying every set that covers the need and has no pack to spare.

#include <cstdint>
#include <optional>
#include <tuple>
#include <vector>

namespace evencount::materials::oracle {

struct Offer {
  std::int64_t amount = 0;
  std::int64_t price = 0;
};

/// What is compared, in this order.
struct Bought {
  std::int64_t cost = 0, amount = 0, packs = 0, positions = 0;
  auto operator<=>(const Bought&) const = default;
};

inline void try_sets(const std::vector<Offer>& offers, std::size_t from, std::int64_t need,
                     const Bought& so_far, std::optional<Bought>& best) {
  if (so_far.amount >= need) {
    if (!best || so_far < *best) best = so_far;
    return;
  }
  if (from == offers.size()) return;
  Bought with = so_far;
  while (true) {  // none of this offer, then one, and so on until they cover it alone
    try_sets(offers, from + 1, need, with, best);
    if (with.amount >= need) return;
    with.cost += offers[from].price;
    with.amount += offers[from].amount;
    ++with.packs;
    with.positions += static_cast<std::int64_t>(from);
  }
}

inline Bought cheapest(const std::vector<Offer>& offers, std::int64_t need) {
  std::optional<Bought> best;
  try_sets(offers, 0, need, {}, best);
  return *best;
}

}  // namespace evencount::materials::oracle
