#include "fabric/relax.hpp"

#include "pieces.hpp"

namespace evencount::fabric {
namespace {

using namespace testing_support;

Fabric laid(const Piece& piece) {
  return piece.plan.lattice.round ? settle_round(piece.plan, piece.sizes, piece.gauge, {}).value()
                                  : settle_flat(piece.plan, piece.sizes, piece.gauge).value();
}

void expect_within_two_percent(const std::string& what, const Fabric& fabric) {
  print_residual(what, fabric);
  EXPECT_LT(fabric.residual.worst_overlap, 0.02) << what;
  EXPECT_LT(fabric.residual.worst_link, 0.02) << what;
  EXPECT_LT(fabric.residual.worst_inside_form_mm, 0.02) << what;
}

// (1), and back from a shake: every technique at 20 x 30 or the nearest that it makes.
TEST(Relax, EveryTechniqueStaysWhereItFitsAndComesBackWhenShaken) {
  for (const weave::Technique& technique : weave::techniques()) {
    const Piece piece = piece_of(technique, 20, 30, size_of("cylinder-11"));
    const Fabric start = laid(piece);
    EXPECT_LT(farthest_mm(relax(start, {}), start), 1e-6) << piece.name;
    expect_within_two_percent(piece.name + ", shaken", relax(shaken(start, 31, 0.15), {}));
  }
}

TEST(Relax, RoundBeadsComeBackToo) {
  for (const weave::Technique& technique : weave::techniques()) {
    const Piece piece = piece_of(technique, 12, 15, size_of("round-11"));
    expect_within_two_percent(piece.name + " in round beads, shaken",
                              relax(shaken(laid(piece), 32, 0.15), {}));
  }
}

TEST(Relax, DiamondAndTube) {
  const Piece shape = diamond(13);
  EXPECT_NEAR(static_cast<double>(laid(shape).beads.size()), 150, 20);
  EXPECT_EQ(relax(laid(shape), {}), laid(shape));
  expect_within_two_percent("diamond, shaken", relax(shaken(laid(shape), 33, 0.2), {}));
  const Piece round = tube(24, 20);
  expect_within_two_percent("tube of 24 x 20, shaken", relax(shaken(laid(round), 34, 0.2), {}));
}

// A tube drawn together to half a bead too narrow grows until its beads have room.
TEST(Relax, ATubeGrowsUntilItsBeadsHaveRoom) {
  const Piece piece = tube(24, 20);
  Fabric narrow = laid(piece);
  for (SettledBead& bead : narrow.beads) bead.shape.middle.x *= 0.9, bead.shape.middle.y *= 0.9;
  narrow.residual = residual_of(narrow);
  EXPECT_GT(narrow.residual.worst_overlap, 0.05);
  print_residual("tube drawn together by a tenth", narrow);
  const Fabric relaxed = relax(narrow, {});
  expect_within_two_percent("the same relaxed", relaxed);
  for (const SettledBead& bead : relaxed.beads)
    EXPECT_NEAR(std::hypot(bead.shape.middle.x, bead.shape.middle.y),
                std::hypot(laid(piece).beads[0].shape.middle.x, laid(piece).beads[0].shape.middle.y), 0.4);
}

TEST(Relax, ABandPushedIntoItsFormComesOffIt) {
  const Piece piece = piece_of("peyote-even-count", 6, 25, {size_of("cylinder-11")}, {weave::Closure::zip});
  const form::Form form = form::parse_form("lens:17x5x9").value();
  Fabric start = settle_closed(piece.plan, piece.sizes, piece.gauge, form).value();
  for (SettledBead& bead : start.beads) bead.shape.middle.y *= 0.9;
  const Obstacle lens = obstacle_of(form).value();
  EXPECT_GT(residual_of(start, lens).worst_inside_form_mm, 0.1);
  expect_within_two_percent("band off its form", relax(start, {.obstacle = lens}));
}

// Drawn in: rounds of smaller beads close over the stone's edge, and the stone keeps them out of it.
TEST(Relax, ABezelIsDrawnOverItsStone) {
  const auto [piece, stone] = bezel();
  const Fabric start = settle_rounds(piece.plan, piece.sizes, piece.gauge, stone.rounds).value();
  print_residual("bezel as its rounds are laid", start);
  const Fabric set = settle(piece.plan, piece.sizes, piece.gauge, stone).value();
  expect_within_two_percent("bezel drawn tight", set);
  EXPECT_NEAR(residual_of(set, obstacle_of(stone.stone).value()).worst_inside_form_mm,
              set.residual.worst_inside_form_mm, 1e-12);
  // The last round of either side, as form::bezel lays it: 6.55 mm; bead centres within a quarter of a bead of that.
  double sum = 0;
  int beads = 0;
  for (const SettledBead& bead : set.beads) {
    const int along = piece.plan.lattice.along_halves(bead.cell);
    if (along != 0 && along != 6) continue;
    sum += std::hypot(bead.shape.middle.x, bead.shape.middle.y);
    ++beads;
  }
  EXPECT_EQ(beads, 36);
  fmt::print("last rounds at radius {:.2f} mm, laid at {:.2f} mm\n", sum / beads,
             stone.rounds.back().radius.mm());
  EXPECT_NEAR(sum / beads, stone.rounds.back().radius.mm(), 0.35);
}

TEST(Relax, FewerBeadsDrawARingIn) {
  const Piece piece = ring_of_fewer();
  const Fabric start = settle_round(piece.plan, piece.sizes, piece.gauge, {}).value();
  const Fabric drawn = settle(piece.plan, piece.sizes, piece.gauge).value();
  expect_within_two_percent("ring with fewer beads drawn tight", drawn);
  const auto thread = [](const Fabric& fabric) {
    double sum = 0;
    for (const Link& link : fabric.links)
      sum += norm(place_of(fabric.beads[link.to.bead].shape, link.to.end) -
                  place_of(fabric.beads[link.from.bead].shape, link.from.end));
    return sum;
  };
  fmt::print("thread between its beads: {:.1f} mm, {:.1f} mm drawn tight\n", thread(start), thread(drawn));
  EXPECT_LT(thread(drawn), 0.95 * thread(start));
  const auto radius = [](const SettledBead& b) { return std::hypot(b.shape.middle.x, b.shape.middle.y); };
  EXPECT_LT(radius(drawn.beads.back()), radius(drawn.beads.front()) - 0.8);
}

// (2)
TEST(Relax, TheSameStartGivesTheSameBytes) {
  const Fabric start = shaken(laid(flat_peyote(20, 30)), 35, 0.2);
  const Fabric once = relax(start, {}), again = relax(start, {});
  EXPECT_EQ(once, again);
  const auto [piece, stone] = bezel();
  EXPECT_EQ(settle(piece.plan, piece.sizes, piece.gauge, stone).value(),
            settle(piece.plan, piece.sizes, piece.gauge, stone).value());
}

// (3)
TEST(Relax, TurnedAndMirroredStartsGiveTurnedAndMirroredResults) {
  double farthest = 0;
  for (const Piece& piece : {flat_peyote(12, 16), diamond(7), tube(16, 8)}) {
    const Fabric start = shaken(laid(piece), 36, 0.15);
    const Fabric relaxed = relax(start, {});
    for (const Move& move : {Move(turned), Move(mirrored)}) {
      const Fabric other = relax(moved(start, move), {});
      EXPECT_LT(farthest_mm(other, moved(relaxed, move)), 1e-6) << piece.name;
      farthest = std::max(farthest, farthest_mm(other, moved(relaxed, move)));
    }
  }
  const auto [piece, stone] = bezel();
  const Obstacle in_the_way = obstacle_of(stone.stone).value();
  const Fabric start = settle_rounds(piece.plan, piece.sizes, piece.gauge, stone.rounds).value();
  const Fabric set = relax(start, {.draw_tight = true, .obstacle = in_the_way});
  const Fabric other = relax(moved(start, mirrored), {.draw_tight = true, .obstacle = in_the_way});
  EXPECT_LT(farthest_mm(other, moved(set, mirrored)), 1e-6);
  fmt::print("turned and mirrored results differ by {:.1e} mm at most, a mirrored bezel by {:.1e} mm\n",
             farthest, farthest_mm(other, moved(set, mirrored)));
}

// (4)
TEST(Relax, TheResidualIsThatOfTheResult) {
  const Fabric relaxed = relax(shaken(laid(flat_peyote(8, 10)), 37, 0.3), {});
  Residual own = relaxed.residual;
  EXPECT_GT(own.rounds, 0);
  own.rounds = 0;
  EXPECT_EQ(residual_of(relaxed), own);
}

TEST(Relax, StopsAtItsCapAndSaysHowFarItGot) {
  const Fabric start = shaken(laid(flat_peyote(8, 10)), 38, 0.3);
  const Fabric relaxed = relax(start, {.most_rounds = 2});
  EXPECT_EQ(relaxed.residual.rounds, 2);
  EXPECT_GT(relaxed.residual.worst_link, 0.005);
  EXPECT_LT(relaxed.residual.worst_link, residual_of(start).worst_link);
}

TEST(Relax, NothingGivesNothing) {
  EXPECT_EQ(relax({}, {.draw_tight = true}), Fabric{});
}

}  // namespace
}  // namespace evencount::fabric
