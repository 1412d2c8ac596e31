#include <fmt/format.h>

#include <algorithm>

#include "fabric/layout.hpp"
#include "fabric/relax.hpp"

namespace evencount::fabric {
namespace {

using weave::Axis;
using weave::Plan;

/// Whether thread has to draw the piece in: smaller beads stand in its rounds, or fewer than there is room for.
bool draws_in(const Plan& plan, const Layout& layout) {
  if (!plan.lattice.round) return false;
  const Cylinder& main = layout.main_shape();
  std::vector<bool> worked(2 * static_cast<std::size_t>(plan.lattice.edge) + 1, false);
  for (std::size_t i = 0; i < layout.beads().size(); ++i) {
    const Cylinder& shape = layout.beads()[i].shape;
    if (shape.half_length_mm < main.half_length_mm || shape.radius_mm < main.radius_mm) return true;
    worked[static_cast<std::size_t>(layout.site(i).middle.along)] = true;
  }
  return std::any_of(plan.empty_cells.begin(), plan.empty_cells.end(), [&](Cell cell) {
    return worked[static_cast<std::size_t>(plan.lattice.site(cell).middle.along)];
  });
}

/// The exact layout that the plan asks for.
Result<Fabric> lay(const Plan& plan, std::span<const bead::Size> sizes, const bead::Gauge& gauge,
                   const std::optional<form::Form>& form) {
  if (plan.lattice.round) return settle_round(plan, sizes, gauge, form);
  return weave::closes_round_edge(plan.closure) ? settle_closed(plan, sizes, gauge, form) : settle_flat(plan, sizes, gauge);
}

}  // namespace

Result<Fabric> settle_flat(const Plan& plan, std::span<const bead::Size> sizes, const bead::Gauge& gauge) {
  const auto layout = Layout::make(plan, sizes, gauge);
  if (!layout) return layout.problem();
  std::vector<SettledBead> beads = layout->beads();
  for (std::size_t i = 0; i < beads.size(); ++i) {
    const FlatPoint at = layout->flat(i);
    beads[i].shape.middle = {at.x, -at.y, 0};
    beads[i].shape.axis = layout->site(i).axis == Axis::across ? Vec3{1, 0, 0} : Vec3{0, -1, 0};
  }
  return finished(plan, *layout, std::move(beads), false);
}

Result<Fabric> settle(const Plan& plan, std::span<const bead::Size> sizes, const bead::Gauge& gauge,
                      const Around& around) {
  const auto layout = Layout::make(plan, sizes, gauge);
  if (!layout) return layout.problem();
  if (layout->beads().size() > most_settled_beads)
    return Problem{ProblemCode::out_of_range, "beads", fmt::format("{} beads", layout->beads().size()),
                   fmt::format("at most {} to be settled", most_settled_beads)};
  if (const auto* stone = std::get_if<SetStone>(&around)) {
    const auto in_the_way = obstacle_of(stone->stone);
    if (!in_the_way) return in_the_way.problem();
    const auto start = settle_rounds(plan, sizes, gauge, stone->rounds);
    return start ? relax(*start, {.draw_tight = true, .obstacle = *in_the_way}) : start;
  }
  const auto* form = std::get_if<form::Form>(&around);
  const bool tight = draws_in(plan, *layout);
  const auto start = lay(plan, sizes, gauge, form != nullptr ? std::optional(*form) : std::nullopt);
  if (!start || (form != nullptr && !tight)) return start;
  RelaxOptions options{.draw_tight = tight};
  if (form != nullptr) {
    const auto in_the_way = obstacle_of(*form);
    if (!in_the_way) return in_the_way.problem();
    options.obstacle = *in_the_way;
  }
  return relax(*start, options);
}

}  // namespace evencount::fabric
