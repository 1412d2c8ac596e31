#include "language/texts.hpp"
#include "weave/right_angle.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "show_plan.hpp"
#include "weave/thread_path.hpp"
#include "whole_pieces.hpp"

namespace evencount::weave {
namespace {

using namespace testing_support;

const Technique& right_angle = right_angle_techniques().front();

chart::Chart random_piece(Random& random, int most_units) {
  const int across = pick(random, 1, most_units), along = pick(random, 1, most_units);
  return filled_chart(random, right_angle.lattice(2 * across + 1, 2 * along + 1));
}

/// The walk once more, as arrows: from the middle of a unit to the side where the needle is, and along that side. Going round is
/// turning both a quarter the same way.
class ArrowWalk {
 public:
  ArrowWalk(int across, int along) : across_(across), along_(along) {}

  std::vector<RowInWords> rows() {
    std::vector<RowInWords> rows;
    for (int row = 0; row < along_; ++row) {
      const bool right = row % 2 == 0;
      rows.push_back({right ? Travel::right : Travel::left, {}});
      for (int i = 0; i < across_; ++i) {
        middle_ = {2 * (right ? i : across_ - 1 - i) + 1, 2 * row + 1};
        const Cell leave = i + 1 == across_ ? Cell{0, 1} : Cell{right ? 1 : -1, 0};
        unit(rows.back().cells, row == 0 && i == 0, leave);
      }
    }
    return rows;
  }

 private:
  static Cell plus(Cell a, Cell b) { return {a.column + b.column, a.step + b.step}; }
  static Cell minus(Cell a, Cell b) { return {a.column - b.column, a.step - b.step}; }

  void unit(std::vector<Cell>& strung, bool first, Cell leave) {
    if (first) {
      at_ = {0, 1};
      way_ = {0, 1};
      string(strung);
    }
    const Cell shared = at_;
    do {
      quarter();
      string(strung);
    } while (at_ != shared);
    while (minus(at_, middle_) != leave) quarter();
  }

  /// Round the corner that the needle points to. Turning keeps the middle on the same hand.
  void quarter() {
    const Cell out = minus(at_, middle_);
    at_ = plus(middle_, way_);
    way_ = {-out.column, -out.step};
  }

  void string(std::vector<Cell>& strung) {
    if (has_bead_.insert(at_).second) strung.push_back(at_);
  }

