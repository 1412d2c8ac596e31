#include <fmt/format.h>

#include <algorithm>
#include <numbers>

#include "fabric/layout.hpp"
#include "form/faces.hpp"
#include "form/fit.hpp"

namespace evencount::fabric {
namespace {

using weave::Axis;
using weave::Plan;

using std::numbers::pi;

/// A place on the way round a form or a circle, in its section plane.
struct Seat {
  form::Point at;
  form::Point normal;
};

std::vector<Seat> circle_seats(double radius_mm, int count) {
  std::vector<Seat> seats;
  for (int k = 0; k < count; ++k) {
    const form::Point normal = form::direction(-pi / 2 + 2 * pi * k / count);
    seats.push_back({radius_mm * normal, normal});
  }
  return seats;
}

/// The half steps of a closed band: even ones and odd ones are a ring each.
Result<std::vector<Seat>> seats_of_half_steps(const Layout& layout, const std::optional<form::Form>& form) {
  const int edge = layout.lattice().edge;
  std::vector<Seat> seats;
  if (form) {
    const auto faces = form::faces(*form, millimetres(2 * layout.main_shape().radius_mm), edge);
    if (!faces) return faces.problem();
    for (const form::Seat& seat : faces->seats) seats.push_back({seat.centre, seat.normal});
    return seats;
  }
  if (edge < form::fewest_beads_round)
    return Problem{ProblemCode::too_few_beads, "beads along the edge", fmt::format("{}", edge),
                   fmt::format("at least {}", form::fewest_beads_round)};
  return circle_seats(layout.edge_mm() / (2 * std::sin(pi / edge)), 2 * edge);
}

}  // namespace

Result<Fabric> settle_closed(const Plan& plan, std::span<const bead::Size> sizes, const bead::Gauge& gauge,
                             const std::optional<form::Form>& form) {
  if (plan.lattice.round || !weave::closes_round_edge(plan.closure)) return wrong_closure(plan, "a band that is zipped or sewn");
  const auto layout = Layout::make(plan, sizes, gauge);
  if (!layout) return layout.problem();
  const auto seats = seats_of_half_steps(*layout, form);
  if (!seats) return seats.problem();
  std::vector<SettledBead> beads = layout->beads();
  Extent across;
  for (std::size_t i = 0; i < beads.size(); ++i) across.add(layout->flat(i).x);
  for (std::size_t i = 0; i < beads.size(); ++i) {
    const auto half_step = static_cast<std::size_t>(layout->site(i).middle.along) % seats->size();
    const Seat& seat = (*seats)[half_step];
    const form::Point at = seat.at + layout->stands_out_mm(i) * seat.normal;
    beads[i].shape.middle = in_section(at, layout->flat(i).x - across.middle());
    beads[i].shape.axis =
        layout->site(i).axis == Axis::across ? Vec3{0, 0, 1} : in_section(form::quarter_turn(seat.normal), 0);
  }
  return finished(plan, *layout, std::move(beads), true);
}

}  // namespace evencount::fabric
