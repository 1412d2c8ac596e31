#include "bead/gauge_evidence.hpp"

#include <fmt/format.h>

#include <cmath>

#include "base/text.hpp"

namespace evencount::bead {
namespace {

// What chi-square with so many degrees of freedom stays under 95 times in 100, within 3 % (Wilson and Hilferty, "The
// distribution of chi-square", 1931).
double chi_square_95(int freedom) {
  constexpr double normal_95 = 1.6449;  // the standard normal's own 95 % point
  const double spread = 2.0 / (9.0 * freedom);
  return freedom * std::pow(1 - spread + normal_95 * std::sqrt(spread), 3);
}

Result<Done> check(std::span<const GaugeEvidence> measured) {
  if (measured.empty()) return Problem{ProblemCode::missing_field, "gauge", "no measurement", "at least one"};
  for (const GaugeEvidence& one : measured) {
    if (!(one.edge >= smallest_pitch && one.edge <= largest_pitch))
      return Problem{ProblemCode::out_of_range, "gauge", plain_number(one.edge.mm(), 4) + " mm",
                     "from 0.2 to 50 mm for a bead along the edge"};
    if (!(one.uncertainty > 0 && one.uncertainty <= 1))
      return Problem{ProblemCode::out_of_range, "uncertainty of the gauge",
                     plain_number(100 * one.uncertainty) + " %", "above 0 and at most 100 %"};
  }
  return Done{};
}

std::string shown(const GaugeEvidence& one) {
  return fmt::format("{} ({} mm, give or take {} %)", one.source, plain_number(one.edge.mm(), 3),
                     plain_number(100 * one.uncertainty, 1));
}

}  // namespace

Result<CombinedGauge> combine(std::span<const GaugeEvidence> measured) {
  if (const auto checked = check(measured); !checked) return checked.problem();
  double weights = 0, weighted = 0;
  for (const GaugeEvidence& one : measured) {
    const double error_mm = one.edge.mm() * one.uncertainty, weight = 1 / (error_mm * error_mm);
    weights += weight;
    weighted += weight * one.edge.mm();
  }
  const double edge_mm = weighted / weights;
  CombinedGauge combined;
  combined.edge = millimetres(edge_mm);
  combined.freedom = static_cast<int>(measured.size()) - 1;
  double farthest = -1;
  const GaugeEvidence* odd_one = nullptr;
  for (const GaugeEvidence& one : measured) {
    const double off = (one.edge.mm() - edge_mm) / (one.edge.mm() * one.uncertainty);
    combined.chi_square += off * off;
    if (off * off > farthest) farthest = off * off, odd_one = &one;
    combined.source += (combined.source.empty() ? "" : "; ") + one.source;
  }
  combined.agree = combined.freedom == 0 || combined.chi_square <= chi_square_95(combined.freedom);
  const double widened = combined.agree ? 1 : std::sqrt(combined.chi_square / combined.freedom);
  combined.uncertainty = widened / std::sqrt(weights) / edge_mm;
  if (!combined.agree)
    combined.warning = fmt::format(
        "the measurements disagree by more than their own errors allow; farthest from the mean of {} mm is "
        "{}",
        plain_number(edge_mm, 3), shown(*odd_one));
  return combined;
}

GaugeEvidence evidence_of(const Gauge& gauge, double otherwise) {
  return {gauge.edge, gauge.uncertainty.value_or(otherwise), gauge.source};
}

Gauge with_edge(const Gauge& gauge, const CombinedGauge& combined) {
  return {gauge.column, combined.edge, combined.source, combined.uncertainty};
}

}  // namespace evencount::bead