  int across_, along_;
  Cell middle_, at_, way_;
  std::set<Cell> has_bead_;
};

TEST(RightAngle, UnitsAreStrungInTheOrderOfTheWords) {
  Random random(121);
  for (int i = 0; i < 500; ++i) {
    const chart::Chart chart = random_piece(random, 9);
    const auto rows = ArrowWalk((chart.columns() - 1) / 2, (chart.edge() - 1) / 2).rows();
    expect_faithful(right_angle, chart, rows);
  }
}

TEST(RightAngle, NeverGoesStraightAcrossACorner) {
  const Plan plan = blank_plan(right_angle, 9, 7);
  const Stitch* last = nullptr;
  for (const Stitch& stitch : plan.stitches) {
    EXPECT_NE(stitch.act, Act::turn);
    if (stitch.act != Act::pick_up && stitch.act != Act::pass) continue;
    if (last != nullptr) {
      EXPECT_NE(axis_of(last->travel), axis_of(stitch.travel));
    }
    last = &stitch;
  }
}

TEST(RightAngle, UnitsTakeFourThreeAndTwoBeads) {
  const Plan plan = blank_plan(right_angle, 7, 5);
  std::vector<std::vector<int>> units(plan.rows.size());
  for (std::size_t row = 0; row < plan.rows.size(); ++row) {
    bool stringing = false;
    for (std::size_t i = plan.rows[row].first_stitch; i < plan.rows[row].end_stitch; ++i) {
      const bool bead = plan.stitches[i].act == Act::pick_up;
      if (bead && !stringing) units[row].push_back(0);
      if (bead) ++units[row].back();
      stringing = bead;
    }
  }
  EXPECT_EQ(units, (std::vector<std::vector<int>>{{4, 3, 3}, {3, 2, 2}}));
}

// Two units across, two along. Unit by unit; the second and the third are gone round against the clock.
TEST(RightAngle, TwoByTwoByHand) {
  EXPECT_EQ(show(blank_plan(right_angle, 5, 5), true), R"(
row 1 > start +0,1v +1,2> +2,1^ +1,0< 0,1v 1,2> 2,1^ +3,0> +4,1v +3,2< 2,1^ 3,0> 4,1v 3,2<
row 2 < +2,3v +3,4> +4,3^ 3,2< 2,3v +1,4< +0,3^ 1,2> 2,3v finish
)");
}

TEST(RightAngle, IsMeasuredInUnits) {
  const auto [across, along] = right_angle.measures(right_angle.lattice(11, 3));
  EXPECT_EQ(across.count, 5);
  EXPECT_EQ(across.counted, &language::Texts::units_across);
  EXPECT_EQ(along.count, 1);
  EXPECT_EQ(along.counted, &language::Texts::units_along);
}

TEST(RightAngle, RefusesWhatCannotBeStitched) {
  EXPECT_EQ(refusal(right_angle, 3, 3), "");
  const std::string reason =
      "expected an odd number from 3 for right-angle weave: two for each unit and one more";
  for (const int size : {0, 1, 2, 6}) {
    EXPECT_EQ(refusal(right_angle, size, 5), fmt::format("columns: found {}, {}", size, reason));
    EXPECT_EQ(refusal(right_angle, 5, size), fmt::format("edge: found {}, {}", size, reason));
  }
  EXPECT_EQ(refusal_of_cell(right_angle, 5, 5, {2, 1}, chart::no_bead),
            "column 2, step 1: found an empty cell, expected a bead in every cell for right-angle weave");
  for (const Cell cell : {Cell{1, 1}, Cell{2, 2}})
    EXPECT_EQ(refusal_of_cell(right_angle, 5, 5, cell, 0),
              fmt::format("column {}, step {}: found a bead, expected no bead in the middles and corners of "
                          "right-angle weave's units",
                          cell.column, cell.step));
  auto chart = chart::Chart::make(3, 3, chart::no_bead).value();
  for (const Closure closure : {Closure::zip, Closure::sew, Closure::round})
    EXPECT_EQ(make_plan("right-angle", chart, {closure}).problem().found, closure_name(closure));
}

TEST(RightAngle, FaultsAreNoticed) {
  expect_faults_noticed(right_angle, 122, [](Random& random) { return random_piece(random, 4); });
}

// One unit: four beads, the first of them twice, and four corners. From mouth to mouth it is as far across as along, and in each of
// the two holes the thread leans towards the unit's middle.
TEST(RightAngle, OneUnitsThreadByHand) {
  for (const char* id : {"cylinder-11", "round-11", "round-8"}) {
    const bead::Size size = bead::find_size(id).value();
    const bead::Thread thread = bead::threads().front();
    const bead::Gauge gauge = bead::right_angle_gauge(size, thread);
    const double lean_mm = (size.hole - thread.diameter).mm() / 2;
    const double leg_mm = (gauge.column - size.length).mm() / 2 - lean_mm;
    ASSERT_GT(leg_mm, 0);
    const ThreadUse use = thread_use(blank_plan(right_angle, 3, 3), size, gauge, thread).value();
    EXPECT_NEAR(use.path.mm(), 5 * size.length.mm() + 4 * std::sqrt(2.0) * leg_mm, 1e-9) << id;
    EXPECT_EQ(use.passes, (std::vector<int>{0, 1, 0, 2, 0, 1, 0, 1, 0})) << id;
  }
}

}  // namespace
}  // namespace evencount::weave
