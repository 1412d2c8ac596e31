#include <fmt/format.h>

#include <algorithm>
#include <numbers>

#include "fabric/layout.hpp"
#include "form/closure.hpp"
#include "form/faces.hpp"

namespace evencount::fabric {
namespace {

using weave::Axis;
using weave::Plan;

using std::numbers::pi;

/// Moves the piece up or down until its middle is at height 0.
void centre_heights(std::vector<SettledBead>& beads) {
  Extent heights;
  for (const SettledBead& bead : beads) heights.add(bead.shape.middle.z);
  for (SettledBead& bead : beads) bead.shape.middle.z -= heights.middle();
}

void roll_up(const Layout& layout, std::vector<SettledBead>& beads) {
  const Roll roll(layout);
  const double radius = roll.radius_mm(roll.easy_chord_mm());
  for (std::size_t i = 0; i < beads.size(); ++i)
    beads[i].shape =
        roll.placed(beads[i].shape, layout.flat(i), layout.site(i).axis, radius + layout.stands_out_mm(i));
}

Result<Done> lay_round_form(const Layout& layout, const form::Form& form, std::vector<SettledBead>& beads) {
  const auto section = form::section(form);
  if (!section) return section.problem();
  const int columns = layout.lattice().columns;
  const auto ring = form::close_ring(form::offset(*section, millimetres(layout.main_shape().radius_mm)),
                                     columns, form::seam_place(*section));
  if (!ring) return ring.problem();
  const double slope = layout.lattice().rise * layout.edge_mm() / 2 / columns;
  for (std::size_t i = 0; i < beads.size(); ++i) {
    const int column = beads[i].cell.column;
    const form::Placed& seat = ring->beads[static_cast<std::size_t>((columns - column) % columns)];
    const form::Point at = seat.at + layout.stands_out_mm(i) * seat.normal;
    beads[i].shape.middle = in_section(at, layout.flat(i).y + slope * column);
    const form::Point onwards = -1 * form::quarter_turn(seat.normal);
    const bool across = layout.site(i).axis == Axis::across;
    beads[i].shape.axis = across ? unit(in_section(ring->chord.mm() * onwards, slope)) : Vec3{0, 0, 1};
  }
  return Done{};
}

/// The round that a bead was strung in, from 1. Rounds worked together lie one half step above the other.
std::vector<int> rounds_of_beads(const Plan& plan, const Layout& layout) {
  std::vector<int> rounds;
  for (const weave::Row& row : plan.rows) {
    const std::size_t first = rounds.size();
    int lowest = 0;
    for (std::size_t s = row.first_stitch; s < row.end_stitch; ++s) {
      if (plan.stitches[s].act != weave::Act::pick_up) continue;
      const int along = layout.site(rounds.size()).middle.along;
      lowest = rounds.size() == first ? along : std::min(lowest, along);
      rounds.push_back(along);
    }
    for (std::size_t i = first; i < rounds.size(); ++i)
      rounds[i] = std::min(row.first_number + rounds[i] - lowest, row.last_number);
  }
  return rounds;
}

}  // namespace

Result<Fabric> settle_round(const Plan& plan, std::span<const bead::Size> sizes, const bead::Gauge& gauge,
                            const std::optional<form::Form>& form) {
  if (!plan.lattice.round) return wrong_closure(plan, "a piece that is worked round");
  const auto layout = Layout::make(plan, sizes, gauge);
  if (!layout) return layout.problem();
  if (plan.lattice.columns < 3)
    return Problem{ProblemCode::too_few_beads, "columns", fmt::format("{}", plan.lattice.columns),
                   "at least 3 round"};
  std::vector<SettledBead> beads = layout->beads();
  if (!form) {
    roll_up(*layout, beads);
  } else if (const auto laid = lay_round_form(*layout, *form, beads); !laid) {
    return laid.problem();
  }
  centre_heights(beads);
  return finished(plan, *layout, std::move(beads), true);
}

Result<Fabric> settle_rounds(const Plan& plan, std::span<const bead::Size> sizes, const bead::Gauge& gauge,
                             std::span<const form::BezelRound> rounds) {
  if (!plan.lattice.round) return wrong_closure(plan, "a piece that is worked round");
  const auto layout = Layout::make(plan, sizes, gauge);
  if (!layout) return layout.problem();
  const std::vector<int> round_of = rounds_of_beads(plan, *layout);
  std::vector<SettledBead> beads = layout->beads();
  for (std::size_t i = 0; i < beads.size(); ++i) {
    const auto round = static_cast<std::size_t>(round_of[i] - 1);
    if (round >= rounds.size())
      return Problem{ProblemCode::wrong_size, "rounds", fmt::format("round {}", round_of[i]),
                     fmt::format("{} rounds at most", rounds.size())};
    const double turned = 2.0 * pi * layout->site(i).middle.across / plan.lattice.turn();
    const form::Point normal = form::direction(-pi / 2 - turned);
    beads[i].shape.middle = in_section(rounds[round].radius.mm() * normal, rounds[round].height.mm());
    beads[i].shape.axis = in_section(-1 * form::quarter_turn(normal), 0);
  }
  return finished(plan, *layout, std::move(beads), true);
}

}  // namespace evencount::fabric
