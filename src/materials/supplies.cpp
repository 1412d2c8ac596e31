#include "materials/supplies.hpp"

#include <fmt/format.h>

#include <cmath>

#include "base/text.hpp"

namespace evencount::materials {
namespace {

/// Rounded up, except that the rounding errors of a few multiplications must not cost another one.
double round_up(double tenths) {
  constexpr double rounding_share = 1e-9;  // far above the error of three operations, far below one bead
  const double nearest = std::round(tenths);
  return std::abs(tenths - nearest) <= rounding_share * std::max(1.0, nearest) ? nearest : std::ceil(tenths);
}

std::int64_t divide_up(std::int64_t amount, std::int64_t part) {
  return amount / part + (amount % part != 0 ? 1 : 0);
}

Result<Done> check_need(const BeadNeed& need) {
  const std::string where = "bead " + need.letter;
  if (need.count < 0 || need.count > most_beads_a_piece)
    return out_of_range(where, fmt::format("{} beads", need.count),
                        fmt::format("from 0 to {}", most_beads_a_piece));
  if (!(need.beads_per_gram > 0) || !std::isfinite(need.beads_per_gram))
    return out_of_range(where, fmt::format("{} beads per gram", plain_number(need.beads_per_gram, 6)),
                        "a number above 0");
  if (need.pack_mass && !(need.pack_mass->grams() >= 0.001 && *need.pack_mass <= heaviest_supply))
    return out_of_range(where, fmt::format("a pack of {} g", plain_number(need.pack_mass->grams(), 6)),
                        "a pack of at least 0.001 g");
  if (need.pack_price && need.pack_price->minor < 0)
    return out_of_range(where, "a pack at " + to_text(*need.pack_price), "a price of 0 or more");
  return Done{};
}

Result<BeadSupply> supply_of(const BeadNeed& need, int kits, double allowance) {
  if (auto fine = check_need(need); !fine) return fine.problem();
  BeadSupply supply{need.letter, need.name, need.size, kits * need.count, {}, {}, {}};
  const auto mass = weigh({{supply.count, need.beads_per_gram, allowance}});
  if (!mass) return mass.problem().within("bead " + need.letter);
  supply.mass = *mass;
  if (!need.pack_mass) return supply;

  const std::int64_t mass_mg = milligrams(supply.mass);
  supply.packs = divide_up(mass_mg, std::llround(1000 * need.pack_mass->grams()));
  if (!need.pack_price) return supply;
  Money cost{0, need.pack_price->currency};
  if (__builtin_mul_overflow(*supply.packs, need.pack_price->minor, &cost.minor))
    return out_of_range("bead " + need.letter,
                        fmt::format("{} packs at {}", *supply.packs, to_text(*need.pack_price)),
                        "a cost that can be written down");
  supply.cost = std::move(cost);
  return supply;
}

Result<std::optional<Money>> total_of(const std::vector<BeadSupply>& beads) {
  std::optional<Money> total;
  for (const BeadSupply& bead : beads) {
    if (!bead.cost || (total && total->currency != bead.cost->currency)) return std::optional<Money>{};
    if (!total) total = Money{0, bead.cost->currency};
    if (__builtin_add_overflow(total->minor, bead.cost->minor, &total->minor))
      return out_of_range("total", "more than can be written down", "a smaller sum");
  }
  return total;
}

}  // namespace

Result<Mass> weigh(const std::vector<BeadPortion>& portions) {
  double tenths = 0;
  for (const BeadPortion& portion : portions) {
    if (portion.count < 0 || !(portion.beads_per_gram > 0) ||
        !(portion.allowance >= 0 && portion.allowance <= 1))
      return out_of_range(
          "",
          fmt::format("{} beads, {} per gram, a share of {}", portion.count,
                      plain_number(portion.beads_per_gram, 6), plain_number(portion.allowance, 6)),
          "counts from 0, a weight above 0 and an allowance from 0 to 1");
    tenths += 10.0 * static_cast<double>(portion.count) * (1 + portion.allowance) / portion.beads_per_gram;
  }
  tenths = round_up(tenths);
  if (!(tenths <= 10 * heaviest_supply.grams()))
    return out_of_range("", fmt::format("{} g", plain_number(tenths / 10, 0)),
                        "at most a thousand tonnes of one bead");
  return grams(tenths / 10);
}

std::int64_t with_allowance(std::int64_t count, double allowance) {
  return static_cast<std::int64_t>(round_up(static_cast<double>(count) * (1 + allowance)));
}

Result<Mass> bag_mass(const BeadPortion& portion) {
  if (auto sound = weigh({portion}); !sound) return sound;
  return weigh({{with_allowance(portion.count, portion.allowance), portion.beads_per_gram, 0}});
}

std::int64_t milligrams(Mass mass) {
  return 100 * std::llround(10 * mass.grams());
}

Result<BeadSupplies> bead_supplies(const std::vector<BeadNeed>& needs, int kits, double allowance) {
  if (kits < 1 || kits > most_kits)
    return out_of_range("kits", fmt::format("{}", kits), fmt::format("from 1 to {}", most_kits));
  if (!(allowance >= 0 && allowance <= 1))
    return out_of_range("allowance", plain_number(allowance, 6), "from 0 to 1");
  BeadSupplies supplies;
  for (const BeadNeed& need : needs) {
    auto supply = supply_of(need, kits, allowance);
    if (!supply) return supply.problem();
    if (supply->count > 0) supplies.beads.push_back(std::move(*supply));
  }
  auto total = total_of(supplies.beads);
  if (!total) return total.problem();
  supplies.total = std::move(*total);
  return supplies;
}

}  // namespace evencount::materials
