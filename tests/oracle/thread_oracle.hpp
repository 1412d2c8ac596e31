#pragma once
/// The thread's way measured the slow way: every point where it enters or leaves a bead is put in a list first,
/// then the list is walked. Shares nothing with weave/thread_path.cpp.

#include <algorithm>
#include <cmath>
#include <vector>

#include "bead/bead_size.hpp"
#include "bead/gauge.hpp"
#include "bead/thread.hpp"
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

struct Pass {
  ThreadPoint in, out;
  bool joined = false;
  int loops_before = 0;
};

/// Every bead that the thread goes through, with the middles of its two mouths.
inline std::vector<Pass> passes_of(const weave::Plan& plan, const bead::Size& size,
                                   const bead::Gauge& gauge) {
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
  return passes;
}

/// The thread's way when it may lie anywhere in each mouth within `lean_mm` of the middle: the shortest over a fine comb of
/// places, found by going through all pairs of places of one mouth and the next.
inline double thread_path_mm(const weave::Plan& plan, const bead::Size& size, const bead::Gauge& gauge,
                             const bead::Thread& thread) {
  constexpr int places = 13;
  const double lean_mm = std::max(0.0, (size.hole.mm() - thread.diameter.mm()) / 2);
  const auto offset = [&](int place) { return lean_mm * (2.0 * place / (places - 1) - 1); };
  const double ring_mm = plan.lattice.edge * gauge.edge.mm();
  const auto passes = passes_of(plan, size, gauge);
  std::vector<double> best(places, 0);
  const auto go = [&](ThreadPoint from, ThreadPoint to, bool joined) {
    std::vector<double> next(places, 1e300);
    for (int a = 0; a < places; ++a)
      for (int b = 0; b < places; ++b)
        next[b] =
            std::min(next[b], best[a] + way_mm({from.across_mm, from.along_mm + offset(a)},
                                               {to.across_mm, to.along_mm + offset(b)}, ring_mm, joined));
    best = next;
  };
  for (std::size_t i = 0; i < passes.size(); ++i) {
    if (i > 0 && passes[i].loops_before == 0) go(passes[i - 1].out, passes[i].in, passes[i].joined);
    // A loop goes one bead down the edge and comes back to the mouth it left.
    for (double& way : best) way += 2 * gauge.edge.mm() * passes[i].loops_before;
    go(passes[i].in, passes[i].out, false);
  }
  return *std::min_element(best.begin(), best.end());
}

}  // namespace evencount::oracle
