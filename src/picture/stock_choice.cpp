#include "picture/stock_choice.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "picture/branching.hpp"
#include "picture/swap_search.hpp"

namespace evencount::picture {
namespace {

/// The most that `optimal` leaves open, in the mean: a fifth of it for the proof, the rest for differences rounded to float.
constexpr double open_mean = 1e-5;

/// Spots of the small picture on which the search begins.
constexpr int sketch_spots = 1200;
constexpr int sketch_rounds = 100, sketch_nodes = 60;
constexpr int quick_rounds = 40;

Result<Done> check(std::span<const colour::Rgb> cells, std::span<const StockColour> stock, int count) {
  if (cells.empty()) return out_of_range("picture", "no cells", "one or more");
  if (count < 1) return out_of_range("count", fmt::to_string(count), "1 or more");
  if (stock.size() > static_cast<std::size_t>(most_compared) / cells.size())
    return out_of_range("stock", fmt::format("{} colours for {} cells", stock.size(), cells.size()),
                        fmt::format("at most {} for so many", static_cast<std::size_t>(most_compared) / cells.size()));
  for (std::size_t i = 0; i < stock.size(); ++i)
    if (stock[i].at_most.value_or(0) < 0)
      return out_of_range(fmt::format("stock colour {}", i + 1), fmt::to_string(*stock[i].at_most),
                          "0 cells or more");
  const auto required = std::count_if(stock.begin(), stock.end(),
                                      [](const StockColour& s) { return s.rule == StockRule::required; });
  if (required > count)
    return out_of_range("count", fmt::format("{} for {} required colours", count, required),
                        "as many as are required, or more");
  return Done{};
}

Problem too_few(std::span<const colour::Rgb> cells, int count) {
  return {ProblemCode::too_few_beads, "stock",
          fmt::format("no {} colours with {} beads together", count, cells.size()), "beads for every cell"};
}

class Chooser {
 public:
  Chooser(std::span<const colour::Rgb> cells, std::span<const StockColour> stock,
          const ChoiceOptions& options)
      : options_(options),
        stock_(sort_stock(stock)),
        model_(merge_equal_cells(cells), stock_, options_.run_jobs),
        sketch_(merge_near_spots(model_.spots(), sketch_spots), stock_, options_.run_jobs),
        sketch_list_(sketch_.list_near(
            std::vector<double>(static_cast<std::size_t>(sketch_.spots().size()), farther_than_any))) {}

  /// Nothing when there are too few beads. `before` is the choice of a smaller count.
  std::optional<StockChoice> choose(int count) {
    std::vector<double> above;
    std::optional<Assignment> start = begin(count, above);
    if (!start) return {};
    NearList list = model_.list_near(reach_of(*start));
    if (before_) {
      // What was good for fewer, and one more: never worse than before.
      std::optional<Assignment> grown = assign(model_, add_greedily(model_, list, before_->chosen, count));
      if (grown && grown->total < start->total) {
        start = std::move(grown);
        list = model_.list_near(reach_of(*start));
      }
    }
    Assignment best = exchange(model_, list, std::move(*start), options_.effort.swaps);
    ChoiceEffort effort = options_.effort;
    if (!effort.prove) effort.dual_rounds = std::min(effort.dual_rounds, quick_rounds), effort.nodes = 0;
    std::vector<double> multipliers = first_multipliers(best, list);
    // As far above the nearest bead as they came to lie on the sketch.
    for (std::size_t spot = 0; spot < multipliers.size() && !above.empty(); ++spot) {
      const double m = best.near[spot] + above[static_cast<std::size_t>(sketch_.spots().spot_of_cell[spot])];
      multipliers[spot] = std::clamp(m, 0.0, list.reach[spot]);
    }
    Proof proof = prove(model_, std::move(list), count, std::move(best), std::move(multipliers), effort,
                        open_mean / 5 * model_.spots().cells);
    best = std::move(proof.best);
    StockChoice choice = describe(best);
    // A difference rounded to float may be above the true one by a part in 2^24.
    choice.bound = std::max(proof.bound / model_.spots().cells * (1 - std::ldexp(1.0, -24)), 0.0);
    choice.nodes = proof.nodes;
    choice.optimal = choice.mean - choice.bound <= open_mean;
    before_ = std::move(best);
    return choice;
  }

 private:
  std::optional<Assignment> begin(int count, std::vector<double>& above) {
    Candidates required;
    for (int c = 0; c < stock_.size(); ++c)
      if (stock_.required[static_cast<std::size_t>(c)]) required.push_back(c);
    std::optional<Assignment> sketched =
        assign(sketch_, add_greedily(sketch_, sketch_list_, required, count));
    if (sketched) {
      sketched = exchange(sketch_, sketch_list_, std::move(*sketched), options_.effort.swaps);
      // The sets that the bound's relaxation picks lead out of local optima, and on the sketch they are cheap.
      NearList near = sketch_.list_near(reach_of(*sketched));
      std::vector<double> multipliers = first_multipliers(*sketched, near);
      ChoiceEffort effort = options_.effort;
      effort.dual_rounds = std::min(effort.dual_rounds, sketch_rounds);
      effort.nodes = std::min(effort.nodes, sketch_nodes);
      const Proof proof =
          prove(sketch_, std::move(near), count, std::move(*sketched), std::move(multipliers), effort, 0);
      above = proof.multipliers;
      for (std::size_t spot = 0; spot < above.size(); ++spot) above[spot] -= proof.best.near[spot];
      return assign(model_, proof.best.chosen);
    }
    // Beads are short: begin with the colours of which there are most.
    Candidates rest;
    for (int c = 0; c < stock_.size(); ++c)
      if (!stock_.required[static_cast<std::size_t>(c)]) rest.push_back(c);
    const auto most = [&](int c) { return stock_.most_cells[static_cast<std::size_t>(c)]; };
    std::stable_sort(rest.begin(), rest.end(), [&](int a, int b) { return most(a) > most(b); });
    rest.resize(std::min(rest.size(), static_cast<std::size_t>(count) - required.size()));
    rest.insert(rest.end(), required.begin(), required.end());
    std::sort(rest.begin(), rest.end());
    return assign(model_, std::move(rest));
  }

