#pragma once
/// What has to be bought of one thing: what is needed, what is on hand, what is short, the packs for it and what is left over.

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "materials/packs.hpp"
#include "materials/stock.hpp"

namespace evencount::materials {

struct BoughtPack {
  PackOffer offer;
  std::int64_t packs = 0;
  bool operator==(const BoughtPack&) const = default;
};

/// What an amount costs: this much for so much.
struct PackRate {
  Money cost;
  std::int64_t amount = 0;
  bool operator==(const PackRate&) const = default;
};

struct Purchase {
  std::int64_t needed = 0;
  std::int64_t on_hand = 0;       ///< free to be used; 0 or more
  std::int64_t missing = 0;       ///< needed beyond what is on hand
  std::vector<BoughtPack> packs;  ///< the cheapest for what is missing
  std::int64_t bought = 0;
  std::int64_t still_missing = 0;  ///< what no pack is on offer for
  std::int64_t left_over = 0;      ///< on hand when all is used
  std::optional<Money> cost;       ///< of `packs`; none where something has to be bought without a price
  bool cheapest = true;            ///< PackChoice::proved
  /// What the thing is worth, on hand or not: the cheapest packs for all that is needed. None without a price.
  std::optional<PackRate> rate;
  bool operator==(const Purchase&) const = default;
};

/// Packs in this currency come first, as offers_in has it.
/// Properties (tests/materials/purchase_test.cpp):
///  (1) on_hand + bought + still_missing == needed + left_over, and not both of the last two are above 0
///  (2) nothing is bought that is on hand: bought == 0 where on_hand >= needed
///  (3) with nothing on hand, rate holds what is bought and its cost
/// Less than nothing on hand (more was promised than there is) counts as nothing.
/// Errors: those of cheapest_packs, but for a missing offer.
[[nodiscard]] Result<Purchase> purchase(std::int64_t needed, std::int64_t on_hand,
                                        std::span<const PackOffer> offers, std::string_view currency);

}  // namespace evencount::materials
