#include "picture/viewing.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "colour/difference.hpp"
#include "oracle/viewing_oracle.hpp"
#include "pictures.hpp"

namespace evencount::picture {
namespace {

using colour::Linear;

std::vector<Linear> random_light(Random& random, int count) {
  std::vector<Linear> light;
  for (const colour::Rgb cell : random_cells(random, count)) light.push_back(colour::to_linear(cell));
  return light;
}

CellLattice random_lattice(Random& random, int most) {
  constexpr std::array lengths{0.25, 0.7, 1.0, 1.0, 1.23, 4.0};
  return {1 + pick(random, most),
          1 + pick(random, most),
          {pick(random, 4), pick(random, 2) == 0, pick(random, 2) == 0},
          lengths[static_cast<std::size_t>(pick(random, 6))]};
}

void expect_near(const Linear& a, const Linear& b, double tolerance) {
  EXPECT_NEAR(a.red, b.red, tolerance);
  EXPECT_NEAR(a.green, b.green, tolerance);
  EXPECT_NEAR(a.blue, b.blue, tolerance);
}

TEST(CellLattice, CellsAndNeighboursAreTheChartsOwn) {
  Random random(1);
  for (int trial = 0; trial < 100; ++trial) {
    const CellLattice lattice = random_lattice(random, 7);
    const chart::Chart chart = chart::Chart::make(lattice.columns, lattice.edge).value();
    const Neighbours neighbours(lattice);
    for (int cell = 0; cell < lattice.cells(); ++cell) {
      const chart::Cell at{cell % lattice.columns, cell / lattice.columns};
      EXPECT_EQ(lattice.cell_at(at.column, lattice.grid.along_halves(at)), cell);
      EXPECT_EQ(lattice.cell_at(at.column, lattice.grid.along_halves(at) + 1), -1);
      std::vector<int> expected;
      for (const chart::Cell near : chart::neighbours(chart, lattice.grid, at))
        expected.push_back(near.step * lattice.columns + near.column);
      const auto touching = neighbours.of(cell);
      EXPECT_EQ(std::vector<int>(touching.begin(), touching.end()), expected);
    }
  }
  const CellLattice band{4, 6, {1, true, false}};
  EXPECT_EQ(band.cell_at(0, 12), 0);
  EXPECT_EQ(band.cell_at(1, -1), 5 * 4 + 1);
  EXPECT_EQ(band.cell_at(-1, 1), -1);
}

TEST(Viewing, OneColourLooksLikeItself) {
  Random random(2);
  for (int trial = 0; trial < 60; ++trial) {
    const CellLattice lattice = random_lattice(random, 12);
    const Linear one = random_light(random, 1).front();
    const std::vector<Linear> light(static_cast<std::size_t>(lattice.cells()), one);
    for (const Linear& seen : Viewing::make(lattice).value().blurred(light)) expect_near(seen, one, 1e-14);
  }
}

TEST(Viewing, IsTheSumOverAllPairs) {
  Random random(3);
  for (int trial = 0; trial < 60; ++trial) {
    SCOPED_TRACE(trial);
    const CellLattice lattice = random_lattice(random, 11);
    const auto light = random_light(random, lattice.cells());
    const auto seen = Viewing::make(lattice).value().blurred(light);
    const auto expected = oracle::blurred(lattice, light);
    for (std::size_t cell = 0; cell < seen.size(); ++cell) expect_near(seen[cell], expected[cell], 1e-13);
  }
}

// What a search relies on: each near cell is visited once, and as near from the other side.
TEST(Viewing, WeightsAreTheSameBothWays) {
  Random random(4);
  for (int trial = 0; trial < 40; ++trial) {
    const CellLattice lattice = random_lattice(random, 9);
    const Viewing viewing = Viewing::make(lattice).value();
    const auto size = static_cast<std::size_t>(lattice.cells());
    std::vector<std::vector<double>> weights(size, std::vector<double>(size, 0));
    for (std::size_t cell = 0; cell < size; ++cell)
      viewing.visit_near(static_cast<int>(cell), [&](int other, double weight) {
        EXPECT_EQ(weights[cell][static_cast<std::size_t>(other)], 0);
        weights[cell][static_cast<std::size_t>(other)] = weight;
      });
    for (std::size_t a = 0; a < size; ++a)
      for (std::size_t b = 0; b < a; ++b) EXPECT_NEAR(weights[a][b], weights[b][a], 1e-15);
  }
}

TEST(Viewing, TheSameUpsideDown) {
  Random random(5);
  const CellLattice lattice{9, 14, {.drop = 0}};
  auto light = random_light(random, lattice.cells());
  const Viewing viewing = Viewing::make(lattice).value();
  auto seen = viewing.blurred(light);
  std::reverse(light.begin(), light.end());
  const auto turned = viewing.blurred(light);
  std::reverse(seen.begin(), seen.end());
  for (std::size_t cell = 0; cell < seen.size(); ++cell) expect_near(turned[cell], seen[cell], 1e-13);
}

TEST(Viewing, TheSameWhereverAClosedBandBegins) {
  Random random(6);
  const CellLattice lattice{7, 10, {.drop = 1, .edge_round = true}};
  auto light = random_light(random, lattice.cells());
  const Viewing viewing = Viewing::make(lattice).value();
  auto seen = viewing.blurred(light);
  std::rotate(light.begin(), light.begin() + 3 * lattice.columns, light.end());
  const auto turned = viewing.blurred(light);
  std::rotate(seen.begin(), seen.begin() + 3 * lattice.columns, seen.end());
  for (std::size_t cell = 0; cell < seen.size(); ++cell) expect_near(turned[cell], seen[cell], 1e-13);
}

// One white cell in the dark, far from the borders: the Gaussian itself.
TEST(Viewing, OneCellSpreadsAsAGaussian) {
  const CellLattice lattice{15, 15, {.drop = 1}};
  std::vector<Linear> light(static_cast<std::size_t>(lattice.cells()));
  const int middle = 7 * 15 + 7;
  light[static_cast<std::size_t>(middle)] = {1, 1, 1};
  const auto seen = Viewing::make(lattice).value().blurred(light);
  const auto at = [&](int column, int step) {
    return seen[static_cast<std::size_t>(step * 15 + column)].red;
  };
  EXPECT_NEAR(at(7, 7), 1 / (2 * 3.14159265358979 * (1 - std::exp(-4.5))), 0.002);
  EXPECT_NEAR(at(7, 8) / at(7, 7), std::exp(-0.5), 1e-13);
  EXPECT_NEAR(at(8, 7) / at(7, 7), std::exp(-0.625), 1e-13);  // one column and half a step away
  EXPECT_NEAR(at(8, 8) / at(7, 7), std::exp(-0.625), 1e-13);
  EXPECT_NEAR(at(5, 7) / at(7, 7), std::exp(-2.0), 1e-13);
  EXPECT_EQ(at(7, 11), 0);
}

TEST(ViewingDifference, OfEqualChartsIsNothing) {
  Random random(7);
  const CellLattice lattice{12, 9, {.drop = 1}};
  const auto cells = random_cells(random, lattice.cells());
  const ViewingDifference difference = viewing_difference(lattice, cells, cells).value();
  EXPECT_EQ(difference.mean, 0);
  EXPECT_EQ(difference.of_cell, std::vector<double>(cells.size(), 0));
}

// Columns of red and green in turn look like the mixture of their light from afar, though each is far from it.
TEST(ViewingDifference, MixesLight) {
  const CellLattice lattice{20, 20, {.drop = 1}};
  const colour::Rgb red{200, 0, 0}, green{0, 200, 0}, both = colour::mix(red, green, 0.5);
  std::vector<colour::Rgb> striped;
  for (int cell = 0; cell < lattice.cells(); ++cell) striped.push_back(cell % 2 == 0 ? red : green);
  const std::vector<colour::Rgb> mixed(striped.size(), both);
  const ViewingDifference difference = viewing_difference(lattice, mixed, striped).value();
  EXPECT_LT(difference.of_cell[10 * 20 + 10], 1.0);
  EXPECT_GT(colour::ciede2000(colour::to_lab_d65(both), colour::to_lab_d65(red)), 30);
}

TEST(ViewingDifference, RefusesWhatDoesNotFit) {
  const std::vector<colour::Rgb> six(6), five(5);
  EXPECT_EQ(viewing_difference({2, 3}, six, five).problem().code, ProblemCode::wrong_size);
  EXPECT_EQ(viewing_difference({2, 3}, five, six).problem().code, ProblemCode::wrong_size);
  EXPECT_EQ(viewing_difference({0, 3}, {}, {}).problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(viewing_difference({2, 3, {.drop = -1}}, six, six).problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(viewing_difference({2, 3, {}, 0.2}, six, six).problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(viewing_difference({2, 3, {}, std::nan("")}, six, six).problem().code, ProblemCode::out_of_range);
}

}  // namespace
}  // namespace evencount::picture
