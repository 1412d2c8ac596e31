#pragma once
/// Which packs to buy: the cheapest set that covers a need, exactly.
///
/// Amounts are whole numbers of one unit (milligrams, pieces, millimetres) and prices whole minor units, so that nothing is
/// rounded. Any number of each pack may be bought. How it is found and why it is the best: docs/algorithms/packs.md.
///
/// Properties (tests/materials/packs_test.cpp):
///  (1) the packs cover the need, and without any one of them they would not
///  (2) no set of packs that covers it comes before this one: by cost, then what is left over, then the number of packs, then the sum of
///      their positions among the offers; the same as trying all sets (tests/oracle/packs_oracle.hpp)
///  (3) amounts and need times k give the same packs, left_over times k; so do prices times k, cost times k
///  (4) cost never falls when the need grows

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "base/units.hpp"
#include "materials/stock.hpp"

namespace evencount::materials {

struct PackCount {
  std::size_t offer = 0;   ///< its position among the offers
  std::int64_t packs = 0;  ///< above 0
  bool operator==(const PackCount&) const = default;
};

struct PackChoice {
  std::vector<PackCount> packs;  ///< by the offers' positions
  std::int64_t bought = 0;
  std::int64_t left_over = 0;  ///< bought - need
  std::optional<Money> cost;   ///< none: no offer has a price
  /// Whether (2) is proved. False only where the search was cut off at `most_pack_sets`: then the packs cover the need and dropping
  /// one does not, but a cheaper set may exist. It takes a dozen offers that share no common measure to get there.
  bool proved = true;
  bool operator==(const PackChoice&) const = default;
};

inline constexpr std::int64_t most_amount = 1'000'000'000'000'000;      ///< a million tonnes in mg
inline constexpr std::int64_t most_pack_price = 1'000'000'000'000'000;  ///< in minor units
inline constexpr int most_pack_sets = 300'000;                          ///< partial sets looked at

/// Offers without a price are left out where another has one. Where none has, the amount stands for the price: the least is left
/// over, then the fewest packs are taken, and the cost stays unknown.
/// A need of 0 takes no packs and costs 0.
/// Errors: out_of_range (need from 0, an offer's amount from 1, a price from 0, each up to its limit; a cost beyond what money can
/// hold); missing_field (no offer at all); bad_usage (prices in several currencies, which nothing here can compare: choose among them
/// with offers_in). `where` is "need" or "pack 2", counted from 1.
[[nodiscard]] Result<PackChoice> cheapest_packs(std::int64_t need, std::span<const PackOffer> offers);

/// The offers that can be compared with each other: those priced in this currency; where none is, those in the currency of the
/// first that has a price; where none has a price, all. As positions, ascending.
[[nodiscard]] std::vector<std::size_t> offers_in(std::span<const PackOffer> offers,
                                                 std::string_view currency);

}  // namespace evencount::materials