  /// As far as an exchange or a multiplier is likely to look: past the second nearest. More costs time, less a weaker bound.
  std::vector<double> reach_of(const Assignment& choice) const {
    std::vector<double> reach = choice.next;
    for (double& r : reach) r *= stock_.limited ? 1.5 : 1.1;
    return reach;
  }

  StockChoice describe(const Assignment& best) {
    const Spots& spots = model_.spots();
    StockChoice choice;
    for (const int c : best.chosen) choice.chosen.push_back(stock_.index[static_cast<std::size_t>(c)]);
    std::sort(choice.chosen.begin(), choice.chosen.end());

    std::vector<Share> shares = best.shares;
    if (shares.empty())
      for (int spot = 0; spot < spots.size(); ++spot)
        shares.push_back({spot, nearest_place(best, spot), spots.weight[static_cast<std::size_t>(spot)]});
    struct Measured {
      double difference, cells;
    };
    std::vector<Measured> measured;
    std::vector<std::vector<std::pair<int, double>>> beads_of(spots.weight.size());
    for (const auto& [spot, place, cells] : shares) {
      const int candidate = best.chosen[static_cast<std::size_t>(place)];
      const double difference = true_difference(spot, candidate);
      measured.push_back({difference, cells});
      choice.mean += difference * cells / spots.cells;
      beads_of[static_cast<std::size_t>(spot)].emplace_back(stock_.index[static_cast<std::size_t>(candidate)],
                                                            cells);
    }
    std::sort(measured.begin(), measured.end(),
              [](const Measured& a, const Measured& b) { return a.difference < b.difference; });
    double within = 0;
    for (const auto& [difference, cells] : measured) {
      choice.percentile_95 = difference;
      within += cells;
      if (within >= 0.95 * spots.cells) break;
    }
    for (const int spot : spots.spot_of_cell) {
      auto& beads = beads_of[static_cast<std::size_t>(spot)];
      if (beads.front().second <= 0) beads.erase(beads.begin());
      beads.front().second -= 1;
      choice.bead_of_cell.push_back(beads.front().first);
    }
    return choice;
  }

  double true_difference(int spot, int candidate) const {
    return colour::ciede2000(model_.spots().colours[static_cast<std::size_t>(spot)],
                             stock_.colours[static_cast<std::size_t>(candidate)]);
  }

  /// The nearest by the difference before it is rounded; of equally near ones the first in the stock.
  int nearest_place(const Assignment& best, int spot) {
    const double within = best.near[static_cast<std::size_t>(spot)] * (1 + 1e-6);
    int nearest = -1;
    std::pair<double, int> least{without_limit, 0};
    for (std::size_t place = 0; place < best.chosen.size(); ++place) {
      const int candidate = best.chosen[place];
      if (model_.column(candidate)[static_cast<std::size_t>(spot)] > within) continue;
      const std::pair key{true_difference(spot, candidate),
                          stock_.index[static_cast<std::size_t>(candidate)]};
      if (key < least) least = key, nearest = static_cast<int>(place);
    }
    return nearest;
  }

  const ChoiceOptions& options_;
  Stock stock_;
  ChoiceModel model_, sketch_;
  NearList sketch_list_;
  std::optional<Assignment> before_;
};

}  // namespace

Result<StockChoice> choose_stock(std::span<const colour::Rgb> cells, std::span<const StockColour> stock,
                                 int count, const ChoiceOptions& options) {
  if (const Result<Done> fine = check(cells, stock, count); !fine) return fine.problem();
  std::optional<StockChoice> choice = Chooser(cells, stock, options).choose(count);
  if (!choice) return too_few(cells, count);
  return std::move(*choice);
}

Result<std::vector<CountedChoice>> error_against_count(std::span<const colour::Rgb> cells,
                                                       std::span<const StockColour> stock, int from, int to,
                                                       const ChoiceOptions& options) {
  if (const Result<Done> fine = check(cells, stock, to); !fine) return fine.problem();
  if (from < 1 || from > to)
    return out_of_range("count", fmt::format("{} to {}", from, to), "1 or more, rising");
  Chooser chooser(cells, stock, options);
  std::vector<CountedChoice> choices;
  for (int count = from; count <= to; ++count) {
    if (!check(cells, stock, count)) continue;
    if (std::optional<StockChoice> choice = chooser.choose(count))
      choices.push_back({count, std::move(*choice)});
  }
  if (choices.empty()) return too_few(cells, to);
  // More colours never do worse, so what bounds more bounds fewer.
  for (std::size_t i = choices.size() - 1; i > 0; --i) {
    StockChoice& fewer = choices[i - 1].choice;
    fewer.bound = std::max(fewer.bound, choices[i].choice.bound);
    fewer.optimal = fewer.mean - fewer.bound <= open_mean;
  }
  return choices;
}

}  // namespace evencount::picture
