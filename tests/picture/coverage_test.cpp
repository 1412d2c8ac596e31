#include "picture/coverage.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <numbers>
#include <random>

namespace evencount::picture {
namespace {

using Random = std::mt19937;
using Polygon = std::vector<PicturePoint>;

double uniform(Random& random, double from, double to) {
  return from + (to - from) * (static_cast<double>(random()) / 4294967296.0);
}

double area_of(const Polygon& polygon) {
  double twice = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const PicturePoint &p = polygon[i], &q = polygon[(i + 1) % polygon.size()];
    twice += p.x * q.y - q.x * p.y;
  }
  return std::abs(twice) / 2;
}

/// What of a polygon has sign * x (or y) >= sign * at.
Polygon cut(const Polygon& polygon, bool by_x, double at, double sign) {
  Polygon left;
  const auto depth = [&](const PicturePoint& p) { return sign * ((by_x ? p.x : p.y) - at); };
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const PicturePoint &p = polygon[i], &q = polygon[(i + 1) % polygon.size()];
    if (depth(p) >= 0) left.push_back(p);
    if (depth(p) * depth(q) < 0) {
      const double share = depth(p) / (depth(p) - depth(q));
      left.push_back({p.x + share * (q.x - p.x), p.y + share * (q.y - p.y)});
    }
  }
  return left;
}

double area_within(const Quad& quad, double left, double top, double right, double bottom) {
  Polygon polygon(quad.begin(), quad.end());
  polygon = cut(cut(cut(cut(polygon, true, left, 1), true, right, -1), false, top, 1), false, bottom, -1);
  return area_of(polygon);
}

std::map<std::pair<int, int>, double> covered(CoverageRows& rows, const Quad& quad) {
  std::map<std::pair<int, int>, double> cover;
  for (rows.begin(quad); rows.next();)
    for (std::size_t i = 0; i < rows.coverage().size(); ++i)
      cover[{rows.first_x() + static_cast<int>(i), rows.y()}] += rows.coverage()[i];
  return cover;
}

/// A turned, stretched and perhaps mirrored rectangle that may stick out of the bounds.
Quad random_quad(Random& random) {
  const double x = uniform(random, -4, 24), y = uniform(random, -4, 19), a = uniform(random, 0.01, 12),
               b = uniform(random, 0.01, 12);
  const double angle =
      random() % 4 == 0 ? std::numbers::pi / 2 * static_cast<double>(random() % 4) : uniform(random, 0, 6.3);
  const double c = std::cos(angle), s = std::sin(angle), mirror = random() % 2 == 0 ? 1 : -1;
  return {{{x, y},
           {x + mirror * a * c, y + a * s},
           {x + mirror * (a * c - b * s), y + a * s + b * c},
           {x - mirror * b * s, y + b * c}}};
}

TEST(Coverage, IsTheCutAtEveryPixelsSides) {
  Random random(31);
  for (int round = 0; round < 3'000; ++round) {
    const PictureRectangle bounds{random() % 2 == 0 ? 0.0 : uniform(random, 0, 3),
                                  random() % 2 == 0 ? 0.0 : uniform(random, 0, 3),
                                  random() % 2 == 0 ? 17.0 : uniform(random, 0.2, 17),
                                  random() % 2 == 0 ? 12.0 : uniform(random, 0.2, 12)};
    CoverageRows rows(bounds);
    const Quad quad = random_quad(random);
    auto cover = covered(rows, quad);
    const double right = bounds.left + bounds.width, bottom = bounds.top + bounds.height;
    double sum = 0;
    for (int y = 0; y < 16; ++y)
      for (int x = 0; x < 21; ++x) {
        const double expected =
            area_within(quad, std::max<double>(x, bounds.left), std::max<double>(y, bounds.top),
                        std::min<double>(x + 1, right), std::min<double>(y + 1, bottom));
        const bool inside = x + 1 > bounds.left && x < right && y + 1 > bounds.top && y < bottom;
        const auto at = cover.find({x, y});
        ASSERT_NEAR(at == cover.end() ? 0 : at->second, inside ? expected : 0, 1e-12)
            << round << ": " << x << ", " << y;
        if (at != cover.end()) sum += at->second, cover.erase(at);
      }
    for (const auto& [place, share] : cover) ASSERT_NEAR(share, 0, 1e-12) << "outside the bounds";
    ASSERT_NEAR(sum, area_within(quad, bounds.left, bounds.top, right, bottom), 1e-11);
  }
}

TEST(Coverage, FiguresThatTileCoverEveryPixelOnce) {
  Random random(32);
  for (int round = 0; round < 50; ++round) {
    const double angle = uniform(random, 0, 6.3), c = std::cos(angle), s = std::sin(angle),
                 a = uniform(random, 0.3, 5), b = uniform(random, 0.3, 5);
    const auto corner = [&](int i, int j) {
      return PicturePoint{4 + i * a * c - j * b * s, 4 + i * a * s + j * b * c};
    };
    CoverageRows rows({0, 0, 8, 8});
    std::map<std::pair<int, int>, double> sum;
    for (int i = -45; i < 45; ++i)
      for (int j = -45; j < 45; ++j)
        for (const auto& [place, share] :
             covered(rows, {corner(i, j), corner(i + 1, j), corner(i + 1, j + 1), corner(i, j + 1)}))
          sum[place] += share;
    for (int y = 0; y < 8; ++y)
      for (int x = 0; x < 8; ++x) ASSERT_NEAR((sum[{x, y}]), 1, 1e-12);
  }
}

TEST(Coverage, FarOutsideIsNothing) {
  CoverageRows rows({0, 0, 5, 5});
  for (const double x : {-1e9, 1e9}) {
    double sum = 0;
    for (const auto& [place, share] : covered(rows, {{{x, 1}, {x + 1, 1}, {x + 1, 2}, {x, 2}}}))
      sum += std::abs(share);
    EXPECT_EQ(sum, 0);
  }
  double sum = 0;
  for (const auto& [place, share] : covered(rows, {{{-1e7, -1e7}, {1e7, -1e7}, {1e7, 1e7}, {-1e7, 1e7}}}))
    sum += share;
  EXPECT_NEAR(sum, 25, 1e-6);
}

}  // namespace
}  // namespace evencount::picture
