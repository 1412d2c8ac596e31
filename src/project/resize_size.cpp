#include "project/resize_size.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "form/ring_start.hpp"

namespace evencount::project {
namespace {

class Sizing {
 public:
  Sizing(const BandIn& before, const BandIn& after, weave::Technique technique)
      : before_(before),
        after_(after),
        technique_(technique),
        lattice_(technique.lattice(after.band.chart.columns(), after.band.chart.edge())),
        old_gauge_(gauge_of(before.project, before.band)),
        new_gauge_(gauge_of(after.project, after.band)) {}

  Result<NewSize> choose(const BandWish& wish, FlatKeeps flat) {
    const Band& band = after_.band;
    Result<NewSize> size = band.form && weave::closes_round_edge(band.closure)  ? closed(wish)
                           : band.form && band.closure == weave::Closure::round ? tube(flat)
                                                                                : laid_flat(flat);
    if (!size) return size;
    if (wish.columns) size->columns = cells(*wish.columns);
    if (wish.edge) size->edge = cells(*wish.edge);
    return size;
  }

 private:
  [[nodiscard]] bool in_units() const { return lattice_.holes == weave::Holes::round_squares; }
  [[nodiscard]] int cells(int wished) const { return in_units() ? 2 * wished + 1 : wished; }
  [[nodiscard]] double units(int cells) const { return in_units() ? (cells - 1) / 2.0 : cells; }

  [[nodiscard]] Problem impossible() const {
    return {ProblemCode::wrong_size, "size", "no size near the old one",
            fmt::format("one that {} can make", technique_.name)};
  }

  Result<NewSize> laid_flat(FlatKeeps flat) const {
    const chart::Chart& chart = before_.band.chart;
    if (flat == FlatKeeps::counts) return NewSize{chart.columns(), chart.edge(), {}};
    const auto columns = nearest_columns(
        technique_, wanted(chart.columns(), old_gauge_.column / new_gauge_.column), chart.edge());
    if (!columns) return impossible();
    const auto edge =
        nearest_edge(technique_, *columns, wanted(chart.edge(), old_gauge_.edge / new_gauge_.edge));
    if (!edge) return impossible();
    return NewSize{*columns, *edge, {}};
  }
  [[nodiscard]] double wanted(int cells, double ratio) const {
    const double so_many = units(cells) * ratio;
    return in_units() ? 2 * so_many + 1 : so_many;
  }

  /// As many round the new form as are round the old one, by the rings that fit them.
  Result<NewSize> tube(FlatKeeps flat) const {
    const auto old_ring = fitting_size(before_.project, before_.band, {}, false);
    const auto ring = fitting_size(after_.project, after_.band, {}, false);
    if (!ring) return ring.problem();
    // A bezel's rounds are counted, not measured: they are drawn in by their number.
    const bool counted = flat == FlatKeeps::counts || before_.band.begin_at != 0;
    auto size = laid_flat(counted ? FlatKeeps::counts : FlatKeeps::size);
    if (!size) return size;
    const double ratio = old_ring ? 1.0 * before_.band.chart.columns() / old_ring->columns : 1;
    const auto columns = nearest_columns(technique_, ratio * ring->columns, size->edge);
    if (!columns) return impossible();
    size->columns = *columns;
    return size;
  }

  Result<NewSize> closed(const BandWish& wish) const {
    const int old_edge = before_.band.chart.edge();
    const form::Parity parity = parity_of(technique_, old_edge);
    const auto columns = wish.columns ? Result<int>(*wish.columns) : closed_columns(parity);
    if (!columns) return columns.problem();
    auto fitting = fitting_size(after_.project, after_.band, *columns, !wish.edge, parity);
    if (!fitting) return fitting.problem();
    return NewSize{*columns, edge_like_before(*fitting->fit), std::move(fitting->fit)};
  }

  Result<int> closed_columns(form::Parity parity) const {
    const int old_columns = before_.band.chart.columns(), old_edge = before_.band.chart.edge();
    const auto old = fitting_size(before_.project, before_.band, {}, false, parity);
    const auto fresh = fitting_size(after_.project, after_.band, {}, false, parity);
    if (!fresh) return fresh.problem();
    const int most = fresh->columns;
    const bool was_own_choice = old && makeable(old->columns, old_edge) == old_columns;
    if (was_own_choice) return makeable(most, old_edge);
    const double share = form_length(after_) / form_length(before_);
    const auto columns =
        nearest_columns(technique_, old_columns * (old_gauge_.column / new_gauge_.column) * share, old_edge);
    if (!columns) return impossible();
    return old && old_columns <= old->columns ? std::min(*columns, makeable(most, old_edge)) : *columns;
  }

  /// The most columns up to a number that the technique can make, else the fewest.
  [[nodiscard]] int makeable(int columns, int edge) const {
    for (int fewer = columns; fewer >= 1; --fewer)
      if (technique_.check_size(fewer, edge)) return fewer;
    return nearest_columns(technique_, columns, edge).value_or(columns);
  }

  /// 1 mm for a form without a length: then the width stays as it is.
  [[nodiscard]] static double form_length(const BandIn& in) {
    const auto& length = find_form(in.project, *in.band.form)->form.length_along_holes;
    return length ? length->mm() : 1;
  }

  /// The best candidate that sits as the old one does, else the best.
  [[nodiscard]] int edge_like_before(const form::Fit& fit) const {
    form::FitRequest request = fit_request(before_.project, before_.band);
    request.columns = before_.band.chart.columns();
    const auto old = form::fit(request);
    if (!old) return fit.edge;
    const auto was = std::ranges::find(old->candidates, before_.band.chart.edge(), &form::FitCandidate::edge);
    if (was == old->candidates.end() || !form::closes(was->verdict)) return fit.edge;
    const auto like = std::ranges::find(fit.candidates, was->verdict, &form::FitCandidate::verdict);
    return like == fit.candidates.end() || was->edge == old->edge ? fit.edge : like->edge;
  }

  const BandIn& before_;
  const BandIn& after_;
  weave::Technique technique_;
  weave::Lattice lattice_;
  bead::Gauge old_gauge_, new_gauge_;
};

}  // namespace

Result<NewSize> new_size(const BandIn& before, const BandIn& after, const BandWish& wish, FlatKeeps flat) {
  const auto technique = weave::find_technique(before.band.technique);
  if (!technique) return technique.problem();
  return Sizing(before, after, *technique).choose(wish, wish.flat.value_or(flat));
}

BandMeasure measure(const BandIn& in) {
  const auto technique = weave::find_technique(in.band.technique);
  const chart::Chart& chart = in.band.chart;
  BandMeasure measure{in.band.bead, {}, gauge_of(in.project, in.band), chart.columns(), chart.edge(), {}, {}};
  if (in.band.form) measure.form = form::to_notation(find_form(in.project, *in.band.form)->form);
  if (!technique) return measure;
  const weave::Box all = weave::extent(technique->lattice(chart.columns(), chart.edge()));
  measure.width = all.width * measure.gauge.column;
  // Once round, where the ends meet.
  measure.length =
      (weave::closes_round_edge(in.band.closure) ? 1.0 * chart.edge() : all.height) * measure.gauge.edge;
  return measure;
}

}  // namespace evencount::project
