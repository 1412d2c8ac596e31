#include "fabric/layout.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"
#include "fabric/relax.hpp"

namespace evencount::fabric {
namespace {

using weave::Act;
using weave::Stitch;

bool is_length(Length length) {
  return std::isfinite(length.mm()) && length > Length{};
}

Result<Done> check_sizes(std::span<const bead::Size> sizes, const bead::Gauge& gauge) {
  if (!is_length(gauge.column) || !is_length(gauge.edge))
    return Problem{ProblemCode::out_of_range, "gauge", bead::to_notation(gauge),
                   "above 0 for a column and a bead along the edge"};
  for (const bead::Size& size : sizes)
    if (!is_length(size.diameter) || !is_length(size.length))
      return Problem{ProblemCode::out_of_range, size.id,
                     plain_number(size.diameter.mm(), 3) + " x " + plain_number(size.length.mm(), 3) + " mm",
                     "a diameter and a length above 0"};
  return Done{};
}

Cylinder shape_of(const bead::Size& size) {
  return {{}, {1, 0, 0}, size.length.mm() / 2, size.diameter.mm() / 2, bead::rim(size).mm()};
}

Problem no_bead_there(Cell cell) {
  return {ProblemCode::bad_plan, "plan",
          fmt::format("the needle at column {}, step {}, where no bead is", cell.column, cell.step),
          "a plan that replay follows"};
}

/// How far a bead is from filling a pitch each way; from filling a unit of right-angle weave with its length and another's diameter.
double off_gauge_mm(const Cylinder& shape, weave::Holes holes, const bead::Gauge& gauge) {
  const double length = 2 * shape.half_length_mm, diameter = 2 * shape.radius_mm;
  const double column = gauge.column.mm(), edge = gauge.edge.mm();
  switch (holes) {
    case weave::Holes::across:
      return std::abs(column - length) + std::abs(edge - diameter);
    case weave::Holes::along:
      return std::abs(column - diameter) + std::abs(edge - length);
    case weave::Holes::round_squares:
      return std::abs(column - length - diameter) + std::abs(edge - length - diameter);
  }
  return 0;
}

bool contains(const weave::Lattice& lattice, Cell cell) {
  return cell.column >= 0 && cell.column < lattice.columns && cell.step >= 0 && cell.step < lattice.edge;
}

std::size_t index_of(const weave::Lattice& lattice, Cell cell) {
  return static_cast<std::size_t>(cell.step) * lattice.columns + cell.column;
}

}  // namespace

Result<Layout> Layout::make(const weave::Plan& plan, std::span<const bead::Size> sizes,
                            const bead::Gauge& gauge) {
  if (const auto checked = check_sizes(sizes, gauge); !checked) return checked.problem();
  Layout layout;
  layout.lattice_ = plan.lattice;
  layout.column_mm_ = gauge.column.mm();
  layout.edge_mm_ = gauge.edge.mm();
  const auto columns = static_cast<std::size_t>(std::max(0, plan.lattice.columns));
  layout.by_cell_.assign(columns * static_cast<std::size_t>(std::max(0, plan.lattice.edge)), 0);
  for (const Stitch& stitch : plan.stitches) {
    const bool strung = stitch.act == Act::pick_up;
    if (!strung && stitch.act != Act::pass && stitch.act != Act::join && stitch.act != Act::under) continue;
    if (!contains(plan.lattice, stitch.cell) || layout.bead_at(stitch.cell).has_value() == strung)
      return no_bead_there(stitch.cell);
    if (!strung) continue;
    if (stitch.bead >= sizes.size())
      return Problem{ProblemCode::out_of_range, "bead", fmt::format("{}", stitch.bead),
                     fmt::format("one of the {} that have sizes", sizes.size())};
    layout.beads_.push_back({stitch.cell, stitch.bead, shape_of(sizes[stitch.bead])});
    layout.by_cell_[index_of(plan.lattice, stitch.cell)] = layout.beads_.size();
  }
  if (layout.beads_.empty()) return Problem{ProblemCode::bad_plan, "plan", "no beads", "at least one"};
  const auto& beads = layout.beads_;
  const auto nearer = [&](const SettledBead& a, const SettledBead& b) {
    return off_gauge_mm(a.shape, plan.lattice.holes, gauge) <
           off_gauge_mm(b.shape, plan.lattice.holes, gauge);
  };
  layout.main_ =
      static_cast<std::size_t>(std::min_element(beads.begin(), beads.end(), nearer) - beads.begin());
  layout.several_sizes_ = std::any_of(beads.begin(), beads.end(),
                                      [&](const SettledBead& b) { return b.shape != beads.front().shape; });
  return layout;
}

std::optional<std::size_t> Layout::bead_at(Cell cell) const {
  if (!contains(lattice_, cell)) return std::nullopt;
  const std::size_t found = by_cell_[index_of(lattice_, cell)];
  return found > 0 ? std::optional(found - 1) : std::nullopt;
}

Problem wrong_closure(const weave::Plan& plan, std::string expected) {
  return {ProblemCode::wrong_size, "closure",
          plan.lattice.round ? "a round piece" : std::string(weave::closure_name(plan.closure)),
          std::move(expected)};
}

Fabric finished(const weave::Plan& plan, const Layout& layout, std::vector<SettledBead> beads, bool closed) {
  Fabric fabric{std::move(beads), thread_links(plan, layout), closed, {}};
  fabric.residual = residual_of(fabric);
  return fabric;
}

}  // namespace evencount::fabric
