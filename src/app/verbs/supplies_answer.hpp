#pragma once
/// What `supplies` answers, worked out before anything is printed.

#include <ostream>
#include <string>
#include <vector>

#include "app/console.hpp"
#include "app/json_text.hpp"
#include "app/verbs.hpp"
#include "project/supply_list_cost.hpp"
#include "project/supply_list_kits.hpp"
#include "project/supply_list_substitutes.hpp"

namespace evencount::app {

struct SwapAnswer {
  project::Swap swap;
  project::SwapSavings savings;
};

struct SubstituteAnswer {
  std::size_t bead = 0;  ///< its line
  std::vector<project::Substitute> substitutes;
};

struct SuppliesAnswer {
  std::vector<project::Project> projects;
  materials::CostSettings settings;
  project::CollectionSupplies list;
  std::vector<SubstituteAnswer>
      short_beads;                           ///< that the stock has too little of, and something else to take
  std::optional<materials::CostSheet> cost;  ///< where a price was asked for
  std::vector<project::Kit> kits;            ///< one a project, where a pick list was asked for
  std::vector<SwapAnswer> swaps;
};

/// Fills an answer of which the projects and settings are there: of the arguments the kits, size, price, pick and swaps.
/// Errors: those of collection_supplies, piece_use, cost_sheet, kit_of, parse_swap and swap_savings.
[[nodiscard]] Result<SuppliesAnswer> work_out_supplies(SuppliesAnswer answer, const SuppliesArguments& arguments,
                                                       project::Stock stock);

/// `supplies` with what the designer owns and can buy: the verb without a stock gives none.
int supplies_from_stock(const SuppliesArguments& arguments, project::Stock stock, const Console& console);

void print_supplies(const SuppliesAnswer& answer, std::ostream& out);
[[nodiscard]] Json supplies_json(const SuppliesAnswer& answer);

}  // namespace evencount::app
