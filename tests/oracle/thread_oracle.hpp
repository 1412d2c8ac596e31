#pragma once
/// The thread's way measured the slow way: every point where it enters or leaves a bead is put in a list first,
/// then the list is walked. Shares nothing with weave/thread_path.cpp.

#include <cmath>
#include <vector>

#include "bead/bead_size.hpp"
#include "bead/gauge.hpp"
#include "weave/plan.hpp"

namespace evencount::oracle {

struct ThreadPoint {
  double across_mm = 0;
  double along_mm = 0;
};

/// The straight way between two points of a band; where the ends are drawn together, the shortest of the ways
/// that go no time, once forwards or once backwards round the ring.
inline double way_mm(ThreadPoint a, ThreadPoint b, double ring_mm, bool joined) {
  double best = std::hypot(a.across_mm - b.across_mm, a.along_mm - b.along_mm);
  if (!joined) return best;
  for (const double round_mm : {-ring_mm, ring_mm})
    best = std::min(best, std::hypot(a.across_mm - b.across_mm, a.along_mm + round_mm - b.along_mm));
  return best;
}

inline double thread_path_mm(const weave::Plan& plan, const bead::Size& size, const bead::Gauge& gauge) {
  struct Pass {
    ThreadPoint in, out;
    bool joined = false;
    int loops_before = 0;
  };
  std::vector<Pass> passes;
  int loops = 0;
  for (const weave::Stitch& stitch : plan.stitches) {
    if (stitch.act == weave::Act::turn && stitch.turn == weave::Turn::loop) ++loops;
    const bool through =
        stitch.act == weave::Act::pick_up || stitch.act == weave::Act::pass || stitch.act == weave::Act::join;
    if (!through) continue;
    const double middle = stitch.cell.column * gauge.column.mm();
    const double along = (stitch.cell.step + 0.5 * (stitch.cell.column % 2)) * gauge.edge.mm();
    const ThreadPoint left{middle - size.length.mm() / 2, along}, right{middle + size.length.mm() / 2, along};
    const bool rightwards = stitch.travel == weave::Travel::right;
    passes.push_back(
        {rightwards ? left : right, rightwards ? right : left, stitch.act == weave::Act::join, loops});
    loops = 0;
  }
  double sum = 0;
  const double ring_mm = plan.lattice.edge * gauge.edge.mm();
  for (std::size_t i = 0; i < passes.size(); ++i) {
    sum += size.length.mm();
    if (i == 0) continue;
    // A loop goes one bead down the edge and comes back to the mouth it left.
    sum += passes[i].loops_before > 0 ? 2 * gauge.edge.mm() * passes[i].loops_before
                                      : way_mm(passes[i - 1].out, passes[i].in, ring_mm, passes[i].joined);
  }
  return sum;
}

}  // namespace evencount::oracle
