#include "render/microfacet.hpp"

#include <gtest/gtest.h>

#include "render/sampling.hpp"

namespace evencount::render {
namespace {

/// The integral of f over the upper hemisphere, by points that are closer where the distribution is.
template <typename Function>
double over_hemisphere(Function f) {
  constexpr int rings = 4000, turns = 64;
  double sum = 0;
  for (int i = 0; i < rings; ++i)
    for (int k = 0; k < turns; ++k) {
      const double share = (i + 0.5) / rings,
                   angle = std::numbers::pi / 2 * share * share;  // closer to the normal
      const double turn = 2 * std::numbers::pi * (k + 0.5) / turns;
      const double weight =
          std::sin(angle) * std::numbers::pi / 2 * 2 * share / rings * 2 * std::numbers::pi / turns;
      sum += weight *
             f(Vec3{std::sin(angle) * std::cos(turn), std::sin(angle) * std::sin(turn), std::cos(angle)});
    }
  return sum;
}

Vec3 under(double angle) {
  return {std::sin(angle), 0, std::cos(angle)};
}

// (1), (2)
TEST(Microfacet, MirrorsFillTheSurfaceAndTheView) {
  for (const double alpha : {0.05, 0.2, 0.5, 1.0}) {
    EXPECT_NEAR(over_hemisphere([&](Vec3 h) { return ggx(h, alpha) * h.z; }), 1, 5e-3) << alpha;
    for (const double angle : {0.0, 0.6, 1.2, 1.45})
      EXPECT_NEAR(over_hemisphere([&](Vec3 h) { return visible_density(under(angle), h, alpha); }), 1, 1.5e-2)
          << alpha << " " << angle;
  }
}

// (3)
TEST(Microfacet, SampledNormalsHaveTheirDensity) {
  for (const double alpha : {0.2, 0.6})
    for (const double angle : {0.1, 0.9, 1.4}) {
      const Vec3 out = under(angle);
      double x = 0, z = 0;
      constexpr std::uint32_t points = 16'384;
      for (std::uint32_t i = 0; i < points; ++i) {
        const Four at = spread_point(0, i, 0, 3);
        const Vec3 h = sample_visible(out, alpha, at[0], at[1]);
        EXPECT_NEAR(norm(h), 1, 1e-9);
        x += h.x / points, z += h.z / points;
      }
      EXPECT_NEAR(x, over_hemisphere([&](Vec3 h) { return h.x * visible_density(out, h, alpha); }), 5e-3);
      EXPECT_NEAR(z, over_hemisphere([&](Vec3 h) { return h.z * visible_density(out, h, alpha); }), 5e-3);
    }
}

}  // namespace
}  // namespace evencount::render
