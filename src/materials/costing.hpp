#pragma once
/// What a piece costs to make and what it may be sold for, line by line.
///
/// Money is whole minor units. Each line is worked out exactly and rounded once, to the nearest minor unit, a half upwards; sums are sums of
/// the rounded lines, so that what is printed adds up.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/units.hpp"
#include "materials/purchase.hpp"

namespace evencount::materials {

/// 12.5 % is 1250 hundredths.
struct Percent {
  std::int64_t hundredths = 0;
  auto operator<=>(const Percent&) const = default;
};
/// 2.5 times is 250 hundredths.
struct Factor {
  std::int64_t hundredths = 0;
  auto operator<=>(const Factor&) const = default;
};
[[nodiscard]] constexpr Percent percent(std::int64_t whole) {
  return {100 * whole};
}

/// A price from what a piece costs: the sum of materials, labour and overhead, each times its factor, times the factor of the price.
struct PriceRule {
  std::string name;
  Factor materials{100}, labour{100}, overhead{100};
  std::optional<Factor> wholesale;
  std::optional<Factor> retail;  ///< the lower one where there are two
  std::optional<Factor> retail_to;
  bool operator==(const PriceRule&) const = default;
};

/// "cost × 2 wholesale, × 2.5 to 3 retail": "Jewelry Pricing", jewelrymaking.about.com/od/basicbizinfo/a/120505_3.htm
[[nodiscard]] PriceRule multiple_of_cost();
/// "(4 × materials + labour) × 1.10": a second rule in use; taken as the retail price, which no source says.
[[nodiscard]] PriceRule materials_four_times();

/// How long a bead of a technique takes, against flat peyote.
struct TechniqueTime {
  std::string technique;  ///< its id
  Percent time;
  bool operator==(const TechniqueTime&) const = default;
};

struct CostSettings {
  std::string currency = "EUR";
  std::int64_t hour_minor = 1800;  ///< an hour's pay: 18 in the example of "Jewelry Pricing", address above
  std::int64_t beads_a_day =
      1200;  ///< "500 to 1,200 in a day's stitching for difficult work, 2,500 to 3,000 for a fast worker":
             ///< beadlizard.blogspot.com/2005/11/getting-there-from-here.html
  std::int64_t minutes_a_day = 360;  ///< a day's stitching: from memory
  std::vector<TechniqueTime>
      technique_time;  ///< instead of technique_percent's own; of two for one technique the first
  std::int64_t finishing_minutes = 10;     ///< for each band, to close it and weave its tails in: from memory
  std::int64_t assembly_minutes = 20;      ///< for each piece: from memory
  std::int64_t other_materials_minor = 0;  ///< for each piece: what has no price of its own
  Percent waste =
      percent(5);  ///< of the materials, for what is spoiled beyond the beads' own allowance: from memory
  Percent overhead = percent(10);     ///< of materials and labour: from memory
  std::int64_t overhead_minor = 0;    ///< for each piece, besides
  std::optional<PriceRule> own_rule;  ///< the designer's, after the two published ones
  bool operator==(const CostSettings&) const = default;
};

inline constexpr std::int64_t most_setting_minor = 1'000'000'000'000;
inline constexpr std::int64_t most_minutes = 1'000'000;
inline constexpr std::int64_t most_hundredths = 1'000'000;  ///< 10,000 %, or 10,000 times

/// How long a bead of a technique takes, against flat peyote. Each from memory; 100 % for what is not in the table.
[[nodiscard]] Percent technique_percent(const CostSettings& settings, std::string_view technique);

/// A material that a run of kits takes.
struct MaterialUse {
  std::string what;
  std::string how;               ///< the amount for one piece, in words
  std::int64_t amount = 0;       ///< for all kits, in the unit of the rate
  std::optional<PackRate> rate;  ///< none: no price is known
  bool operator==(const MaterialUse&) const = default;
};

/// The beads of one technique in one piece.
struct StitchingUse {
  std::string technique;  ///< its id
  std::string name;       ///< as printed
  std::int64_t beads = 0;
  bool operator==(const StitchingUse&) const = default;
};

struct PieceUse {
  std::int64_t kits = 1;
  std::vector<MaterialUse> materials;
  std::vector<StitchingUse> stitching;
  std::int64_t bands = 0;   ///< in one piece
  std::int64_t pieces = 1;  ///< put together in one kit: one a project
  bool operator==(const PieceUse&) const = default;
};

struct CostLine {
  std::string what;
  std::string how;  ///< where the figure comes from: "1152 beads, 200 an hour, 5 h 46 min"
  std::int64_t minor = 0;
  bool operator==(const CostLine&) const = default;
};

struct CostPart {
  std::vector<CostLine> lines;
  std::int64_t minor = 0;  ///< their sum
  bool operator==(const CostPart&) const = default;
};

struct Price {
  std::string rule;
  std::string how;                        ///< the rule with its figures
  std::optional<std::int64_t> wholesale;  ///< all in minor units
  std::optional<std::int64_t> retail;
  std::optional<std::int64_t> retail_to;
  bool operator==(const Price&) const = default;
};

/// Of one kit.
struct CostSheet {
  std::string currency;
  CostPart materials, labour, overhead;
  std::int64_t cost = 0;
  std::vector<Price> prices;
  std::vector<std::string> unpriced;  ///< materials that are not in it for want of a price in the currency
  bool operator==(const CostSheet&) const = default;
};

/// Properties (tests/materials/costing_test.cpp):
///  (1) every part's sum is the sum of its lines, and cost is the sum of the parts
///  (2) a price is its factor times the sum of the parts times theirs, within half a minor unit
///  (3) no line falls when its rate, its count or its setting grows
/// Checks: the published example and the second rule, to the cent.
/// Errors: out_of_range (a setting below 0 or beyond its limit, beads_a_day or kits below 1; a sum that money can't hold).
[[nodiscard]] Result<CostSheet> cost_sheet(const PieceUse& use, const CostSettings& settings);

/// Errors: out_of_range, with the setting's name in the project file as `where`.
[[nodiscard]] Result<Done> check(const CostSettings& settings);

}  // namespace evencount::materials
