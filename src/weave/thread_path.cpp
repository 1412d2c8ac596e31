#include "weave/thread_path.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "base/text.hpp"

namespace evencount::weave {
namespace {

struct Mouth {
  double x_mm, y_mm;
};

/// Adds up a thread's way through the flat band, stitch by stitch.
class PathMeter {
 public:
  PathMeter(const Lattice& lattice, const bead::Size& size, const bead::Gauge& gauge,
            const bead::Thread& thread)
      : lattice_(lattice),
        half_bead_mm_(size.length.mm() / 2),
        lean_mm_(std::max(0.0, (size.hole - thread.diameter).mm() / 2)),
        column_mm_(gauge.column.mm()),
        edge_mm_(gauge.edge.mm()) {}

  double add(const Stitch& stitch) {
    if (stitch.act == Act::turn && stitch.turn == Turn::loop) {
      last_is_loop_ = true;
      return 2 * edge_mm_;
    }
    if (stitch.act != Act::pick_up && stitch.act != Act::pass && stitch.act != Act::join) return 0;
    const double forward = stitch.travel == Travel::right ? 1 : -1;
    const double x = stitch.cell.column * column_mm_;
    const double y = lattice_.along_halves(stitch.cell) * edge_mm_ / 2;
    const Mouth entry{x - forward * half_bead_mm_, y};
    double added = 2 * half_bead_mm_;
    if (exit_ && !last_is_loop_)
      added +=
          std::hypot(entry.x_mm - exit_->x_mm, gap_along(entry.y_mm - exit_->y_mm, stitch.act == Act::join));
    last_is_loop_ = false;
    exit_ = Mouth{x + forward * half_bead_mm_, y};
    return added;
  }

 private:
  [[nodiscard]] double gap_along(double gap_mm, bool round) const {
    double apart_mm = std::abs(gap_mm);
    if (round) apart_mm = std::min(apart_mm, lattice_.edge * edge_mm_ - apart_mm);
    return std::max(0.0, apart_mm - 2 * lean_mm_);
  }

  Lattice lattice_;
  double half_bead_mm_, lean_mm_, column_mm_, edge_mm_;
  std::optional<Mouth> exit_;
  bool last_is_loop_ = false;
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

}  // namespace

Result<ThreadUse> thread_use(const Plan& plan, const bead::Size& size, const bead::Gauge& gauge,
                             const bead::Thread& thread, const ThreadHabits& habits) {
  if (habits.tail.mm() < 0 || !(habits.working_length >= 4 * habits.tail) ||
      !(habits.working_length.mm() > 0))
    return Problem{ProblemCode::out_of_range, "working length",
                   plain_number(habits.working_length.mm()) + " mm",
                   "a tail of 0 mm or more and a working length of at least four tails"};
  ThreadUse use;
  use.passes.assign(static_cast<std::size_t>(plan.lattice.columns) * plan.lattice.edge, 0);
  use.capacity = bead::passes_that_fit(size.hole, thread.diameter, bead::needle_for(size.hole).diameter);
  PathMeter meter(plan.lattice, size, gauge, thread);
  std::vector<double> row_mm(plan.rows.size(), 0);
  double path_mm = 0;
  std::size_t row = 0;
  for (std::size_t i = 0; i < plan.stitches.size(); ++i) {
    const Stitch& stitch = plan.stitches[i];
    while (row + 1 < plan.rows.size() && i >= plan.rows[row].end_stitch) ++row;
    const double added_mm = meter.add(stitch);
    path_mm += added_mm;
    row_mm[row] += added_mm;
    if (stitch.act == Act::pick_up || stitch.act == Act::pass || stitch.act == Act::join)
      use.most_passes = std::max(
          use.most_passes, ++use.passes[static_cast<std::size_t>(stitch.cell.step) * plan.lattice.columns +
                                        stitch.cell.column]);
  }
  use.path = millimetres(path_mm);
  if (auto cut = cut_into_lengths(plan, row_mm, habits, use); !cut) return cut.problem();
  use.cut = use.path + 2.0 * static_cast<double>(use.lengths.size()) * habits.tail;
  return use;
}

}  // namespace evencount::weave
