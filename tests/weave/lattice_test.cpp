#include "weave/lattice.hpp"

#include <gtest/gtest.h>

#include <set>
#include <tuple>

#include "random_band.hpp"
#include "weave/technique.hpp"

namespace evencount::weave {
namespace {

using namespace testing_support;

/// A lattice of every technique in a few sizes.
std::vector<Lattice> lattices() {
  std::vector<Lattice> all;
  for (const Technique& technique : techniques())
    for (const int columns : {1, 2, 3, 4, 6, 7, 9, 12})
      for (const int edge : {1, 2, 5, 7})
        if (technique.check_size(columns, edge)) all.push_back(technique.lattice(columns, edge));
  return all;
}

std::vector<Cell> cells_of(const Lattice& lattice) {
  std::vector<Cell> cells;
  for (int step = 0; step < lattice.edge; ++step)
    for (int column = 0; column < lattice.columns; ++column)
      if (lattice.holds_bead({column, step})) cells.push_back({column, step});
  return cells;
}

TEST(Lattice, BeadsHavePlacesOfTheirOwn) {
  for (const Lattice& lattice : lattices()) {
    std::set<std::tuple<int, int>> middles;
    for (const Cell cell : cells_of(lattice)) {
      const Spot middle = lattice.site(cell).middle;
      EXPECT_TRUE(middles.insert({middle.across, middle.along}).second) << cell.column << ", " << cell.step;
    }
  }
}

TEST(Lattice, BoxesLieApartAndWithinThePiece) {
  for (const Lattice& lattice : lattices()) {
    const auto cells = cells_of(lattice);
    const Box whole = extent(lattice);
    constexpr double rounding = 1e-9;
    EXPECT_EQ(std::pair(whole.across, whole.along), std::pair(0.0, 0.0));
    for (std::size_t i = 0; i < cells.size(); ++i) {
      const Box a = box_of(lattice, cells[i]);
      EXPECT_GE(a.across, -rounding);
      EXPECT_GE(a.along, -rounding);
      EXPECT_LE(a.across + a.width, whole.width + rounding);
      EXPECT_LE(a.along + a.height, whole.height + rounding);
      for (std::size_t j = i + 1; j < cells.size(); ++j) {
        const Box b = box_of(lattice, cells[j]);
        const double across = std::min(a.across + a.width, b.across + b.width) - std::max(a.across, b.across);
        const double along = std::min(a.along + a.height, b.along + b.height) - std::max(a.along, b.along);
        EXPECT_TRUE(across < rounding || along < rounding) << cells[i].column << ", " << cells[i].step;
      }
    }
  }
}

// There and back is nowhere, and a whole turn leads to the same place, risen on a spiral.
TEST(Lattice, TheWayBackIsTheWayThere) {
  Random random(15);
  for (const int rise : {0, 1, -1})
    for (const int columns : {1, 3, 4, 7}) {
      const Lattice tube{.columns = columns, .edge = 9, .round = true, .rise = rise};
      for (int trial = 0; trial < 500; ++trial) {
        const auto spot = [&] { return Spot{static_cast<int>(random() % 60) - 30, static_cast<int>(random() % 40) - 20}; };
        const Spot a = spot(), b = spot();
        const Spot there = apart(tube, a, b), back = apart(tube, b, a);
        EXPECT_LE(2 * there.across, tube.turn());
        EXPECT_GT(2 * there.across, -tube.turn());
        if (2 * there.across < tube.turn()) {  // half a turn is the same both ways
          EXPECT_EQ(there, (Spot{-back.across, -back.along}));
        }
        for (const int turns : {-2, -1, 1, 2})
          EXPECT_EQ(apart(tube, a, {b.across + turns * tube.turn(), b.along - turns * rise}), there);
      }
    }
}

TEST(Lattice, ABandsEndsMeet) {
  const Lattice band{.columns = 6, .edge = 10};
  EXPECT_EQ(apart(band, {0, 0}, {0, 19}, true), (Spot{0, -1}));
  EXPECT_EQ(apart(band, {0, 19}, {0, 0}, true), (Spot{0, 1}));
  EXPECT_EQ(apart(band, {0, 0}, {0, 19}), (Spot{0, 19}));
}

}  // namespace
}  // namespace evencount::weave
