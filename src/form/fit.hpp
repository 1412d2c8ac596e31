#pragma once
/// How many beads along the edge make a band that closes round a form.
///
/// The band's holes run along the form, and N beads along the edge close into a ring round the section. The strain of a
/// ring is (closing chord / gauge.edge) - 1: above zero the beads are pulled apart, below zero there is slack. The model,
/// and what it leaves out: docs/algorithms/fit.md.
///
/// Peyote is zipped: every N gives an even number of rows, 2 N, and so closes. Square and brick stitch are sewn end to end,
/// which any N allows. Which way their holes run, and so which pitch leads round:
///  - Square stitch: the needle runs along a row, so the holes lie along the rows, across the strip. Rows are stacked bead
///    on bead along the strip, and the strip is wrapped lengthwise: N rows, each an edge pitch long.
///  - Brick stitch: the needle goes up and down between the rows, so the holes stand across the rows, and every row makes
///    the piece longer by a column pitch, in the direction of the holes. With the holes along the form a row therefore
///    runs round it: N beads to a row, as many rows as columns. (A strip of brick wrapped the other way, lengthwise, has its
///    holes round the form; its pitch round is the column's, as in ring_start.hpp, and this fit is not for it.)
///
/// Properties (tests/form/fit_test.cpp):
///  (1) candidates are never empty, closing ones stand before others, and all N from the fewest to the most
///  are there (2) strain and chance: more beads, less strain and more chance (3) smallest strain <= largest
///  strain; a fixed band is judged by the one nearest to none that
///      lies between them, a sliding one by the largest (4) a form, bead and gauge
///  all k times as large give the same fit with the reveal k times as large

#include <optional>
#include <string>
#include <vector>

#include "bead/bead_size.hpp"
#include "bead/gauge.hpp"
#include "form/form.hpp"

