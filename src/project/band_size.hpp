#pragma once
/// How many columns and beads along the edge a band takes: what fits its form, by the way its technique closes, and what a technique
/// can make.

#include <optional>

#include "project/project.hpp"
#include "weave/technique.hpp"

namespace evencount::project {

struct FittingSize {
  int columns = 0;
  int edge = 0;                  ///< 0 for a tube: its form says how many go round, not how high it is
  std::optional<form::Fit> fit;  ///< of a band that closes along its edge
};

/// What is asked of a fit for the band: its form, bead, gauge and use, and how its ends are joined. It must have a form.
[[nodiscard]] form::FitRequest fit_request(const Project& project, const Band& band);

/// What fits the band's form; its chart isn't looked at. `columns`: as many as fit when there are none; even ones unless `parity` says
/// otherwise. `must_close`: whether the edge is wanted, so that a form round which no number of beads closes well is a problem.
/// Errors: those of form::fit and form::ring_start; cannot_close.
[[nodiscard]] Result<FittingSize> fitting_size(const Project& project, const Band& band,
                                               std::optional<int> columns, bool must_close,
                                               form::Parity parity = form::Parity::even);

/// Which numbers of columns the technique can make, as a fit asks.
[[nodiscard]] form::Parity parity_of(const weave::Technique& technique, int edge);

/// The number of columns nearest to `wanted` that the technique can make with this edge, the smaller of two that are as near; and
/// the same of beads along the edge. Nothing when there is none from 1 to the largest size of a chart.
[[nodiscard]] std::optional<int> nearest_columns(const weave::Technique& technique, double wanted, int edge);
[[nodiscard]] std::optional<int> nearest_edge(const weave::Technique& technique, int columns, double wanted);

}  // namespace evencount::project
