#include "weave/thread_path.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

#include "base/text.hpp"

namespace evencount::weave {
namespace {

struct Mouth {
  double x_mm = 0, y_mm = 0;
  Axis axis = Axis::across;  ///< of its hole
};

/// Adds up a thread's way through the flat piece, stitch by stitch.
class PathMeter {
 public:
  PathMeter(const Plan& plan, const bead::Size& size, const bead::Gauge& gauge, const bead::Thread& thread)
      : lattice_(plan.lattice),
        on_warps_(plan.on_warps),
        half_bead_mm_(size.length.mm() / 2),
        radius_mm_(size.diameter.mm() / 2),
        lean_mm_(std::max(0.0, (size.hole - thread.diameter).mm() / 2)),
        column_mm_(gauge.column.mm()),
        edge_mm_(gauge.edge.mm()) {}

  double add(const Stitch& stitch) {
    if (stitch.act == Act::turn) return add_turn(stitch);
    if (stitch.act == Act::under) return add_under(stitch);
    if (!goes_through(stitch.act)) return 0;
    double added = 2 * half_bead_mm_;
    if (exit_ && !same_bead_)
      added += gap_mm(*exit_, mouth(stitch.cell, opposite(stitch.travel)), stitch.act == Act::join);
    same_bead_ = false;
    turned_.reset();
    exit_ = mouth(stitch.cell, stitch.travel);
    return added;
  }

 private:
  /// Round a thread the needle comes back into the bead it left.
  double add_turn(const Stitch& stitch) {
    turned_ = stitch.turn;
    same_bead_ = stitch.turn == Turn::loop || stitch.turn == Turn::warp;
    if (stitch.turn == Turn::loop) return 2 * edge_mm_;
    if (stitch.turn == Turn::warp) return column_mm_ - 2 * half_bead_mm_;
    return 0;
  }

  double add_under(const Stitch& stitch) {
    const Mouth beside = mouth(stitch.cell, stitch.travel);
    const Mouth thread{beside.x_mm, beside.y_mm + edge_mm_ / 2};
    same_bead_ = true;
    return exit_ ? 2 * std::hypot(thread.x_mm - exit_->x_mm, thread.y_mm - exit_->y_mm) : 0;
  }

  /// Where the thread leaves a bead in this direction.
  [[nodiscard]] Mouth mouth(Cell cell, Travel travel) const {
    const Spot middle = lattice_.site(cell).middle;
    Mouth mouth{middle.across * column_mm_ / 2, middle.along * edge_mm_ / 2, axis_of(travel)};
    const bool up = travel == Travel::right || travel == Travel::forth;
    (mouth.axis == Axis::across ? mouth.x_mm : mouth.y_mm) += up ? half_bead_mm_ : -half_bead_mm_;
    return mouth;
  }

  /// From mouth to mouth, taut: aside from each hole's direction the thread saves what it can lean in it.
  [[nodiscard]] double gap_mm(Mouth from, Mouth to, bool joined) const {
    double x = to.x_mm - from.x_mm, y = to.y_mm - from.y_mm;
    if (lattice_.round) {
      const double turns = std::round(x / (lattice_.columns * column_mm_));
      x -= turns * lattice_.columns * column_mm_;
      y += turns * lattice_.rise * edge_mm_ / 2;
    }
    if (joined) y -= std::round(y / (lattice_.edge * edge_mm_)) * lattice_.edge * edge_mm_;
    x = std::abs(x), y = std::abs(y);
    if (turned_ == Turn::outside) return to.axis == Axis::across ? outside_mm(x, y) : outside_mm(y, x);
    if (turned_ == Turn::edge && on_warps_) x += column_mm_ - 2 * half_bead_mm_;
    for (const Axis axis : {from.axis, to.axis}) {
      double& aside = axis == Axis::across ? y : x;
      aside = std::max(0.0, aside - lean_mm_);
    }
    return std::hypot(x, y);
  }

  /// From the mouth out to the bead's outer face, along it, and from its other end into the next mouth.
  [[nodiscard]] double outside_mm(double onward_mm, double aside_mm) const {
    const double out_mm = std::max(0.0, radius_mm_ - lean_mm_);
    const double in_mm = std::max(0.0, std::abs(aside_mm - radius_mm_) - lean_mm_);
    return out_mm + 2 * half_bead_mm_ + std::hypot(onward_mm - 2 * half_bead_mm_, in_mm);
  }

