#pragma once
/// What one kit of a collection costs, and what swapping a bead would save.

#include "materials/costing.hpp"
#include "project/supply_list_collection.hpp"

namespace evencount::project {

/// What one kit takes, ready to be costed. Packs are reckoned for all kits together, so that a run of kits is cheaper apiece than one.
/// `list` must be the collection's, for the same request.
/// Errors: those of plan_of.
[[nodiscard]] Result<materials::PieceUse> piece_use(Collection projects, const CollectionSupplies& list);

/// The settings of the first project that has any, else the usual ones.
[[nodiscard]] materials::CostSettings settings_of(Collection projects);

/// What takes a bead's place.
struct Swap {
  std::string letter;
  std::string by;  ///< the code of an item of the stock, or another letter of the legend
  bool operator==(const Swap&) const = default;
};

/// "B=C-104". Errors: bad_text.
[[nodiscard]] Result<Swap> parse_swap(std::string_view text);

/// The collection with the bead swapped, in every project that calls it so. It may not change its size.
/// Errors: unknown_name (no project has the letter; no item of the stock has the code and no legend the letter), bad_usage (the letter means
/// different beads in different projects; an item of another kind or size).
[[nodiscard]] Result<std::vector<Project>> swapped(Collection projects, Stock stock, const Swap& swap);

/// One line of two sheets beside each other; nothing on the side that hasn't it.
struct CostDifference {
  std::string what;
  std::optional<std::int64_t> before, after;  ///< minor units
  [[nodiscard]] std::int64_t saved() const { return before.value_or(0) - after.value_or(0); }
  bool operator==(const CostDifference&) const = default;
};

struct SwapSavings {
  std::vector<CostDifference>
      packs;                        ///< what is bought, lines that differ only; none where a price is unknown
  std::vector<CostDifference> kit;  ///< what a kit costs, lines that differ only
  std::vector<std::string> unpriced;  ///< beads whose count changes and that have no price in the currency
  std::int64_t packs_saved = 0;       ///< may be negative
  std::int64_t kit_saved = 0;
  bool operator==(const SwapSavings&) const = default;
};

/// What the swap would save. Properties (tests/project/supply_list_cost_test.cpp): packs_saved and kit_saved are the sums of their lines
/// and the differences of the two lists' and sheets' sums; swapping a bead for itself saves nothing.
/// Errors: those of swapped, collection_supplies and materials::cost_sheet.
[[nodiscard]] Result<SwapSavings> swap_savings(Collection projects, const SupplyRequest& request,
                                               const materials::CostSettings& settings, const Swap& swap);

}  // namespace evencount::project
