#include "render/surface.hpp"

#include <gtest/gtest.h>

#include <numbers>
#include <random>

#include "render/finishes.hpp"
#include "render/microfacet.hpp"

namespace evencount::render {
namespace {

Vec3 under(double cosine, double turn = 0.3) {
  const double sine = std::sqrt(1 - cosine * cosine);
  return {sine * std::cos(turn), sine * std::sin(turn), cosine};
}

/// Light thrown back of even light from everywhere, by bouncing.
Spectrum thrown_back(const Surface& s, double cosine, double film) {
  constexpr std::uint32_t points = 4096;
  Spectrum sum;
  for (std::uint32_t i = 0; i < points; ++i)
    if (const auto b = bounce(s, under(cosine), film, false, spread_point(7, i, 1, 2)))
      sum += (1.0 / points) * b->weight;
  return sum;
}

AngleTable rainbow_mirror() {
  return AngleTable(8, [](double cosine, int row) {
    return film_colour(Film{2.2, bead_glass, 200.0 + 30 * row}, cosine);
  });
}

// (1)
TEST(Surface, WhiteFurnace) {
  std::vector<Surface> lossless{plain(grey(1)), glass({})};
  for (const double alpha : {0.02, 0.1, 0.45, 1.0}) {
    lossless.push_back(coated(grey(1), alpha, glass_mirror(bead_glass)));
    lossless.push_back(coated(grey(1), alpha, rainbow_mirror()));
    lossless.push_back(metal(grey(1), alpha));
  }
  for (const Surface& s : lossless)
    for (const double cosine : {1.0, 0.7, 0.3, 0.1})
      for (const double film : {0.1, 0.8}) {
        const Spectrum back = thrown_back(s, cosine, film);
        for (int c = 0; c < 3; ++c)
          EXPECT_NEAR(back[c], 1, 1e-2) << static_cast<int>(s.make) << " " << s.alpha << " " << cosine;
      }
}

Surface random_surface(std::mt19937& random) {
  std::uniform_real_distribution<double> share;
  const Spectrum base{share(random), share(random), share(random)};
  const double alpha = 0.02 + 0.98 * share(random);
  switch (random() % 4) {
    case 0:
      return plain(base);
    case 1:
      return metal(base, alpha, share(random));
    case 2: {
      const double density = 1.05 + share(random), nm = 600 * share(random);
      return coated(base, alpha, AngleTable(3, [&](double cosine, int row) {
                      return film_colour(Film{density, bead_glass, nm + 40 * row}, cosine);
                    }));
    }
    default:
      return coated(base, alpha, glass_mirror(1.05 + share(random), share(random)));
  }
}

// (2)
TEST(Surface, NothingIsGained) {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> share;
  for (int i = 0; i < 150; ++i) {
    const Surface s = random_surface(random);
    const double cosine = 0.05 + 0.95 * share(random), film = share(random);
    const Spectrum back = thrown_back(s, cosine, film), table = albedo(s, cosine, film);
    for (int c = 0; c < 3; ++c) {
      EXPECT_LE(back[c], 1 + 1e-2);
      EXPECT_NEAR(back[c], table[c], 0.012) << static_cast<int>(s.make) << " " << s.alpha << " " << cosine;
    }
  }
}

// (3)
TEST(Surface, LightGoesBothWaysAlike) {
  std::mt19937 random(12);
  std::uniform_real_distribution<double> share;
  for (int i = 0; i < 2000; ++i) {
    const Surface s = random_surface(random);
    const Vec3 a = under(0.05 + 0.95 * share(random), 6 * share(random)),
               b = under(0.05 + 0.95 * share(random), 6 * share(random));
    const double film = share(random);
    const Spectrum there = (1 / b.z) * reflected(s, a, b, film), back = (1 / a.z) * reflected(s, b, a, film);
    for (int c = 0; c < 3; ++c) EXPECT_NEAR(there[c], back[c], 1e-9 * (1 + std::abs(there[c])));
  }
}

// (4)
TEST(Surface, BouncesHaveTheirDensity) {
  std::mt19937 random(13);
  std::uniform_real_distribution<double> share;
  for (int i = 0; i < 60; ++i) {
    const Surface s = random_surface(random);
    const Vec3 out = under(0.1 + 0.9 * share(random));
    double density = 0;
    constexpr std::uint32_t points = 8192;
    for (std::uint32_t k = 0; k < points; ++k) {
      const Four at = spread_point(3, k, 4, 5);
      if (const auto b = bounce(s, out, 0.5, false, at)) {
        const Spectrum value = reflected(s, out, b->towards, 0.5);
        EXPECT_NEAR(b->density, density_of(s, out, b->towards, 0.5), 1e-9 * b->density);
        for (int c = 0; c < 3; ++c) EXPECT_NEAR(b->weight[c] * b->density, value[c], 1e-9 * (1 + value[c]));
      }
      // Even directions over the upper half: the mean of 2 pi x density. Mirrors throw some below, so it is 1 or less.
      const double z = at[0], turn = 2 * std::numbers::pi * at[1];
      density += 2 * std::numbers::pi / points * density_of(s, out, under(z, turn), 0.5);
    }
    if (s.alpha > 0.2) {
      EXPECT_LE(density, 1.03);
    }
    if (s.alpha > 0.2) {
      EXPECT_GT(density, 0.5);
    }
  }
}

// (5)
TEST(Surface, GlassBendsAsSnellSays) {
  const Surface s = glass({});
  for (const bool within : {false, true})
    for (double cosine = 0.05; cosine < 1; cosine += 0.1) {
      const Vec3 out = under(cosine);
      const double ratio = within ? 1 / s.density : s.density;
      constexpr std::uint32_t points = 4096;
      double reflected_share = 0;
      for (std::uint32_t i = 0; i < points; ++i) {
        const auto b = bounce(s, out, 0, within, spread_point(1, i, 1, 1));
        ASSERT_TRUE(b);
        EXPECT_NEAR(norm(b->towards), 1, 1e-12);
        if (b->towards.z > 0) {
          reflected_share += 1.0 / points;
        } else {
          EXPECT_NEAR(ratio * std::hypot(b->towards.x, b->towards.y), std::hypot(out.x, out.y), 1e-12);
        }
      }
      EXPECT_NEAR(reflected_share, fresnel(cosine, ratio), 1e-3);
    }
}

}  // namespace
}  // namespace evencount::render
