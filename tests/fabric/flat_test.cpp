#include <cstring>

#include "pieces.hpp"

namespace evencount::fabric {
namespace {

using namespace testing_support;

Fabric flat(const Piece& piece) {
  return settle_flat(piece.plan, piece.sizes, piece.gauge).value();
}

// (1), (2): every technique, every bead size; and what the default gauges leave between the beads.
TEST(Flat, LiesOnTheLatticeAtItsGauge) {
  for (const weave::Technique& technique : weave::techniques()) {
    double most_overlap = 0;
    for (const bead::Size& size : bead::sizes()) {
      const Piece piece = piece_of(technique, 20, 30, size);
      const Fabric fabric = flat(piece);
      ASSERT_GT(fabric.beads.size(), 100u);
      for (const SettledBead& bead : fabric.beads) {
        const weave::Site site = piece.plan.lattice.site(bead.cell);
        EXPECT_EQ(bead.shape.middle, (Vec3{site.middle.across * piece.gauge.column.mm() / 2,
                                           -(site.middle.along * piece.gauge.edge.mm() / 2), 0}));
        const bool across = site.axis == weave::Axis::across;
        EXPECT_EQ(bead.shape.axis, (across ? Vec3{1, 0, 0} : Vec3{0, -1, 0}));
        EXPECT_EQ(bead.shape.half_length_mm, size.length.mm() / 2);
        EXPECT_EQ(bead.shape.radius_mm, size.diameter.mm() / 2);
      }
      EXPECT_LT(fabric.residual.worst_link, 1e-9) << piece.name << " " << size.id;
      EXPECT_LT(fabric.residual.worst_overlap, 0.02) << piece.name << " " << size.id;
      most_overlap = std::max(most_overlap, fabric.residual.worst_overlap);
    }
    fmt::print("{:<30} flat at its default gauge, all sizes: overlap at most {:.3f} % of a diameter\n",
               technique.id, 100 * most_overlap);
  }
}

TEST(Flat, BeadsComeInTheOrderOfStringing) {
  const Piece piece = flat_peyote(6, 5);
  const Fabric fabric = flat(piece);
  std::size_t next = 0;
  for (const weave::Stitch& stitch : piece.plan.stitches)
    if (stitch.act == weave::Act::pick_up) {
      EXPECT_EQ(fabric.beads[next++].cell, stitch.cell);
    }
  EXPECT_EQ(next, fabric.beads.size());
}

// Peyote: the thread leans from one column's mouths to the next's, half a bead up or down.
TEST(Flat, LinksHaveTheLengthOfTheThreadBetween) {
  const Piece piece = flat_peyote(6, 10);
  const double gap = (piece.gauge.column - piece.sizes[0].length).mm(), half_step = piece.gauge.edge.mm() / 2;
  int leaning = 0, round_the_edge = 0;
  for (const Link& link : flat(piece).links) {
    if (std::abs(link.length_mm - std::hypot(gap, half_step)) < 1e-12) ++leaning;
    if (std::abs(link.length_mm - 2 * half_step) < 1e-12) ++round_the_edge;
    EXPECT_FALSE(link.across_seam);
  }
  EXPECT_EQ(leaning, 5 * (2 * 10 - 1));   // between two columns as many as their beads have neighbours
  EXPECT_EQ(round_the_edge, 2 * 10 - 2);  // a turn at the end of every row but the first two and the last
  EXPECT_EQ(flat(piece).links.size(), static_cast<std::size_t>(leaning + round_the_edge));
}

TEST(Flat, NothingHoldsAcrossTheSeamUntilItIsClosed) {
  const Piece zipped = piece_of("peyote-even-count", 6, 24, {size_of("cylinder-11")}, {weave::Closure::zip});
  const Fabric fabric = flat(zipped);
  const auto across =
      std::count_if(fabric.links.begin(), fabric.links.end(), [](const Link& l) { return l.across_seam; });
  EXPECT_EQ(across, 7);  // five steps of the seam, and the turns into it and back
  EXPECT_FALSE(fabric.closed);
  EXPECT_LT(fabric.residual.worst_link, 1e-9);
}

Piece one_larger(const char* larger) {
  return piece_of("peyote-even-count", 12, 12, {size_of("cylinder-11"), size_of(larger)}, {}, [](Cell cell) {
    return chart::Bead(cell == Cell{5, 5} ? 1 : 0);
  });
}

TEST(Flat, LargerBeadsPushTheOthersAside) {
  const Piece piece = one_larger("round-11");
  EXPECT_GT(flat(piece).residual.worst_overlap, 0.05);
  const Fabric relaxed = settle(piece.plan, piece.sizes, piece.gauge).value();
  print_residual("an 11/0 round among cylinders, relaxed", relaxed);
  EXPECT_LT(relaxed.residual.worst_overlap, 0.02);
  EXPECT_LT(relaxed.residual.worst_link, 0.02);
}

// A 6/0 has no room in 11/0 work, and the residual says so.
TEST(Flat, WhatDoesNotFitShowsInTheResidual) {
  const Piece piece = one_larger("round-6");
  const Fabric relaxed = settle(piece.plan, piece.sizes, piece.gauge).value();
  print_residual("a 6/0 round among 11/0 cylinders", relaxed);
  EXPECT_GT(relaxed.residual.worst_link, 0.05);
}

TEST(Flat, RefusesWhatHasNoSize) {
  const Piece piece = flat_peyote(6, 5);
  EXPECT_EQ(settle_flat(piece.plan, {}, piece.gauge).problem().code, ProblemCode::out_of_range);
  auto sizes = piece.sizes;
  sizes[0].length = Length{};
  EXPECT_EQ(settle_flat(piece.plan, sizes, piece.gauge).problem().code, ProblemCode::out_of_range);
  bead::Gauge gauge = piece.gauge;
  gauge.edge = millimetres(-1);
  EXPECT_EQ(settle_flat(piece.plan, piece.sizes, gauge).problem().code, ProblemCode::out_of_range);
  weave::Plan broken = piece.plan;
  broken.stitches[1].cell.column = 99;
  EXPECT_EQ(settle_flat(broken, piece.sizes, piece.gauge).problem().code, ProblemCode::bad_plan);
  EXPECT_EQ(settle_flat({}, piece.sizes, piece.gauge).problem().code, ProblemCode::bad_plan);
}

}  // namespace
}  // namespace evencount::fabric
