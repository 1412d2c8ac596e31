#include "pieces.hpp"

namespace evencount::fabric {
namespace {

using namespace testing_support;

// What needs no settling is left as it is laid, to the last bit.
TEST(Settle, TakesTheLayoutThatThePlanAsksFor) {
  const Piece open = flat_peyote(8, 10), round = tube(16, 6);
  EXPECT_EQ(settle(open.plan, open.sizes, open.gauge).value(),
            settle_flat(open.plan, open.sizes, open.gauge).value());
  EXPECT_EQ(settle(round.plan, round.sizes, round.gauge).value(),
            settle_round(round.plan, round.sizes, round.gauge, {}).value());
  const Piece zipped = piece_of("peyote-even-count", 6, 24, {size_of("cylinder-11")}, {weave::Closure::zip});
  EXPECT_EQ(settle(zipped.plan, zipped.sizes, zipped.gauge).value(),
            settle_closed(zipped.plan, zipped.sizes, zipped.gauge, {}).value());
  const form::Form lens = form::parse_form("lens:17x5x9").value();
  EXPECT_EQ(settle(zipped.plan, zipped.sizes, zipped.gauge, lens).value(),
            settle_closed(zipped.plan, zipped.sizes, zipped.gauge, lens).value());
}

// A tube that ends with half a step is not drawn in.
TEST(Settle, AnOddNumberOfRoundsDrawsNothingIn) {
  const Piece piece = piece_of(
      "peyote-bezel", 16, 4, {size_of("cylinder-11")}, {weave::Closure::round},
      [](Cell cell) { return 2 * cell.step + cell.column % 2 < 7 ? chart::Bead{0} : chart::no_bead; });
  EXPECT_EQ(piece.plan.empty_cells.size(), 8u);
  EXPECT_EQ(settle(piece.plan, piece.sizes, piece.gauge).value(),
            settle_round(piece.plan, piece.sizes, piece.gauge, {}).value());
}

// Smaller beads round a rod: drawn tight onto it, and none in it.
TEST(Settle, SmallerBeadsAreDrawnTightRoundAForm) {
  const Piece piece =
      piece_of("tubular-even-count", 36, 4, {size_of("cylinder-11"), size_of("round-15")},
               {weave::Closure::round}, [](Cell cell) { return chart::Bead(cell.step >= 2 ? 1 : 0); });
  const form::Form rod = form::parse_form("round:13x8").value();
  const Fabric fabric = settle(piece.plan, piece.sizes, piece.gauge, rod).value();
  print_residual("36 round a rod, smaller ones at one end", fabric);
  EXPECT_LT(fabric.residual.worst_overlap, 0.02);
  EXPECT_LT(fabric.residual.worst_link, 0.02);
  EXPECT_LT(fabric.residual.worst_inside_form_mm, 0.02);
  EXPECT_GT(fabric.residual.rounds, 0);
}

TEST(Settle, ProblemsComeThrough) {
  const auto [piece, stone] = bezel();
  SetStone oval = stone;
  oval.stone = form::parse_stone("stone:18x13,dome=5,back=flat").value();
  EXPECT_EQ(settle(piece.plan, piece.sizes, piece.gauge, oval).problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(settle(piece.plan, {}, piece.gauge, stone).problem().code, ProblemCode::out_of_range);
  SetStone few = stone;
  few.rounds.pop_back();
  EXPECT_EQ(settle(piece.plan, piece.sizes, piece.gauge, few).problem().code, ProblemCode::wrong_size);
}

TEST(Settle, NotMoreBeadsThanCanBeWaitedFor) {
  const auto settled = [](int columns, int edge) {
    const Piece flat = piece_of("peyote-even-count", columns, edge, {size_of("cylinder-11")}, {weave::Closure::open});
    return settle(flat.plan, flat.sizes, flat.gauge);
  };
  const int edge = static_cast<int>(most_settled_beads / 250);
  EXPECT_TRUE(settled(250, edge).ok());
  const auto more = settled(250, edge + 1);
  ASSERT_FALSE(more.ok());
  EXPECT_EQ(more.problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(more.problem().where, "beads");
}

}  // namespace
}  // namespace evencount::fabric
