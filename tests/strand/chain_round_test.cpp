#include "strand/chain_round.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "random_runs.hpp"
#include "strand/wearer.hpp"

namespace evencount::strand {
namespace {

using std::numbers::pi;

std::vector<Length> equal_links(int count, double mm) {
  return std::vector<Length>(static_cast<std::size_t>(count), millimetres(mm));
}
double sum_mm(const std::vector<Length>& links) {
  double sum = 0;
  for (const Length link : links) sum += link.mm();
  return sum;
}

std::vector<Length> random_links(Random& random) {
  std::vector<Length> links;
  for (int i = 8 + pick(random, 50); i > 0; --i)
    links.push_back(millimetres(pick(random, 4) == 0 ? 5 + pick(random, 14) : 1 + 0.1 * pick(random, 30)));
  return links;
}

TEST(ChainRound, RegularPolygonRoundCircle) {
  for (const int n : {3, 4, 5, 8, 13, 30, 100}) {
    for (const double thickness : {0.0, 3.0}) {
      const double link = 200.0 / n;
      const auto chain = chain_round(equal_links(n, link), millimetres(thickness), 1);
      ASSERT_TRUE(chain) << n;
      const double expected = pi * (link / std::tan(pi / n) - thickness);
      EXPECT_NEAR(chain->girth.mm(), expected, 1e-4 * expected) << n;
    }
  }
}

TEST(ChainRound, NeverShorterThanTheFormula) {
  Random random(7);
  for (int i = 0; i < 60; ++i) {
    const auto links = random_links(random);
    const Length thickness = millimetres(0.5 * pick(random, 18)), sum = millimetres(sum_mm(links));
    const auto chain = chain_round(links, thickness, 1 + 0.1 * pick(random, 6));
    if (!chain) continue;
    EXPECT_LE(chain->girth, inside_of(sum, thickness));
  }
}

TEST(ChainRound, TendsToTheFormulaWithSmallerLinks) {
  Random random(8);
  for (int i = 0; i < 5; ++i) {
    auto links = random_links(random);
    const Length thickness = millimetres(4);
    const Length smooth = inside_of(millimetres(sum_mm(links)), thickness);
    double before = 0;
    for (int halvings = 0; halvings < 4; ++halvings) {
      const double lost = (smooth - chain_round(links, thickness, 1.4).value().girth).mm();
      EXPECT_GT(lost, 0);
      if (halvings > 0) {
        EXPECT_LT(lost, 0.6 * before);
      }
      before = lost;
      std::vector<Length> finer;
      for (const Length link : links) finer.insert(finer.end(), 2, link / 2);
      links = finer;
    }
    EXPECT_LT(before, 5e-3 * smooth.mm());
  }
}

TEST(ChainRound, LinksKeepTheirLengthsAndTheirDistance) {
  Random random(9);
  int looked = 0;
  for (int i = 0; i < 40; ++i) {
    const auto links = random_links(random);
    const double thickness = 0.5 * pick(random, 18);
    const auto chain = chain_round(links, millimetres(thickness), 1.4);
    if (!chain) continue;
    ++looked;
    const double a = chain->half_width.mm(), b = chain->half_height.mm();
    const auto& joints = chain->joints;
    ASSERT_EQ(joints.size(), links.size());
    for (std::size_t k = 0; k < joints.size(); ++k) {
      const form::Point from = joints[k], to = joints[(k + 1) % joints.size()];
      EXPECT_NEAR(distance(from, to), links[k].mm(), 1e-5);
      // Every point of it is half the thickness from the ellipse: beyond the ellipse's tangent in some direction.
      for (double share = 0; share <= 1; share += 0.25) {
        const form::Point p = from + share * (to - from);
        double beyond = -1e9;
        for (double angle = 0; angle < 2 * pi; angle += 0.001)
          beyond = std::max(beyond, p.x_mm * std::cos(angle) + p.y_mm * std::sin(angle) -
                                        std::hypot(a * std::cos(angle), b * std::sin(angle)));
        EXPECT_GE(beyond, thickness / 2 - 1e-3);
      }
    }
  }
  EXPECT_GT(looked, 20);
}

// A long link that touches at its middle loses 2 (L/2 - r atan(L / 2r)) of the circle it lies on, docs/algorithms/strand.md; where
// beads enough stand between the long ones to lead them there, not much more is lost.
TEST(ChainRound, LongLinksTouchAboutAtTheirMiddle) {
  for (const double ratio : {1.0, 1.3, 1.6})
    for (const double tube : {9.0, 16.0, 20.0}) {
      std::vector<Length> links;
      for (int i = 0; i < 8; ++i) {
        links.push_back(millimetres(tube));
        for (int k = 0; k < 9; ++k) links.push_back(millimetres(2.3));
      }
      const Length smooth = inside_of(millimetres(sum_mm(links)), millimetres(5));
      const double r = smooth.mm() / (2 * pi) + 2.5;
      double ideal = 0;
      for (const Length link : links) ideal += link.mm() - 2 * r * std::atan(link.mm() / (2 * r));
      const double lost = (smooth - chain_round(links, millimetres(5), ratio)->girth).mm();
      EXPECT_GT(lost, 0.9 * ideal) << ratio << " " << tube;
      EXPECT_LT(lost, 3 * ideal) << ratio << " " << tube;
    }
}

// A link longer than all others together reaches round nothing, however much room the formula leaves.
TEST(ChainRound, ALinkTooLongClosesRoundNothing) {
  for (const double longest : {3.1, 5.0, 100.0}) {
    const auto chain = chain_round(std::vector<Length>{millimetres(1), millimetres(1), millimetres(longest), millimetres(1)}, {}, 1);
    ASSERT_FALSE(chain) << longest;
    EXPECT_EQ(chain.problem().code, ProblemCode::cannot_close);
  }
}

TEST(ChainRound, ScalesAndRefuses) {
  Random random(10);
  auto links = random_links(random);
  const Length girth = chain_round(links, millimetres(5), 1.3)->girth;
  for (Length& link : links) link = 3 * link;
  EXPECT_NEAR(chain_round(links, millimetres(15), 1.3)->girth / girth, 3, 1e-6);
  EXPECT_EQ(chain_round(equal_links(2, 80), {}, 1).problem().code, ProblemCode::too_few_beads);
  EXPECT_EQ(chain_round(equal_links(9, 0), {}, 1).problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(chain_round(equal_links(9, 1), millimetres(-1), 1).problem().code, ProblemCode::out_of_range);
  for (const double ratio : {0.0, 0.1, 10.0})
    EXPECT_EQ(chain_round(equal_links(9, 1), {}, ratio).problem().code, ProblemCode::out_of_range) << ratio;
  EXPECT_EQ(chain_round(equal_links(9, 1), millimetres(3), 1).problem().code, ProblemCode::cannot_close);
}

}  // namespace
}  // namespace evencount::strand
