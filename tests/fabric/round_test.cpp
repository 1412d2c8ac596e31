#include <numbers>

#include "form/closure.hpp"
#include "form/faces.hpp"
#include "form/ring_start.hpp"
#include "pieces.hpp"

namespace evencount::fabric {
namespace {

using namespace testing_support;

using std::numbers::pi;

Vec3 middle(const Fabric& fabric, Cell cell) {
  return std::find_if(fabric.beads.begin(), fabric.beads.end(),
                      [&](const SettledBead& b) { return b.cell == cell; })
      ->shape.middle;
}

double aside_mm(Vec3 a) {
  return std::hypot(a.x, a.y);
}

// (5), (6) without a rise
TEST(Round, ATubeIsAPolygonOfColumns) {
  double before = 1e300;
  for (const int columns : {4, 8, 12, 24, 48, 96}) {
    const Piece piece = tube(columns, 4);
    const Fabric fabric = settle_round(piece.plan, piece.sizes, piece.gauge, {}).value();
    const double chord = aside_mm(middle(fabric, {1, 0}) - middle(fabric, {0, 0}));
    EXPECT_GE(chord, piece.gauge.column.mm() - 1e-12);
    for (const SettledBead& bead : fabric.beads) {
      const Cell next{(bead.cell.column + 1) % columns, bead.cell.step};
      EXPECT_NEAR(aside_mm(middle(fabric, next) - bead.shape.middle), chord, 1e-9);
      EXPECT_NEAR(aside_mm(bead.shape.middle), chord / (2 * std::sin(pi / columns)), 1e-9);
      const double up = piece.plan.lattice.along_halves(bead.cell) * piece.gauge.edge.mm() / 2;
      EXPECT_NEAR(bead.shape.middle.z - middle(fabric, {0, 0}).z, up, 1e-9);
      EXPECT_NEAR(dot(bead.shape.axis, bead.shape.middle), 0, 1e-9);  // the hole runs round
    }
    EXPECT_LT(fabric.residual.worst_overlap, 1e-9) << columns;
    EXPECT_LT(fabric.residual.worst_link, 1e-9) << columns;
    fmt::print("tube of {:>3} columns: chord {:.3f} x the column pitch\n", columns,
               chord / piece.gauge.column.mm());
    EXPECT_LT(chord, before);  // the wider, the less the inner rims are in each other's way
    before = chord;
  }
}

// (6): an odd count climbs by half a bead in a round.
TEST(Round, ASpiralRisesByHalfABeadInARound) {
  const Piece piece = piece_of("tubular-odd-count", 11, 8, {size_of("cylinder-11")}, {weave::Closure::round});
  const Fabric fabric = settle_round(piece.plan, piece.sizes, piece.gauge, {}).value();
  EXPECT_LT(fabric.residual.worst_overlap, 1e-9);
  EXPECT_LT(fabric.residual.worst_link, 1e-9);
  const Cylinder first = fabric.beads.front().shape;
  EXPECT_NEAR(first.axis.z,
              piece.gauge.edge.mm() / 2 / std::hypot(11 * piece.gauge.column.mm(), piece.gauge.edge.mm() / 2),
              1e-12);
  // From column 10 on to column 0 of the next step it is as far as from any even column to the next: no seam.
  const double onwards = norm(middle(fabric, {3, 3}) - middle(fabric, {2, 3}));
  EXPECT_NEAR(norm(middle(fabric, {0, 4}) - middle(fabric, {10, 3})), onwards, 1e-9);
}

TEST(Round, TheOutsideIsNotMirrored) {
  const Piece piece = tube(16, 6);
  const Fabric fabric = settle_round(piece.plan, piece.sizes, piece.gauge, {}).value();
  const Vec3 here = middle(fabric, {5, 2});
  EXPECT_GT(dot(cross(middle(fabric, {5, 3}) - here, middle(fabric, {7, 2}) - here), {here.x, here.y, 0}), 0);
}

TEST(Round, RoundAFormTheColumnsAreItsClosingRing) {
  for (const char* notation : {"round:14x20", "oval:18x13x5", "bar:20x4x10", "ring:54"}) {
    const form::Form form = form::parse_form(notation).value();
    const bead::Size size = size_of("cylinder-11");
    const int columns =
        form::ring_start(form, size, bead::default_gauge(size, bead::threads().front())).value().beads;
    const Piece piece = tube(columns, 3);
    const Fabric fabric = settle_round(piece.plan, piece.sizes, piece.gauge, form).value();
    const auto section = form::section(form).value();
    const auto curve = form::offset(section, size.diameter / 2);
    const double chord = form::closing_chord(curve, columns, form::seam_place(section)).value().mm();
    for (int column = 0; column < columns; ++column)
      EXPECT_NEAR(aside_mm(middle(fabric, {(column + 1) % columns, 1}) - middle(fabric, {column, 1})), chord,
                  1e-9)
          << notation;
    const Residual residual = residual_of(fabric, obstacle_of(form).value());
    EXPECT_LT(residual.worst_inside_form_mm, 1e-9) << notation;
    EXPECT_EQ(settle(piece.plan, piece.sizes, piece.gauge, form).value(), fabric);
    fmt::print("ring of {} on {}: overlap of inner rims {:.2f} % of a diameter, link {:.2f} %\n", columns,
               notation, 100 * residual.worst_overlap, 100 * residual.worst_link);
  }
}

TEST(Round, RoundsLieWhereTheBezelLaysThem) {
  const auto [piece, stone] = bezel();
  const Fabric fabric = settle_rounds(piece.plan, piece.sizes, piece.gauge, stone.rounds).value();
  std::vector<int> beads(stone.rounds.size(), 0);
  for (const SettledBead& bead : fabric.beads) {
    const auto round = std::find_if(stone.rounds.begin(), stone.rounds.end(), [&](const form::BezelRound& r) {
      return std::abs(r.radius.mm() - aside_mm(bead.shape.middle)) < 1e-9 &&
             std::abs(r.height.mm() - bead.shape.middle.z) < 1e-9;
    });
    ASSERT_NE(round, stone.rounds.end());
    ++beads[static_cast<std::size_t>(round - stone.rounds.begin())];
    EXPECT_EQ(piece.sizes[bead.bead].id, round->bead);
  }
  for (std::size_t r = 0; r < beads.size(); ++r) EXPECT_EQ(beads[r], stone.rounds[r].beads);
  const auto few = std::span(stone.rounds).first(3);
  EXPECT_EQ(settle_rounds(piece.plan, piece.sizes, piece.gauge, few).problem().code, ProblemCode::wrong_size);
}

TEST(Round, RefusesFlatPieces) {
  const Piece piece = flat_peyote(6, 5);
  EXPECT_EQ(settle_round(piece.plan, piece.sizes, piece.gauge, {}).problem().code, ProblemCode::wrong_size);
}

}  // namespace
}  // namespace evencount::fabric