  Lattice lattice_;
  bool on_warps_;
  double half_bead_mm_, radius_mm_, lean_mm_, column_mm_, edge_mm_;
  std::optional<Mouth> exit_;
  std::optional<Turn> turned_;
  bool same_bead_ = false;
};

/// Cuts the rows into lengths no longer than the habit allows, each new one beginning with a row.
Result<Done> cut_into_lengths(const Plan& plan, const std::vector<double>& row_mm, const ThreadHabits& habits,
                              ThreadUse& use) {
  const double room_mm = (habits.working_length - 2 * habits.tail).mm();
  double length_mm = 0;
  for (std::size_t r = 0; r < row_mm.size(); ++r) {
    if (row_mm[r] > room_mm)
      return Problem{ProblemCode::out_of_range, "working length",
                     plain_number(habits.working_length.mm()) + " mm",
                     fmt::format("at least {} mm: {} takes that much with its tails",
                                 std::ceil(row_mm[r] + 2 * habits.tail.mm()), row_name(plan.rows[r]))};
    if (length_mm > 0 && length_mm + row_mm[r] > room_mm) {
      use.lengths.push_back(millimetres(length_mm) + 2 * habits.tail);
      use.new_thread_rows.push_back(plan.rows[r].first_number);
      length_mm = 0;
    }
    length_mm += row_mm[r];
  }
  use.lengths.push_back(millimetres(length_mm) + 2 * habits.tail);
  return Done{};
}

/// How often each row is gone through: twice for the first and last rows with beads, as many as the habit says.
std::vector<int> times_through(const Plan& plan, const ThreadHabits& habits) {
  const auto reinforced = static_cast<std::size_t>(habits.reinforced_rows);
  const auto with_beads = static_cast<std::size_t>(
      std::count_if(plan.rows.begin(), plan.rows.end(), [](const Row& row) { return has_beads(row.kind); }));
  std::vector<int> times(plan.rows.size(), 1);
  for (std::size_t row = 0; row < with_beads; ++row)
    if (row < reinforced || row + reinforced >= with_beads) times[row] = 2;
  return times;
}

}  // namespace

Result<ThreadUse> thread_use(const Plan& plan, const bead::Size& size, const bead::Gauge& gauge,
                             const bead::Thread& thread, const ThreadHabits& habits) {
  if (habits.tail.mm() < 0 || !(habits.working_length >= 4 * habits.tail) ||
      !(habits.working_length.mm() > 0))
    return Problem{ProblemCode::out_of_range, "working length",
                   plain_number(habits.working_length.mm()) + " mm",
                   "a tail of 0 mm or more and a working length of at least four tails"};
  if (habits.reinforced_rows < 0)
    return Problem{ProblemCode::out_of_range, "reinforced rows", fmt::format("{}", habits.reinforced_rows), "0 or more"};
  ThreadUse use;
  use.passes.assign(static_cast<std::size_t>(plan.lattice.columns) * plan.lattice.edge, 0);
  use.capacity = bead::passes_that_fit(size.hole, thread.diameter, bead::needle_for(size.hole).diameter);
  PathMeter meter(plan, size, gauge, thread);
  const std::vector<int> times = times_through(plan, habits);
  std::vector<double> row_mm(plan.rows.size(), 0);
  std::size_t row = 0;
  for (std::size_t i = 0; i < plan.stitches.size(); ++i) {
    const Stitch& stitch = plan.stitches[i];
    while (row + 1 < plan.rows.size() && i >= plan.rows[row].end_stitch) ++row;
    row_mm[row] += times[row] * meter.add(stitch);
    if (goes_through(stitch.act))
      use.passes[static_cast<std::size_t>(stitch.cell.step) * plan.lattice.columns + stitch.cell.column] += times[row];
  }
  use.most_passes = *std::max_element(use.passes.begin(), use.passes.end());
  use.path = millimetres(std::accumulate(row_mm.begin(), row_mm.end(), 0.0));
  if (auto cut = cut_into_lengths(plan, row_mm, habits, use); !cut) return cut.problem();
  use.left = habits.working_length - use.lengths.back();
  if (plan.on_warps) {
    use.warps = plan.lattice.columns + 3;
    use.warp_length = plan.lattice.edge * gauge.edge + 2 * warp_allowance;
  }
  use.cut = use.path + 2.0 * static_cast<double>(use.lengths.size()) * habits.tail + use.warps * use.warp_length;
  return use;
}

}  // namespace evencount::weave
