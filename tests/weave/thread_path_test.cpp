#include "weave/thread_path.hpp"

#include <gtest/gtest.h>

#include <cstdio>
#include <numeric>

#include "oracle/thread_oracle.hpp"
#include "random_band.hpp"

namespace evencount::weave {
namespace {

using namespace testing_support;

const bead::Size cylinder = bead::find_size("cylinder-11").value();
const bead::Thread thread = bead::threads().front();
const bead::Gauge gauge = bead::default_gauge(cylinder, thread);

ThreadUse use_of(const Plan& plan, const ThreadHabits& habits = {}) {
  return thread_use(plan, cylinder, gauge, thread, habits).value();
}

Plan blank_plan(int columns, int edge, Closure closure) {
  return plan_of({chart::Chart::make(columns, edge).value(), closure});
}

// "Carrier bead mania": a carrier band of 144-150 beads takes a yard of thread at most,
// zinio.com/ch-de/explore/beadbutton/june-2018-i388547/carrier-bead-mania-a9620.
TEST(ThreadPath, ACarrierBandTakesLessThanAYard) {
  const Plan plan = blank_plan(6, 24, Closure::zip);
  const auto counts = count_beads(plan);
  ASSERT_EQ(counts, std::vector<int>{144});
  const ThreadUse use = use_of(plan);
  std::printf("thread of a zipped band 6 x 24, 11/0 cylinders: path %.1f mm, with tails %.1f mm\n",
              use.path.mm(), use.cut.mm());
  EXPECT_LT(use.cut, inches(36));
  EXPECT_EQ(use.lengths.size(), 1u);
  // The thread goes through each bead twice, bar the first and last rows: it can't be shorter than that.
  EXPECT_GT(use.path, 1.8 * 144 * cylinder.length);
}

// The slow way lets the thread slant inside each bead too, so it can't be shorter; in peyote, whose rows zigzag, it
// gains next to nothing by that.
TEST(ThreadPath, AgreesWithTheSlowWay) {
  Random random(21);
  for (int i = 0; i < 60; ++i) {
    const Plan plan = plan_of(random_band(random, 12, 30));
    const double slow_mm = oracle::thread_path_mm(plan, cylinder, gauge, thread);
    const double path_mm = use_of(plan).path.mm();
    EXPECT_LE(path_mm, slow_mm * (1 + 1e-9));
    EXPECT_GE(path_mm, slow_mm * 0.95);
  }
}

// A thread as thick as the hole can't lean: the two agree exactly.
TEST(ThreadPath, AgreesWithTheSlowWayInATightHole) {
  bead::Thread tight = thread;
  tight.diameter = cylinder.hole;
  Random random(24);
  for (int i = 0; i < 60; ++i) {
    const Plan plan = plan_of(random_band(random, 12, 30));
    const double slow_mm = oracle::thread_path_mm(plan, cylinder, gauge, tight);
    EXPECT_NEAR(thread_use(plan, cylinder, gauge, tight).value().path.mm(), slow_mm, 1e-9 * slow_mm);
  }
}

// Two columns, one step: two beads strung one after the other, half a bead apart along the edge.
TEST(ThreadPath, TwoBeadsByHand) {
  const double saved_mm = cylinder.hole.mm() - thread.diameter.mm();
  const double gap_mm = std::hypot(gauge.column.mm() - cylinder.length.mm(), gauge.edge.mm() / 2 - saved_mm);
  EXPECT_NEAR(use_of(blank_plan(2, 1, Closure::open)).path.mm(), 2 * cylinder.length.mm() + gap_mm, 1e-9);
}

/// What the thread takes from the first bead's mouth to the second's.
double gap_mm(const Plan& plan) {
  return use_of(plan).path.mm() - 2 * cylinder.length.mm();
}

Plan two_beads(const Lattice& lattice, std::vector<Stitch> stitches) {
  Plan plan;
  plan.lattice = lattice;
  plan.rows = {{.end_stitch = stitches.size()}};
  plan.stitches = std::move(stitches);
  return plan;
}

Stitch strung(Cell cell, Travel travel) {
  return {.act = Act::pick_up, .travel = travel, .bead = 0, .cell = cell};
}

Stitch turned(Turn turn, Travel travel) {
  return {.act = Act::turn, .travel = travel, .turn = turn};
}

// The holes meet at right angles: the thread leans once across and once along.
TEST(ThreadPath, RoundACornerByHand) {
  const Lattice squares{.columns = 3, .edge = 3, .drop = 0, .holes = Holes::round_squares};
  const double lean_mm = (cylinder.hole - thread.diameter).mm() / 2;
  const double x_mm = std::max(0.0, (gauge.column - cylinder.length).mm() / 2 - lean_mm);
  const double y_mm = std::max(0.0, (gauge.edge - cylinder.length).mm() / 2 - lean_mm);
  const Plan plan = two_beads(squares, {strung({0, 1}, Travel::forth), strung({1, 2}, Travel::right)});
  EXPECT_NEAR(gap_mm(plan), std::hypot(x_mm, y_mm), 1e-9);
}

// Down a bead, out to its outer face, up along it and into the one above.
TEST(ThreadPath, PastTheOutsideByHand) {
  const Lattice on_end{.columns = 2, .edge = 2, .drop = 0, .holes = Holes::along};
  const double out_mm = (cylinder.diameter - cylinder.hole + thread.diameter).mm() / 2;
  const Plan plan = two_beads(on_end, {strung({0, 0}, Travel::back), turned(Turn::outside, Travel::forth),
                                       strung({0, 1}, Travel::forth)});
  EXPECT_NEAR(gap_mm(plan),
              out_mm + cylinder.length.mm() + std::hypot(out_mm, (gauge.edge - cylinder.length).mm()), 1e-9);
}

// Out round the outer warp, half a gap away, and in again.
TEST(ThreadPath, ToTheNextRowOnWarpsByHand) {
  const Lattice square{.columns = 1, .edge = 2, .drop = 0};
  Plan plan = two_beads(square, {strung({0, 0}, Travel::left), turned(Turn::edge, Travel::right),
                                 strung({0, 1}, Travel::right)});
  const double along_mm = (gauge.edge - cylinder.hole + thread.diameter).mm();
  EXPECT_NEAR(gap_mm(plan), along_mm, 1e-9);
  plan.on_warps = true;
  EXPECT_NEAR(gap_mm(plan), std::hypot(along_mm, (gauge.column - cylinder.length).mm()), 1e-9);
}

// The last bead round a tube is the first one's neighbour, on a spiral a rise higher.
TEST(ThreadPath, AcrossTheSeamOfATubeByHand) {
  for (const int rise : {0, 2}) {
    const Lattice tube{.columns = 4, .edge = 2, .drop = 0, .round = true, .rise = rise};
    const Plan plan = two_beads(tube, {strung({3, 0}, Travel::right), strung({0, rise / 2}, Travel::right)});
    EXPECT_NEAR(gap_mm(plan), (gauge.column - cylinder.length).mm(), 1e-9) << rise;
    const Plan back = two_beads(tube, {strung({0, rise / 2}, Travel::left), strung({3, 0}, Travel::left)});
    EXPECT_NEAR(gap_mm(back), (gauge.column - cylinder.length).mm(), 1e-9) << rise;
  }
}

TEST(ThreadPath, EveryPassIsCounted) {
  Random random(22);
  for (int i = 0; i < 300; ++i) {
    const Band band = random_band(random, 12, 30);
    const Plan plan = plan_of(band);
    const ThreadUse use = use_of(plan);
    int through = 0;
    for (const Stitch& stitch : plan.stitches)
      through += stitch.act == Act::pick_up || stitch.act == Act::pass || stitch.act == Act::join ? 1 : 0;
    EXPECT_EQ(std::accumulate(use.passes.begin(), use.passes.end(), 0), through);
    EXPECT_EQ(use.most_passes, *std::max_element(use.passes.begin(), use.passes.end()));
    for (std::size_t cell = 0; cell < use.passes.size(); ++cell)
      EXPECT_EQ(use.passes[cell] == 0, band.chart.cells()[cell] == chart::no_bead);
  }
}

TEST(ThreadPath, GrowsWithEveryStitch) {
  Plan plan = blank_plan(5, 6, Closure::open);
  const auto row = plan.rows.back();
  double longer_mm = use_of(plan).path.mm();
  for (std::size_t end = row.end_stitch - 1; end > row.first_stitch + 1; --end) {
    plan.stitches.resize(end);
    plan.rows.back().end_stitch = end;
    const double shorter_mm = use_of(plan).path.mm();
    EXPECT_LE(shorter_mm, longer_mm);
    longer_mm = shorter_mm;
  }
}

TEST(ThreadPath, IsCutIntoLengthsThatBeginWithARow) {
  Random random(23);
  for (int i = 0; i < 200; ++i) {
    const Plan plan = blank_plan(pick(random, 2, 20), pick(random, 10, 120), Closure::zip);
    const ThreadHabits habits{.tail = centimetres(pick(random, 5, 20)), .working_length = centimetres(150)};
    const ThreadUse use = use_of(plan, habits);
    ASSERT_EQ(use.new_thread_rows.size() + 1, use.lengths.size());
    double sum_mm = 0;
    for (const Length length : use.lengths) {
      EXPECT_LE(length.mm(), habits.working_length.mm() + 1e-9);
      EXPECT_GT(length, 2 * habits.tail);
      sum_mm += length.mm();
    }
    EXPECT_NEAR(sum_mm, use.cut.mm(), 1e-6);
    EXPECT_NEAR(use.cut.mm(), use.path.mm() + 2 * habits.tail.mm() * static_cast<double>(use.lengths.size()),
                1e-6);
    EXPECT_TRUE(std::is_sorted(use.new_thread_rows.begin(), use.new_thread_rows.end()));
    for (const int row : use.new_thread_rows) EXPECT_TRUE(row >= 3 && row <= row_count(plan) + 1) << row;
  }
}

// A new thread begins exactly where the next row would no longer fit.
TEST(ThreadPath, NewThreadRowsAreAsLateAsTheyCanBe) {
  const Plan plan = blank_plan(6, 150, Closure::open);
  const ThreadUse use = use_of(plan);
  ASSERT_GE(use.new_thread_rows.size(), 1u);
  const auto path_to_row = [&](int number) {
    Plan part = plan;
    const auto end = std::find_if(part.rows.begin(), part.rows.end(),
                                  [&](const Row& row) { return row.first_number > number; });
    part.stitches.resize(std::prev(end)->end_stitch);
    part.rows.erase(end, part.rows.end());
    return use_of(part, {.working_length = metres(100)}).path;
  };
  const int joined = use.new_thread_rows.front();
  const Length room = ThreadHabits{}.working_length - 2 * ThreadHabits{}.tail;
  EXPECT_LE(path_to_row(joined - 1), room);
  EXPECT_GT(path_to_row(joined), room);
}

TEST(ThreadPath, HabitsThatCannotWorkAreRefused) {
  const Plan plan = blank_plan(6, 10, Closure::open);
  const auto code = [&](const ThreadHabits& habits) {
    const auto use = thread_use(plan, cylinder, gauge, thread, habits);
    return use ? std::optional<ProblemCode>() : use.problem().code;
  };
  EXPECT_EQ(code({.tail = millimetres(-1)}), ProblemCode::out_of_range);
  EXPECT_EQ(code({.tail = centimetres(40)}), ProblemCode::out_of_range);
  EXPECT_EQ(code({.tail = millimetres(0), .working_length = millimetres(0)}), ProblemCode::out_of_range);
  EXPECT_EQ(code({.tail = millimetres(0), .working_length = millimetres(10)}), ProblemCode::out_of_range);
  EXPECT_EQ(code({.tail = millimetres(0), .working_length = millimetres(100)}), std::nullopt);
}

TEST(ThreadPath, CapacityIsTheBeads) {
  const ThreadUse use = use_of(blank_plan(6, 24, Closure::zip));
  EXPECT_EQ(use.capacity,
            bead::passes_that_fit(cylinder.hole, thread.diameter, bead::needle_for(cylinder.hole).diameter));
  EXPECT_LE(use.most_passes, use.capacity);
}

TEST(ThreadPath, ReinforcedRowsAreGoneThroughTwice) {
  const Plan plan = blank_plan(6, 24, Closure::zip);
  const ThreadHabits endless{.working_length = metres(100)};
  ThreadHabits twice = endless;
  twice.reinforced_rows = 2;
  const ThreadUse plain = use_of(plan, endless), reinforced = use_of(plan, twice);
  // Rows 1-2, 3, 47 and 48 once more: 6 + 3 + 3 + 3 beads are strung in them, and as many are passed as hold them.
  int more = 0;
  for (const std::size_t row : {std::size_t{0}, std::size_t{1}, std::size_t{45}, std::size_t{46}})
    for (std::size_t i = plan.rows[row].first_stitch; i < plan.rows[row].end_stitch; ++i)
      more += plan.stitches[i].act == Act::pick_up || plan.stitches[i].act == Act::pass ? 1 : 0;
  EXPECT_EQ(more, 24);
  const auto passes = [](const ThreadUse& use) { return std::accumulate(use.passes.begin(), use.passes.end(), 0); };
  EXPECT_EQ(passes(reinforced), passes(plain) + more);
  EXPECT_GT(reinforced.path, plain.path + more * cylinder.length);
  twice.reinforced_rows = 1000;  // every row with beads, but the zip
  const ThreadUse all = use_of(plan, twice);
  EXPECT_LT(all.path, 2 * plain.path);
  EXPECT_GT(all.path, 1.9 * plain.path);
  twice.reinforced_rows = -1;
  EXPECT_EQ(thread_use(plan, cylinder, gauge, thread, twice).problem().code, ProblemCode::out_of_range);
}

TEST(ThreadPath, SaysWhatIsLeftOfTheLastLength) {
  const ThreadHabits habits;
  const ThreadUse one = use_of(blank_plan(6, 24, Closure::zip), habits);
  EXPECT_NEAR(one.left.mm(), (habits.working_length - one.path - 2 * habits.tail).mm(), 1e-9);
  const ThreadUse several = use_of(blank_plan(6, 150, Closure::open), habits);
  ASSERT_GT(several.lengths.size(), 1u);
  EXPECT_EQ(several.left, habits.working_length - several.lengths.back());
}

}  // namespace
}  // namespace evencount::weave
