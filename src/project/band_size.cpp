#include "project/band_size.hpp"

#include <algorithm>
#include <cmath>

#include "form/ring_start.hpp"

namespace evencount::project {
namespace {

/// The whole number nearest to `wanted` that is allowed.
template <typename Allowed>
std::optional<int> nearest(double wanted, int most, Allowed allowed) {
  const int middle = static_cast<int>(std::clamp(std::floor(wanted), 1.0, 1.0 * most));
  for (int below = middle, above = middle + 1; below >= 1 || above <= most;) {
    const bool take_below = below >= 1 && (above > most || wanted - below <= above - wanted);
    const int number = take_below ? below-- : above++;
    if (allowed(number)) return number;
  }
  return std::nullopt;
}

}  // namespace

form::FitRequest fit_request(const Project& project, const Band& band) {
  form::FitRequest request;
  request.form = find_form(project, *band.form)->form;
  request.bead = *find_bead(project, band.bead);
  request.gauge = gauge_of(project, band);
  request.use = band.use;
  if (band.closure == weave::Closure::sew) request.ends = form::Ends::sewn;
  return request;
}

Result<FittingSize> fitting_size(const Project& project, const Band& band, std::optional<int> columns,
                                 bool must_close, form::Parity parity) {
  form::FitRequest request = fit_request(project, band);
  if (band.closure == weave::Closure::round) {
    const auto ring = form::ring_start(request.form, request.bead, request.gauge);
    if (!ring) return ring.problem();
    return FittingSize{ring->beads, 0, {}};
  }
  request.columns = columns;
  request.parity = parity;
  auto fit = form::fit(request);
  if (!fit) return fit.problem();
  if (!must_close || form::closes(fit->verdict)) return FittingSize{fit->columns, fit->edge, std::move(*fit)};
  return Problem{ProblemCode::cannot_close, form::to_notation(fit->form),
                 "no number of beads that closes well", "a size with --edge, other beads, or another form"};
}

form::Parity parity_of(const weave::Technique& technique, int edge) {
  const auto makes = [&](std::initializer_list<int> numbers) {
    return std::ranges::any_of(numbers,
                               [&](int columns) { return technique.check_size(columns, edge).ok(); });
  };
  const bool even = makes({4, 6, 8, 12}), odd = makes({5, 7, 9});
  return even && odd ? form::Parity::any : odd ? form::Parity::odd : form::Parity::even;
}

std::optional<int> nearest_columns(const weave::Technique& technique, double wanted, int edge) {
  return nearest(wanted, chart::most_columns,
                 [&](int columns) { return technique.check_size(columns, edge).ok(); });
}

std::optional<int> nearest_edge(const weave::Technique& technique, int columns, double wanted) {
  return nearest(wanted, chart::most_edge,
                 [&](int edge) { return technique.check_size(columns, edge).ok(); });
}

}  // namespace evencount::project
