#include "form/fit.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "base/text.hpp"
#include "form/closure.hpp"
#include "form/track.hpp"

namespace evencount::form {
namespace {

using std::numbers::pi;

struct VerdictRow {
  Verdict verdict;
  std::string_view name;
  std::string_view fixed;
  std::string_view sliding;
};

constexpr std::array<VerdictRow, 5> verdicts{{
    {Verdict::too_tight, "too_tight", "too tight: the edge beads do not meet",
     "too tight: the band binds on the form"},
    {Verdict::tight, "tight", "tight: closes with a firm pull on the zip", "tight: drags on the form"},
    {Verdict::snug, "snug", "snug: closes without a pull and stays put", "snug: slides with a light push"},
    {Verdict::easy, "easy", "easy: closes with a little slack; glue or sew it down", "easy: slides freely"},
    {Verdict::too_loose, "too_loose", "too loose: turns and sags on the form",
     "too loose: flops on the form"},
}};

const VerdictRow& row(Verdict verdict) {
  return *std::find_if(verdicts.begin(), verdicts.end(),
                       [&](const VerdictRow& r) { return r.verdict == verdict; });
}

std::string shown(Length length) {
  return plain_number(length.mm(), 3) + " mm";
}

Result<Done> check_request(const FitRequest& request) {
  const auto positive = [](Length l) { return std::isfinite(l.mm()) && l > Length{}; };
  if (!positive(request.bead.diameter))
    return out_of_range("diameter of the bead", shown(request.bead.diameter), "above 0");
  if (!positive(request.gauge.column) || !positive(request.gauge.edge))
    return out_of_range("gauge", bead::to_notation(request.gauge),
                        "above 0 for a column and a bead along the edge");
  if (!(request.least_reveal >= Length{}))
    return out_of_range("reveal", shown(request.least_reveal), "0 or more");
  if (request.forms_together < 1)
    return out_of_range("forms together", fmt::format("{}", request.forms_together), "at least 1");
  if (const double sure = request.gauge.uncertainty.value_or(0); !(sure >= 0 && sure <= 1))
    return out_of_range("uncertainty of the gauge", plain_number(100 * sure) + " %", "from 0 to 100 %");
  if (request.columns && *request.columns < 1)
    return out_of_range("columns", fmt::format("{}", *request.columns), "at least 1");
  return Done{};
}

Result<int> choose_columns(const FitRequest& request) {
  if (request.columns) return *request.columns;
  const bool any = request.parity == Parity::any;
  const int odd = request.parity == Parity::odd ? 1 : 0;
  if (!request.form.length_along_holes) return columns_without_length + odd;
  const Length room = request.forms_together * *request.form.length_along_holes - 2 * request.least_reveal;
  constexpr double rounding = 1e-9;
  const int most = static_cast<int>(std::floor(room / request.gauge.column + rounding));
  const int columns = most - (any || most % 2 == odd ? 0 : 1);
  const int fewest = any || odd ? 1 : 2;
  if (columns >= fewest) return columns;
  return out_of_range("length of the form", shown(request.forms_together * *request.form.length_along_holes),
                      fmt::format("at least {} for {} column{} of this bead",
                                  shown(fewest * request.gauge.column + 2 * request.least_reveal), fewest,
                                  fewest == 1 ? "" : "s"));
}

// The ring-independent half of a fit.
struct Round {
  Track track;
  double bead_share;
};

// A ring that has been closed, from which the next one's chord is guessed.
struct Known {
  int edge = 0;
  Length chord;
};

Result<FitCandidate> try_edge(const FitRequest& request, const Round& round, int edge, Known& known) {
  std::optional<Length> near;
  if (known.edge > 0)
    near = likely_chord(millimetres(round.track.perimeter_mm()), known.edge, known.chord, edge);
  const auto range = closing_range(round.track, edge, near);
  if (!range) return range.problem();
  known = {edge, range->smallest};
  FitCandidate candidate;
  candidate.edge = edge;
  candidate.rows = request.ends == Ends::zipped ? 2 * edge : edge;
  candidate.smallest_strain = range->smallest / request.gauge.edge - 1;
  candidate.largest_strain = range->largest / request.gauge.edge - 1;
  const bool fixed = request.use == Use::fixed;
  // Every chord between the smallest and the largest has its start, so a fixed band rests as near to no strain as they allow.
  const double resting = std::clamp(0.0, candidate.smallest_strain, candidate.largest_strain);
  candidate.strain = fixed ? resting : candidate.largest_strain;
  candidate.slack = -edge * candidate.strain * request.gauge.edge;
  const double hardest = fixed ? candidate.smallest_strain : candidate.largest_strain;
  candidate.chance = closing_chance(hardest, edge, round.bead_share, request.bead, request.use,
                                    request.gauge.uncertainty.value_or(0));
  candidate.verdict = judge(candidate.strain, request.use);
  return candidate;
}

bool better(const FitCandidate& a, const FitCandidate& b, Use use) {
  if (closes(a.verdict) != closes(b.verdict)) return closes(a.verdict);
  const double ideal = limits(use).ideal;
  return std::abs(a.strain - ideal) < std::abs(b.strain - ideal);
}

// Outwards from the best guess to both sides, until one is past closing on that side or the side is full.
Result<std::vector<FitCandidate>> candidates_round(const FitRequest& request, const Round& round) {
  const double wanted =
      round.track.perimeter_mm() / (request.gauge.edge.mm() * (1 + limits(request.use).ideal));
  constexpr double most_beads = 100000;  // more than any form within its sizes takes at the finest gauge
  if (!(wanted < most_beads))
    return out_of_range("gauge", bead::to_notation(request.gauge), "beads large enough for this form");
  // The chords cut the curve's corners, so the best edge is never above perimeter / pitch, rounded.
  const int middle = static_cast<int>(std::lround(wanted));
  if (middle < fewest_beads_round)
    return Problem{ProblemCode::too_few_beads, "form", fmt::format("room for {} beads", middle),
                   fmt::format("room for at least {}", fewest_beads_round)};
  std::vector<FitCandidate> candidates;
  Known known;
  for (const int side : {-1, 1}) {
    const Verdict past = side < 0 ? Verdict::too_tight : Verdict::too_loose;
    bool done = false;
    for (int k = side < 0 ? 0 : 1; k <= most_candidates_aside && !done; ++k) {
      const int edge = middle + side * k;
      if (edge < fewest_beads_round) break;
      const auto candidate = try_edge(request, round, edge, known);
      if (!candidate) return candidate.problem();
      done = k > 0 && candidate->verdict == past;
      candidates.push_back(*candidate);
    }
  }
  std::sort(candidates.begin(), candidates.end(),
            [&](const FitCandidate& a, const FitCandidate& b) { return better(a, b, request.use); });
  return candidates;
}

}  // namespace

Verdict judge(double strain, Use use) {
  const Limits& limit = limits(use);
  if (strain > limit.closes) return Verdict::too_tight;
  if (strain > limit.tight) return Verdict::tight;
  if (strain >= limit.snug) return Verdict::snug;
  if (strain >= limit.easy) return Verdict::easy;
  return Verdict::too_loose;
}

std::string_view verdict_name(Verdict verdict) {
  return row(verdict).name;
}

std::string_view verdict_text(Verdict verdict, Use use) {
  return use == Use::fixed ? row(verdict).fixed : row(verdict).sliding;
}

std::string_view use_name(Use use) {
  return use == Use::fixed ? "fixed" : "sliding";
}

Result<Use> parse_use(std::string_view name) {
  for (const Use use : {Use::fixed, Use::sliding})
    if (name == use_name(use)) return use;
  return Problem{ProblemCode::unknown_name, "use", quote(name), "fixed or sliding"};
}

double closing_chance(double strain, int edge, double bead_share, const bead::Size& bead, Use use,
                      double gauge_uncertainty) {
  // Closes when (1 + strain) (1 + share d) <= (1 + limit) (1 + d) (1 + e), which is linear in d and e but for d e.
  const double stretched = 1 + strain, allowed = 1 + limits(use).closes;
  const double gain = allowed - bead_share * stretched;
  const double needed = stretched - allowed;
  const double mean_bead = std::hypot(bead.lot_shift, bead.scatter / std::sqrt(edge));
  const double spread = std::hypot(gain * mean_bead, allowed * gauge_uncertainty);
  if (spread <= 0) return needed <= 0 ? 1 : 0;
  return 0.5 * std::erfc(needed / (spread * std::numbers::sqrt2));
}

Result<Fit> fit(const FitRequest& request) {
  if (const auto checked = check_request(request); !checked) return checked.problem();
  const auto outline = section(request.form);
  if (!outline) return outline.problem();
  const auto columns = choose_columns(request);
  if (!columns) return columns.problem();
  const Track track(offset(*outline, request.bead.diameter / 2));
  const Round round{track, pi * request.bead.diameter.mm() / track.perimeter_mm()};
  auto candidates = candidates_round(request, round);
  if (!candidates) return candidates.problem();

  Fit result;
  result.form = request.form;
  result.bead = request.bead.id;
  result.gauge = request.gauge;
  result.use = request.use;
  result.ends = request.ends;
  result.columns = *columns;
  result.width = *columns * request.gauge.column;
  if (request.form.length_along_holes)
    result.reveal = (request.forms_together * *request.form.length_along_holes - result.width) / 2;
  result.candidates = std::move(*candidates);
  const FitCandidate& best = result.candidates.front();
  result.edge = best.edge;
  result.rows = best.rows;
  result.beads = *columns * best.edge;
  result.verdict = best.verdict;
  return result;
}

}  // namespace evencount::form
