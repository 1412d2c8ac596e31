#include <numbers>

#include "form/closure.hpp"
#include "form/faces.hpp"
#include "pieces.hpp"

namespace evencount::fabric {
namespace {

using namespace testing_support;

struct Case {
  const char* form;
  int edge;
};

constexpr Case cases[]{{"lens:17x5x9", 24}, {"lens:17x5x9", 25},  {"lens:16x5x9", 23},  {"round:12x20", 26},
                       {"bar:20x4x10", 30}, {"oval:18x13x5", 33}, {"dome:20x6x10", 31}, {"ring:54", 36}};

Piece zipped(int columns, int edge) {
  return piece_of(weave::flat_peyote_for(columns).id.data(), columns, edge, {size_of("cylinder-11")},
                  {weave::Closure::zip});
}

const SettledBead& at(const Fabric& fabric, Cell cell) {
  return *std::find_if(fabric.beads.begin(), fabric.beads.end(),
                       [&](const SettledBead& b) { return b.cell == cell; });
}

// (3), (4)
TEST(Closed, NeighboursLieTheClosingChordApart) {
  double farthest_off = 0;
  for (const Case& one : cases) {
    const Piece piece = zipped(6, one.edge);
    const form::Form round = form::parse_form(one.form).value();
    const Fabric fabric = settle_closed(piece.plan, piece.sizes, piece.gauge, round).value();
    const auto section = form::section(round).value();
    const auto curve = form::offset(section, piece.sizes[0].diameter / 2);
    const double even = form::closing_chord(curve, one.edge, form::seam_place(section)).value().mm();
    for (int column = 0; column < 6; ++column) {
      // All chords of one ring are alike; which ring of odd beads it is, only its own place tells.
      const double chord =
          column % 2 == 0 ? even
                          : norm(at(fabric, {column, 1}).shape.middle - at(fabric, {column, 0}).shape.middle);
      for (int step = 0; step < one.edge; ++step) {
        const Vec3 here = at(fabric, {column, step}).shape.middle,
                   next = at(fabric, {column, (step + 1) % one.edge}).shape.middle;
        EXPECT_NEAR(norm(next - here), chord, 1e-9) << one.form << " " << one.edge;
        farthest_off = std::max(farthest_off, std::abs(norm(next - here) - chord));
      }
    }
    const auto range = form::closing_range(curve, one.edge).value();
    const double odd = norm(at(fabric, {1, 1}).shape.middle - at(fabric, {1, 0}).shape.middle);
    EXPECT_GE(odd, range.smallest.mm() * (1 - 1e-3)) << one.form;
    EXPECT_LE(odd, range.largest.mm() * (1 + 1e-3)) << one.form;
    EXPECT_LT(residual_of(fabric, obstacle_of(round).value()).worst_inside_form_mm, 1e-9) << one.form;
  }
  fmt::print("neighbours off the closing chord by {:.1e} mm at most\n", farthest_off);
}

TEST(Closed, HolesRunAlongTheFormAndColumnsLieTheirPitchApart) {
  const Piece piece = zipped(6, 24);
  const Fabric fabric =
      settle_closed(piece.plan, piece.sizes, piece.gauge, form::parse_form("lens:17x5x9").value()).value();
  EXPECT_TRUE(fabric.closed);
  for (const SettledBead& bead : fabric.beads) {
    EXPECT_EQ(bead.shape.axis, (Vec3{0, 0, 1}));
    EXPECT_NEAR(bead.shape.middle.z, (bead.cell.column - 2.5) * piece.gauge.column.mm(), 1e-12);
  }
  EXPECT_EQ(fabric.residual.worst_overlap, 0);
  print_residual("6 x 24 zipped round lens:17x5x9", fabric);
}

// The outside shows the chart: seen from outside with z up, columns go up and steps to the right.
TEST(Closed, TheOutsideIsNotMirrored) {
  const Piece piece = zipped(6, 26);
  const Fabric fabric =
      settle_closed(piece.plan, piece.sizes, piece.gauge, form::parse_form("round:12x20").value()).value();
  const Vec3 here = at(fabric, {2, 5}).shape.middle;
  const Vec3 columns = at(fabric, {4, 5}).shape.middle - here, steps = at(fabric, {2, 6}).shape.middle - here;
  EXPECT_GT(dot(cross(steps, columns), {here.x, here.y, 0}), 0);
  const Fabric on_table = settle_flat(piece.plan, piece.sizes, piece.gauge).value();
  const Vec3 there = at(on_table, {2, 5}).shape.middle;
  EXPECT_GT(cross(at(on_table, {2, 6}).shape.middle - there, at(on_table, {4, 5}).shape.middle - there).z, 0);
}

TEST(Closed, RoundNothingIsACircleOfEdgePitches) {
  for (const int edge : {4, 6, 9, 24, 60}) {
    const Piece piece = zipped(5, edge);
    const Fabric fabric = settle_closed(piece.plan, piece.sizes, piece.gauge, {}).value();
    for (const SettledBead& bead : fabric.beads) {
      const Vec3 next = at(fabric, {bead.cell.column, (bead.cell.step + 1) % edge}).shape.middle;
      EXPECT_NEAR(norm(next - bead.shape.middle), piece.gauge.edge.mm(), 1e-9);
    }
    const Fabric settled = settle(piece.plan, piece.sizes, piece.gauge).value();
    print_residual(fmt::format("5 x {} zipped round nothing", edge), settled);
    EXPECT_EQ(settled, fabric);
    EXPECT_EQ(settled.residual.worst_overlap, 0);
    EXPECT_LT(settled.residual.worst_link, 1e-9);
  }
}

// Round a form the thread is stretched by the strain that the fit tells, here on a circle where both are plain.
TEST(Closed, StretchedThreadIsTheStrain) {
  const form::Form round = form::parse_form("round:12x20").value();
  for (const int edge : {25, 26}) {
    const Piece piece = zipped(6, edge);
    const Fabric fabric = settle(piece.plan, piece.sizes, piece.gauge, round).value();
    EXPECT_EQ(fabric, settle_closed(piece.plan, piece.sizes, piece.gauge, round).value());
    const double radius = 6.8, gap = (piece.gauge.column - piece.sizes[0].length).mm();
    const double aside = 2 * radius * std::sin(std::numbers::pi / (2 * edge));
    const double natural = piece.gauge.edge.mm() / 2 / std::cos(std::numbers::pi / (2 * edge));
    const double stretched = std::hypot(gap, aside) / std::hypot(gap, natural) - 1;
    EXPECT_NEAR(fabric.residual.worst_link, std::max(0.0, stretched), 5e-3) << edge;
    const double strain = 2 * radius * std::sin(std::numbers::pi / edge) / piece.gauge.edge.mm() - 1;
    EXPECT_NEAR(stretched, strain, 1e-3);
  }
}

TEST(Closed, LargerBeadsStandOnTheForm) {
  const Piece piece = piece_of("peyote-even-count", 6, 24, {size_of("cylinder-11"), size_of("cylinder-10")},
                               {weave::Closure::zip}, [](Cell cell) {
                                 return chart::Bead(cell == Cell{3, 7});
                               });
  const form::Form round = form::parse_form("round:11x20").value();
  const Fabric fabric = settle_closed(piece.plan, piece.sizes, piece.gauge, round).value();
  const Obstacle rod = obstacle_of(round).value();
  for (const SettledBead& bead : fabric.beads)
    EXPECT_NEAR(rod(bead.shape.middle).distance_mm, bead.shape.radius_mm, 1e-9);
}

TEST(Closed, RefusesOpenAndRoundPieces) {
  const Piece open = flat_peyote(6, 24), round = tube(12, 5);
  EXPECT_EQ(settle_closed(open.plan, open.sizes, open.gauge, {}).problem().code, ProblemCode::wrong_size);
  EXPECT_EQ(settle_closed(round.plan, round.sizes, round.gauge, {}).problem().code, ProblemCode::wrong_size);
}

}  // namespace
}  // namespace evencount::fabric
