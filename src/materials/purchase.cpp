#include "materials/purchase.hpp"

#include <algorithm>

namespace evencount::materials {

Result<Purchase> purchase(std::int64_t needed, std::int64_t on_hand, std::span<const PackOffer> offers,
                          std::string_view currency) {
  std::vector<PackOffer> comparable;
  for (const std::size_t position : offers_in(offers, currency)) comparable.push_back(offers[position]);

  Purchase result;
  result.needed = needed;
  result.on_hand = std::max<std::int64_t>(0, on_hand);
  result.missing = std::max<std::int64_t>(0, needed - result.on_hand);
  if (comparable.empty()) {
    result.still_missing = result.missing;
    if (result.missing == 0) result.cost = Money{0, std::string(currency)};
    result.left_over = result.on_hand - (needed - result.missing);
    return result;
  }
  const auto choice = cheapest_packs(result.missing, comparable);
  if (!choice) return choice.problem();
  for (const PackCount& count : choice->packs) result.packs.push_back({comparable[count.offer], count.packs});
  result.bought = choice->bought;
  result.cost = choice->cost;
  if (result.missing == 0) result.cost = Money{0, std::string(currency)};
  result.cheapest = choice->proved;
  result.left_over = result.on_hand + result.bought - needed;

  const auto worth = result.missing == needed ? choice : cheapest_packs(needed, comparable);
  if (!worth) return worth.problem();
  if (worth->cost && worth->bought > 0) result.rate = PackRate{*worth->cost, worth->bought};
  return result;
}

}  // namespace evencount::materials
