#pragma once
/// Choosing the beads of a picture: which K colours of a stock, and which of them each cell takes, so that the mean CIEDE2000
/// between cells and beads is least, with a lower bound that no choice can beat.
///
/// The bound is over the whole stock: no colour is left out for being far off in another colour space. How it is proved:
/// docs/algorithms/picture_choice.md.
///
/// Properties (tests/picture/stock_choice_test.cpp):
///  (1) bound <= the mean of every admissible choice; found by trying all of them on small pictures, and by an independent
///      solver of integer programs (tests/picture/choice_by_glpsol)
///  (2) mean - bound <= 1e-5 where `optimal`: no choice is better by more than that
///  (3) every cell takes a chosen bead; without limits on hand, the nearest (of equally near ones the first in the stock)
///  (4) required colours are chosen, forbidden ones are not, and no bead is taken by more cells than its `at_most`
///  (5) the same to the bit for any number of threads
///  (6) mean and bound are unchanged by the order of cells and stock, within 1e-5 where `optimal`; of several equally good
///      choices any may come out
///  (7) error_against_count: mean and bound never grow with the count

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "base/result.hpp"
#include "colour/srgb.hpp"
#include "picture/run_jobs.hpp"

namespace evencount::picture {

enum class StockRule {
  free,       ///< may be chosen
  required,   ///< is chosen, and counts among the K, whether or not a cell takes it
  forbidden,  ///< is not chosen
};

/// One colour of beads that can be had.
struct StockColour {
  colour::Rgb colour;
  StockRule rule = StockRule::free;
  std::optional<int> at_most;  ///< how many cells may take it, from what is on hand; >= 0
  bool operator==(const StockColour&) const = default;
};

/// How much work may be done. Counts, never seconds: the same picture gives the same choice on every machine.
struct ChoiceEffort {
  bool prove =
      true;  ///< go on until the choice is proved; else a short search, with a bound that is true but looser
  int swaps = 200;        ///< exchanges of one chosen colour for another, each search
  int dual_rounds = 600;  ///< steps of the bound's ascent at the root
  int nodes = 200;        ///< branches tried to close what the bound leaves open
  double enough_gap = 0;  ///< stop when (mean - bound) / mean is at most this; 0 to prove the optimum
};

struct ChoiceOptions {
  ChoiceEffort effort;
  RunJobs run_jobs = run_one_by_one;
};

/// K colours of the stock. Every index is an index of the stock as given.
struct StockChoice {
  std::vector<int> chosen;        ///< ascending
  std::vector<int> bead_of_cell;  ///< one for each cell
  double mean = 0;                ///< CIEDE2000 between a cell and its bead, mean over the cells
  double percentile_95 = 0;       ///< the least difference that 95 % of the cells do not exceed
  double bound = 0;               ///< no admissible choice has a lower mean
  bool optimal = false;           ///< proved: no choice is better by more than 1e-5
  int nodes = 0;                  ///< branches it took; 0 where the bound alone proved it
  bool operator==(const StockChoice&) const = default;
};

/// Cells times colours of the stock: their differences take 3 s and, at the worst, 2 GB (docs/algorithms/picture_choice.md: 0.27 s for
/// 46 million). A picture of 120 by 160 beads may have a stock of 26,000.
inline constexpr std::int64_t most_compared = 500'000'000;

/// At most `count` colours for the cells of a picture (as many as `count` unless the stock has fewer that differ).
///
/// Errors: out_of_range (count < 1; no cells; more than most_compared; a negative at_most; more colours required than count);
/// too_few_beads (no choice of `count` colours has beads enough for all cells; nothing in the stock is allowed).
[[nodiscard]] Result<StockChoice> choose_stock(std::span<const colour::Rgb> cells,
                                               std::span<const StockColour> stock, int count,
                                               const ChoiceOptions& options = {});

/// The best choice for every count from `from` to `to`: what one more colour would gain. Cheaper than one by one, since
/// each count starts from the last one's choice and bound.
/// Counts that too few beads or too many required colours rule out are left out; an error when none is left.
struct CountedChoice {
  int count = 0;
  StockChoice choice;
  bool operator==(const CountedChoice&) const = default;
};
[[nodiscard]] Result<std::vector<CountedChoice>> error_against_count(std::span<const colour::Rgb> cells,
                                                                     std::span<const StockColour> stock,
                                                                     int from, int to,
                                                                     const ChoiceOptions& options = {});

}  // namespace evencount::picture
