#include "project/carry_resample.hpp"

#include <algorithm>
#include <map>
#include <tuple>

#include "chart/edit.hpp"
#include "project/carry_trails.hpp"

namespace evencount::project {
namespace {

using chart::Bead;
using chart::Cell;
using chart::Chart;

std::size_t index_in(int columns, Cell cell) {
  return static_cast<std::size_t>(cell.step) * static_cast<std::size_t>(columns) +
         static_cast<std::size_t>(cell.column);
}

/// A ring is pinned at the middle of its first bead, where the seam's axis goes through a form; a drawing that half a turn maps
/// onto itself, and no mirror, half a bead further on, where that turn has its middle.
int pin_for(const Chart& chart, const Frame& frame) {
  constexpr int first_bead = 2, half_turn = 3;  // quarter steps
  if (!frame.edge_round || frame.in_squares()) return first_bead;
  const chart::Grid grid{frame.lattice.drop, true, frame.lattice.round};
  const auto is_own = [&](chart::Symmetry symmetry) {
    const auto turned = chart::apply(chart, grid, symmetry);
    return turned && turned->changes.empty();
  };
  // With columns that turn onto columns of the same shift the turn has the same middle as the mirror.
  const bool other_middle = frame.lattice.along_halves({frame.lattice.columns - 1, 0}) == 1;
  return other_middle && is_own(chart::Symmetry::half_turn) && !is_own(chart::Symmetry::mirror_along)
             ? half_turn
             : first_bead;
}

/// How much speaks for each colour.
class Tally {
 public:
  explicit Tally(const std::map<Bead, int>& counts) : counts_(counts) {}
  void clear() { areas_.clear(); }
  [[nodiscard]] bool empty() const { return areas_.empty(); }
  void add(Bead bead, std::int64_t area) {
    for (auto& [known, sum] : areas_)
      if (known == bead) {
        sum += area;
        return;
      }
    areas_.emplace_back(bead, area);
  }
  /// The largest area, then the rarer colour, then the earlier letter.
  [[nodiscard]] Bead best() const {
    return std::min_element(areas_.begin(), areas_.end(),
                            [this](const auto& one, const auto& other) {
                              return std::tuple(-one.second, counts_.at(one.first), one.first) <
                                     std::tuple(-other.second, counts_.at(other.first), other.first);
                            })
        ->first;
  }

 private:
  const std::map<Bead, int>& counts_;
  std::vector<std::pair<Bead, std::int64_t>> areas_;
};

/// How well a new bead suits an old one that lays claim to it.
struct Suits {
  std::int64_t across = -1, along = -1;
  Overlaps::Distance distance;
  [[nodiscard]] bool better_than(const Suits& other) const {
    return std::tuple(across, along, other.distance) > std::tuple(other.across, other.along, distance);
  }
  bool operator==(const Suits&) const = default;
};

class Resampling {
 public:
  Resampling(const Chart& chart, const Frame& from, const Frame& to, bool keep_lines, Chart drawn)
      : chart_(chart), from_(from), to_(to), overlaps_(from, to, pin_for(chart, from)), shaped_(is_shaped()) {
    drawn_.chart = std::move(drawn);
    for (const Bead bead : chart.cells()) ++counts_[bead];
    if (keep_lines) trails_ = find_trails(chart, from, from.lattice.round);
  }

  Drawn draw() {
    drawn_.source.resize(drawn_.chart.cells().size());
    drawn_.by_line.assign(drawn_.chart.cells().size(), 0);
    kept_.assign(trails_.trails.size(), 0);
    if (!trails_.trails.empty()) find_claims();
    for_each([this](Cell cell) { decide(cell); });
    for (std::size_t i = 0; i < trails_.trails.size(); ++i)
      if (const Trail& trail = trails_.trails[i]; !kept_[i] && trail.rank != TrailRank::ground_speck)
        drawn_.lost.push_back({trail.bead, trail.first, trail.beads});
    return std::move(drawn_);
  }

