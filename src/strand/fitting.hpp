#pragma once
/// A strand fitted to a wearer: how many units each run takes, how near that comes, and what would have to
/// change where it doesn't close.
///
/// Properties (tests/strand/fitting_test.cpp):
///  (1) closes exactly where |error| <= tolerance; length == wanted + error
///  (2) no change is offered where it closes; the changes of the first kind, made together, close it
///  (3) girth_by_chain <= girth_by_formula
///  (4) mirrored halves have equal counts, bands stay whole, nothing is used that is not on hand

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "strand/strung.hpp"
#include "strand/wearer.hpp"

namespace evencount::strand {

/// What would make a strand close that doesn't.
enum class Remedy {
  more_on_hand,  ///< `count` more of the element `name`
  other_limits,  ///< runs of `name` may have `count` units in all their places, past their from or to
  one_sided,     ///< the two halves may differ by one unit of `name`
  finer_bead,    ///< one more element, `length` wide (of two halves: one in each), in the run `name`
  take_away,     ///< fixed things of `length` in all, with what they take of the runs; below 0, that much more of them
  other_ease,    ///< `length` more ease (less, below 0), within 0 to loose_ease
};
[[nodiscard]] std::string_view remedy_name(Remedy remedy);

struct Change {
  Remedy remedy = Remedy::other_ease;
  std::string name;
  std::int64_t count = 0;
  Length length;
  bool operator==(const Change&) const = default;
};
/// "string 4 more of round-8": for people.
[[nodiscard]] std::string describe(const Change& change);

/// Counts and how far their length is from the wanted one.
struct Choice {
  Counts counts;  ///< one a run
  Length length;
  Length error;  ///< length - wanted
  int spread = 0;
  std::int64_t beads = 0;  ///< in the runs
};

struct FitQuestion {
  Wearer wearer;
  /// How far from the wanted length it may be. None: half the width of the narrowest unit of a run, half a
  /// millimetre for a strand without runs.
  std::optional<Length> tolerance;
  /// Make it longer by what rigid parts lose against the smooth formula (chain_round.hpp).
  bool allow_for_chain = false;
};

struct StrandFit {
  Wearer wearer;
  Length thickness;  ///< of the thickest thing strung
  Length wanted;     ///< the whole way round, closing and all
  Length tolerance;
  Choice best;  ///< run_counts.hpp says what is best
  bool closes = false;
  std::optional<Choice> shorter, longer;  ///< the two nearest; one of them is `best`
  std::vector<Change> changes;            ///< where it doesn't close: what would mend it, least trouble first
  Length girth_by_formula;                ///< what the best lies round
  std::optional<Length>
      girth_by_chain;  ///< the same as a chain of rigid parts; none where no such chain goes round, or for a finished length
  Length worn_up_to;  ///< how long it can be worn with its extenders let out
};

/// Errors: those of length_for and solve_runs but too_few_beads, which is a strand that doesn't close.
[[nodiscard]] Result<StrandFit> fit_strand(const Strung& strung, const FitQuestion& question);

/// One for each wearer, in order.
[[nodiscard]] Result<std::vector<StrandFit>> fit_sizes(const Strung& strung, std::span<const Wearer> wearers,
                                                       const FitQuestion& question = {});

/// The thickest of what is strung or may be, the closing too.
[[nodiscard]] Length thickness_of(const Strung& strung);

/// The rigid links of the chain, in order round, the closing last: each piece as wide as it adds.
[[nodiscard]] std::vector<Length> links_of(const Strung& strung, const Counts& counts);

}  // namespace evencount::strand