namespace evencount::form {

/// What the band does on its form. A fixed band (glued or sewn) rests where it fits best, so it is judged by the position
/// with the least strain either way; a sliding one must
/// pass every position, so it is judged by its tightest.
enum class Use { fixed, sliding };

/// How a ring of beads sits. tight, snug and easy close; too_tight doesn't meet, too_loose closes but won't
/// stay put.
enum class Verdict { too_tight, tight, snug, easy, too_loose };

/// The strains at which one verdict gives way to the next, tightest first.
struct Limits {
  double closes;  ///< above: too_tight
  double tight;   ///< above: tight. Equal to `closes` where tight is not allowed
  double snug;    ///< down to this: snug
  double easy;    ///< down to this: easy; below: too_loose
  double ideal;   ///< where the best candidate is sought
  bool operator==(const Limits&) const = default;
};

/// A hand can pull the zip of a fixed band shut over a few percent: 4 %, from memory. The shorter of the two
/// published lengths for a carrier bead needs 0.1 to 3.2 %, as its tips are sharp or 0.5 mm round ("Carrier bead
/// mania", zinio.com/ch-de/explore/beadbutton/june-2018-i388547/carrier-bead-mania-a9620). Within 1 % nothing is
/// felt: the thread alone gives that much. Beyond 4 % of slack a band can be turned by a finger and its seam
/// sags (from memory).
inline constexpr Limits fixed_limits{0.04, 0.01, -0.015, -0.04, 0.0};

/// A sliding band may not be pulled at all where the form is widest for it: 0.5 % is what thread gives
/// without a grip on the form (from memory). It wants a little slack, and flops beyond 4 % (from memory).
inline constexpr Limits sliding_limits{0.005, 0.005, -0.01, -0.04, -0.015};

[[nodiscard]] constexpr const Limits& limits(Use use) {
  return use == Use::fixed ? fixed_limits : sliding_limits;
}

/// The verdict on a strain. Total for finite strains.
[[nodiscard]] Verdict judge(double strain, Use use);

/// Does a band with this verdict close and stay?
[[nodiscard]] constexpr bool closes(Verdict verdict) {
  return verdict == Verdict::tight || verdict == Verdict::snug || verdict == Verdict::easy;
}

/// "too_tight", "tight", …: for JSON.
[[nodiscard]] std::string_view verdict_name(Verdict verdict);
/// "too tight: the edge beads do not meet": for people.
[[nodiscard]] std::string_view verdict_text(Verdict verdict, Use use);
/// "fixed" or "sliding".
[[nodiscard]] std::string_view use_name(Use use);
/// Errors: unknown_name.
[[nodiscard]] Result<Use> parse_use(std::string_view name);

/// How the ends of the band are joined.
enum class Ends {
  zipped,  ///< peyote: 2 N rows
  sewn,    ///< square and brick stitch: N rows (of brick: N beads to a row)
};

/// Which numbers of columns may be chosen.
enum class Parity { even, odd, any };

struct FitRequest {
  Form form;
  bead::Size bead;
  bead::Gauge gauge;
  Use use = Use::fixed;
  std::optional<int> columns;              ///< none: as many as the form has room for
  Parity parity = Parity::even;            ///< when columns are chosen
  int forms_together = 1;                  ///< so many equal forms pushed end to end under one band
  Length least_reveal = millimetres(0.2);  ///< on each side, when columns are chosen; from memory
  Ends ends = Ends::zipped;
};

/// The columns of a band that is chosen for a form without a length (a finger): from memory. One more when they must be odd.
inline constexpr int columns_without_length = 6;

/// Three beads in a ring touch one another before they touch anything thicker than a thread: no band.
inline constexpr int fewest_beads_round = 4;

/// The most candidates on each side of the best.
inline constexpr int most_candidates_aside = 4;

struct FitCandidate {
  int edge = 0;                ///< beads along the edge
  int rows = 0;                ///< round the form: 2 x edge zipped, edge sewn
  double strain = 0;           ///< at the position that the use is judged by
  double smallest_strain = 0;  ///< where the ring sits best
  double largest_strain = 0;   ///< where it sits tightest
  Length slack;  ///< edge x (gauge.edge - closing chord) there: above zero is loose, below zero missing
  double chance =
      0;  ///< that it closes, given the bead's scatter and lot shift and the gauge's uncertainty: 0 to 1
  Verdict verdict = Verdict::too_tight;
  bool operator==(const FitCandidate&) const = default;
};

struct Fit {
  Form form;
  std::string bead;  ///< the bead's id
  bead::Gauge gauge;
  Use use = Use::fixed;
  int columns = 0;
  Length width;  ///< columns x gauge.column
  std::optional<Length>
      reveal;    ///< each side; below zero when given columns stand out; none without a length
  int edge = 0;  ///< edge, rows and verdict are the best candidate's
  int rows = 0;
  int beads = 0;                         ///< columns x edge
  Verdict verdict = Verdict::too_tight;  ///< `closes(verdict)` is false when nothing closes
  std::vector<FitCandidate> candidates;  ///< best first; never empty
  Ends ends = Ends::zipped;
  bool operator==(const Fit&) const = default;
};

/// Errors: those of section; out_of_range (columns below 1, a form too short for a band, a bead or gauge that
/// is not above zero, forms_together below 1, a negative reveal); too_few_beads (not even 4 beads go round).
[[nodiscard]] Result<Fit> fit(const FitRequest& request);

/// The chance that a ring of `edge` beads closes, whose nominal strain is `strain` and may be at most
/// `limits(use).closes`.
///
/// The ring's mean bead is (1 + d) times nominal, d normal with variance lot_shift^2 + scatter^2 / edge. The
/// pitch grows by that factor; so does the part of the way round that the beads' own half diameter makes,
/// `bead_share` of it (pi x diameter / offset perimeter). The pitch is also (1 + e) times what the gauge says, e normal with
/// the gauge's uncertainty (0 when it has none), which the way round doesn't feel. Closed form, the product d e left out (a
/// thousandth of a percent); no bound on the loose side.
/// Property (5): within the standard error of simulated draws (tests/form/closing_chance_test.cpp).
[[nodiscard]] double closing_chance(double strain, int edge, double bead_share, const bead::Size& bead,
                                    Use use, double gauge_uncertainty = 0);

}  // namespace evencount::form