 private:
  template <typename Use>
  void for_each(Use use) {
    for (int step = 0; step < to_.lattice.edge; ++step)
      for (int column = 0; column < to_.lattice.columns; ++column)
        if (const Cell cell{column, step}; to_.holds(cell)) {
          overlaps_.of(cell, found_);
          use(cell);
        }
  }

  /// Whether cells of the piece are left empty for its outline.
  [[nodiscard]] bool is_shaped() const {
    for (int step = 0; step < chart_.edge(); ++step)
      for (int column = 0; column < chart_.columns(); ++column)
        if (const Cell cell{column, step}; from_.holds(cell) && chart_.at(cell) == chart::no_bead)
          return true;
    return false;
  }

  [[nodiscard]] int trail_of(Cell old) const {
    return trails_.of_cell.empty() ? -1 : trails_.of_cell[index_in(from_.lattice.columns, old)];
  }

  void find_claims() {
    claims_.resize(chart_.cells().size());
    for_each([this](Cell cell) {
      for (const Overlap& overlap : found_) {
        if (trail_of(overlap.old) < 0) continue;
        Suits& best = claims_[index_in(from_.lattice.columns, overlap.old)];
        const Suits suits{overlap.across, overlap.along, overlaps_.from_middle(cell)};
        if (suits.better_than(best)) best = suits;
      }
    });
  }

  /// The claims of the highest rank on a cell.
  void tally_claims(Cell cell, Tally& tally) const {
    TrailRank highest = TrailRank::none;
    for (const Overlap& overlap : found_) {
      const int trail = trail_of(overlap.old);
      if (trail < 0) continue;
      const Suits suits{overlap.across, overlap.along, overlaps_.from_middle(cell)};
      if (suits != claims_[index_in(from_.lattice.columns, overlap.old)]) continue;
      const Trail& by = trails_.trails[static_cast<std::size_t>(trail)];
      if (by.rank < highest) continue;
      if (by.rank > highest) tally.clear();
      highest = by.rank;
      tally.add(by.bead, overlap.area);
    }
  }

  void decide(Cell cell) {
    const std::size_t at = index_in(to_.lattice.columns, cell);
    const Overlap* most = nullptr;
    Tally covered(counts_), claimed(counts_);
    for (const Overlap& overlap : found_) {
      const Bead bead = chart_.at(overlap.old);
      if (bead == chart::no_bead && !shaped_) continue;
      if (most == nullptr || overlap.area > most->area) most = &overlap;
      covered.add(bead, overlap.area);
    }
    if (most == nullptr) return;
    tally_claims(cell, claimed);
    const Bead by_area = covered.best();
    const Bead bead = claimed.empty() ? by_area : claimed.best();
    drawn_.by_line[at] = bead != by_area;
    drawn_.chart.set(cell, bead);
    // Of several that cover as much, one of the colour it has.
    for (const Overlap& overlap : found_)
      if (overlap.area == most->area && chart_.at(overlap.old) == bead) most = &overlap;
    drawn_.source[at] = most->old;
    for (const Overlap& overlap : found_)
      if (const int trail = trail_of(overlap.old); trail >= 0 && chart_.at(overlap.old) == bead)
        kept_[static_cast<std::size_t>(trail)] = 1;
  }

  const Chart& chart_;
  const Frame& from_;
  const Frame& to_;
  Overlaps overlaps_;
  bool shaped_;
  Drawn drawn_;
  std::map<Bead, int> counts_;
  Trails trails_;
  std::vector<Suits> claims_;  // by old cell
  std::vector<char> kept_;     // by trail
  std::vector<Overlap> found_;
};

}  // namespace

Result<Drawn> resample(const Chart& chart, const Frame& from, const Frame& to, bool keep_lines) {
  auto drawn = Chart::make(to.lattice.columns, to.lattice.edge, chart::no_bead);
  if (!drawn) return drawn.problem();
  return Resampling(chart, from, to, keep_lines, std::move(*drawn)).draw();
}

}  // namespace evencount::project
