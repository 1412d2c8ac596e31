#pragma once
/// What holds of every plan of every technique, whatever it makes.

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>
#include <string_view>

#include "random_band.hpp"
#include "weave/replay.hpp"
#include "weave/thread_path.hpp"

namespace evencount::weave::testing_support {

/// The cells whose beads a row strings, in the order of stringing.
inline std::vector<Cell> cells_of(const Plan& plan, const Row& row) {
  std::vector<Cell> cells;
  for (std::size_t i = row.first_stitch; i < row.end_stitch; ++i)
    if (plan.stitches[i].act == Act::pick_up) cells.push_back(plan.stitches[i].cell);
  return cells;
}

/// The plan, after checking that it makes the chart again, that the same chart gives it again, and that no bead is lost.
inline Plan checked_plan(std::string_view technique, const Band& band) {
  const auto plan = make_plan(technique, band.chart, {band.closure});
  if (!plan) {
    ADD_FAILURE() << message(plan.problem());
    return {};
  }
  const auto made = replay(*plan);
  if (made)
    EXPECT_EQ(*made, band.chart);
  else
    ADD_FAILURE() << message(made.problem());
  EXPECT_EQ(make_plan(technique, band.chart, {band.closure}).value(), *plan);
  std::vector<int> counts(5, 0);
  for (const Bead bead : band.chart.cells())
    if (bead != chart::no_bead) ++counts.at(bead);
  while (!counts.empty() && counts.back() == 0) counts.pop_back();
  EXPECT_EQ(count_beads(*plan), counts);
  return *plan;
}

/// Whether its thread can be measured: every bead that is there is passed, each pass counted, and the thread grows with every
/// stitch of the last row.
inline void check_thread(Plan plan, const bead::Gauge& gauge) {
  const bead::Size bead = bead::find_size("cylinder-11").value();
  const auto use_of = [&](const Plan& p) {
    return thread_use(p, bead, gauge, bead::threads().front(), {.working_length = metres(100)}).value();
  };
  const ThreadUse use = use_of(plan);
  const auto through = std::count_if(plan.stitches.begin(), plan.stitches.end(), [](const Stitch& s) {
    return s.act == Act::pick_up || s.act == Act::pass || s.act == Act::join;
  });
  EXPECT_EQ(std::accumulate(use.passes.begin(), use.passes.end(), 0), through);
  EXPECT_EQ(use.most_passes, *std::max_element(use.passes.begin(), use.passes.end()));
  const auto unused = std::count(use.passes.begin(), use.passes.end(), 0);
  EXPECT_EQ(static_cast<std::size_t>(unused), plan.empty_cells.size());
  double longer_mm = use.path.mm();
  Row& last = plan.rows.back();
  for (std::size_t end = last.end_stitch - 1; end > last.first_stitch; --end) {
    const Act dropped = plan.stitches[end].act;
    plan.stitches.resize(end);
    last.end_stitch = end;
    const double shorter_mm = use_of(plan).path.mm();
    if (dropped == Act::turn || dropped == Act::finish)
      EXPECT_LE(shorter_mm, longer_mm);
    else
      EXPECT_LT(shorter_mm, longer_mm);
    longer_mm = shorter_mm;
  }
}

}  // namespace evencount::weave::testing_support
