#pragma once
/// One edge gauge from several measurements of it: swatches, and finished pieces that fitted.
///
/// Properties (tests/bead/gauge_evidence_test.cpp):
///  (1) one measurement combines to itself; the order doesn't matter, within 1e-12 relative
///  (2) the value lies between the smallest and the largest, and nearer to the surer of two
///  (3) measurements that agree make the error smaller: k equal ones by the square root of k
///  (4) over many draws the true value lies within 2 standard errors about 95 times in 100

#include <span>
#include <string>
#include <vector>

#include "bead/gauge.hpp"

namespace evencount::bead {

/// One measurement of the pitch along the edge.
struct GaugeEvidence {
  Length edge;
  double uncertainty = 0;  ///< standard error as a share of `edge`, above 0
  std::string source;
  bool operator==(const GaugeEvidence&) const = default;
};

struct CombinedGauge {
  Length edge;  ///< mean, weighted by the inverse of each variance
  double uncertainty =
      0;  ///< standard error as a share; made larger by the root of chi_square / freedom where they disagree
  double chi_square = 0;  ///< sum of the squared distances from the mean, each in its own standard errors
  int freedom = 0;        ///< measurements - 1
  bool agree = true;      ///< chi_square is not above what 95 of 100 sets of sound measurements stay under
  std::string warning;    ///< empty when they agree; else which measurement lies farthest off, for people
  std::string source;     ///< names them all
  bool operator==(const CombinedGauge&) const = default;
};

/// Errors: missing_field (none given), out_of_range (an edge from 0.2 to 50 mm, an
/// uncertainty above 0 and at most 1).
[[nodiscard]] Result<CombinedGauge> combine(std::span<const GaugeEvidence> measured);

/// What a gauge says as a measurement; a gauge without an uncertainty is taken as sure to `otherwise`.
/// `otherwise`: makers, lots and finishes differ by several percent, so a default is sure to 2 % (from memory).
inline constexpr double default_uncertainty = 0.02;
[[nodiscard]] GaugeEvidence evidence_of(const Gauge& gauge, double otherwise = default_uncertainty);

/// The gauge with its edge, uncertainty and source from the measurements, the column as it was.
[[nodiscard]] Gauge with_edge(const Gauge& gauge, const CombinedGauge& combined);

}  // namespace evencount::bead
