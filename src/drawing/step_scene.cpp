#include "drawing/step_scene.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <set>

namespace evencount::drawing {
namespace {

using weave::Act;
using weave::Travel;
using weave::Turn;

/// Follows a thread and knows where it lies along the edges of beads, for loops: as replay does, but trusting the plan.
class Follower {
 public:
  explicit Follower(const weave::Plan& plan)
      : plan_(plan), threads_(static_cast<std::size_t>(plan.lattice.columns) * plan.lattice.edge) {}

  /// The steps before stitch `end` that lead from or to a bead of `shown`, and all from stitch `all_from` on.
  std::vector<Step> steps(const std::set<weave::Cell>& shown, std::size_t all_from, std::size_t end) {
    std::vector<Step> found;
    std::optional<std::size_t> last;
    Between between;
    for (std::size_t i = 0; i < end; ++i) {
      const weave::Stitch& stitch = plan_.stitches[i];
      if (stitch.act == Act::under) between.caught = EdgeThread{stitch.cell, stitch.travel};
      if (stitch.act == Act::turn && last) {
        between.turn = stitch.turn;
        if (stitch.turn == Turn::loop)
          between.caught = below(plan_.stitches[*last].cell, weave::opposite(stitch.travel));
      }
      if (!weave::goes_through(stitch.act)) continue;
      if (last) {
        lay(plan_.stitches[*last].cell, stitch, between);
        const bool wanted =
            *last >= all_from || shown.contains(stitch.cell) || shown.contains(plan_.stitches[*last].cell);
        if (wanted) found.push_back({*last, i, between});
      }
      last = i;
      between = {};
    }
    return found;
  }

 private:
  [[nodiscard]] static std::size_t side(Travel out) {
    return out == Travel::right || out == Travel::forth ? 1 : 0;
  }
  [[nodiscard]] std::size_t index(weave::Cell cell) const {
    return static_cast<std::size_t>(cell.step) * plan_.lattice.columns + cell.column;
  }

  void lay(weave::Cell from, const weave::Stitch& to, Between& between) {
    const Travel out = weave::opposite(to.travel);
    const bool turned = between.turn == Turn::edge || between.turn == Turn::inside;
    if (turned && from.column == to.cell.column && std::abs(from.step - to.cell.step) == 1)
      between.laid = EdgeThread{from.step < to.cell.step ? from : to.cell, out};
    if (between.turn == Turn::loop && to.cell.step > 0)
      between.laid = EdgeThread{{to.cell.column, to.cell.step - 1}, out};
    if (between.laid) threads_[index(between.laid->cell)][side(out)] = true;
  }

  /// The thread nearest to the bead's mouth.
  [[nodiscard]] EdgeThread below(weave::Cell cell, Travel out) const {
    for (const int down : {1, 2}) {
      const weave::Cell low{cell.column, cell.step - down};
      if (low.step >= 0 && threads_[index(low)][side(out)]) return {low, out};
    }
    return {{cell.column, std::max(0, cell.step - 1)}, out};
  }

  const weave::Plan& plan_;
  std::vector<std::array<bool, 2>> threads_;
};

std::vector<ShownBead> shown_beads(const weave::Plan& plan, const weave::Moment& moment) {
  const weave::Lattice& lattice = plan.lattice;
  const std::size_t never = plan.stitches.size();
  std::vector<std::size_t> strung_at(static_cast<std::size_t>(lattice.columns) * lattice.edge, never);
  for (std::size_t i = 0; i < moment.end_stitch; ++i)
    if (const weave::Stitch& stitch = plan.stitches[i]; stitch.act == weave::Act::pick_up)
      strung_at[static_cast<std::size_t>(stitch.cell.step) * lattice.columns + stitch.cell.column] = i;

  const weave::Window& window = moment.window;
  const int unit = lattice.holes == weave::Holes::round_squares ? 2 : 1;
  // Round a narrow tube the same bead would come again.
  const int aside = lattice.round && window.end_column - window.first_column + 2 > lattice.columns ? 0 : unit;
  std::vector<ShownBead> beads;
  // At a seam there is enough to see.
  const int beyond = moment.at_seam ? 0 : unit;
  for (int step = window.first_step - beyond; step < window.end_step + beyond; ++step) {
    const bool again = moment.at_seam && (step < lattice.edge / 2 || step >= lattice.edge + lattice.edge / 2);
    for (int column = window.first_column - aside; column < window.end_column + aside && !again; ++column) {
      const weave::Cell unrolled{column, step};
      const auto cell = weave::shown_cell(lattice, unrolled, moment.at_seam);
      if (!cell) continue;
      const std::size_t at = strung_at[static_cast<std::size_t>(cell->step) * lattice.columns + cell->column];
      if (at == never) continue;
      beads.push_back({.cell = *cell,
                       .middle = weave::middle_of(lattice, unrolled),
                       .bead = plan.stitches[at].bead,
                       .strung_at = at,
                       .beyond = !window.holds(unrolled)});
    }
  }
  return beads;
}

/// The lead-in first, where there is one.
std::vector<Pass> passes_of(const weave::Plan& plan, const weave::Moment& moment, std::size_t lead) {
  std::vector<Pass> passes;
  for (const weave::Visit& visit : weave::visits(plan, lead, moment.end_stitch, moment.at_seam))
    passes.push_back(
        {.cell = visit.cell,
         .middle = visit.middle,
         .travel = visit.travel,
         .stitch = visit.stitch,
         .strung = plan.stitches[visit.stitch].act == Act::pick_up && visit.stitch >= moment.new_from});
  return passes;
}

}  // namespace

StepScene step_scene(const weave::Plan& plan, const weave::Moment& moment) {
  const std::size_t lead = weave::lead_in(plan, moment);
  StepScene scene{.beads = shown_beads(plan, moment), .has_lead = lead < moment.first_stitch};
  std::set<weave::Cell> shown;
  for (const ShownBead& bead : scene.beads)
    if (!bead.beyond) shown.insert(bead.cell);
  scene.steps = Follower(plan).steps(shown, lead, moment.end_stitch);
  scene.passes = passes_of(plan, moment, lead);
  return scene;
}

}  // namespace evencount::drawing
