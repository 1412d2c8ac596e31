#pragma once
/// From counts to grams, packs and cost.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/units.hpp"

namespace evencount::materials {

/// One bead of a piece, before weighing.
struct BeadNeed {
  std::string letter;
  std::string name;
  std::string size;        ///< "11/0 cylinder bead"
  std::int64_t count = 0;  ///< for one piece, without allowance
  double beads_per_gram = 0;
  std::optional<Mass> pack_mass;  ///< taken to the nearest milligram
  std::optional<Money> pack_price;
};

struct BeadSupply {
  std::string letter;
  std::string name;
  std::string size;
  std::int64_t count = 0;  ///< exactly what all the kits use
  Mass mass;               ///< count with the allowance, weighed, rounded up to 0.1 g
  std::optional<std::int64_t> packs;
  std::optional<Money> cost;
  bool operator==(const BeadSupply&) const = default;
};

struct BeadSupplies {
  std::vector<BeadSupply> beads;
  std::optional<Money> total;  ///< when every bead has a cost, all in one currency
  bool operator==(const BeadSupplies&) const = default;
};

/// So many beads of one weight, and the share of them added for culling and loss.
struct BeadPortion {
  std::int64_t count = 0;
  double beads_per_gram = 0;
  double allowance = 0;
};

inline constexpr int most_kits = 100'000;
inline constexpr std::int64_t most_beads_a_piece = 1'000'000'000'000;
inline constexpr Mass heaviest_supply = grams(1e9);  ///< a thousand tonnes of one bead; keeps sums exact

/// What the portions weigh together, rounded up once, to 0.1 g: BeadSupplies' property (2) for their sum.
/// Errors: out_of_range (a count from 0, beads per gram above 0, an allowance from 0 to 1, the sum up to heaviest_supply).
[[nodiscard]] Result<Mass> weigh(const std::vector<BeadPortion>& portions);

/// A count with its allowance in whole beads, rounded up as in `weigh`.
[[nodiscard]] std::int64_t with_allowance(std::int64_t count, double allowance);

/// What is weighed into the bag of one kit: the count with its allowance in whole beads, rounded up to 0.1 g.
/// Properties: bags of many kits weigh at least as much as the beads weighed together; mass * beads_per_gram covers with_allowance.
/// Errors: those of weigh.
[[nodiscard]] Result<Mass> bag_mass(const BeadPortion& portion);

/// A mass that was rounded to tenths of a gram.
[[nodiscard]] std::int64_t milligrams(Mass mass);

/// What `kits` pieces take. A bead of count 0 is left out.
/// Properties (tests/materials/supplies_test.cpp):
///  (1) count == kits * need.count
///  (2) mass is a whole number of tenths of a gram, covers the count with its allowance, and 0.1 g less does not
///      (a weight within 1e-9 of a whole tenth counts as that tenth: 110 beads at 110 to the gram are 1.0 g)
///  (3) packs * pack_mass >= mass and one pack fewer does not reach it, in whole milligrams
///  (4) cost == packs * pack_price, and the total is the sum of the costs
///  (5) the needs' order is kept
/// Errors: out_of_range (kits from 1 to 100,000, allowance from 0 to 1, count from 0, beads per gram above 0, a pack
/// of at least 1 mg, a price of 0 or more, amounts beyond `heaviest_supply` or beyond what money can hold). `where`
/// names the bead by its letter.
[[nodiscard]] Result<BeadSupplies> bead_supplies(const std::vector<BeadNeed>& needs, int kits,
                                                 double allowance);

}  // namespace evencount::materials
