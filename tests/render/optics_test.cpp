#include "render/optics.hpp"

#include <gtest/gtest.h>

#include <random>

namespace evencount::render {
namespace {

// (1) Closed forms of any optics textbook.
TEST(Optics, GlassReflectsAsFresnelSays) {
  for (const double n : {1.33, 1.5, 1.515, 2.4}) {
    EXPECT_NEAR(fresnel(1, n), std::pow((n - 1) / (n + 1), 2), 1e-12);
    EXPECT_NEAR(fresnel(0, n), 1, 1e-6);
    // At Brewster's angle only light polarised across the plane is reflected, ((n^2 - 1) / (n^2 + 1))^2 of it.
    const double brewster = 1 / std::sqrt(1 + n * n);
    EXPECT_NEAR(fresnel(brewster, n), std::pow((n * n - 1) / (n * n + 1), 2) / 2, 1e-12);
  }
  EXPECT_NEAR(fresnel(1, 1.5), 0.04, 1e-12);
}

TEST(Optics, BothSidesReflectAlikeAlongOneRay) {
  for (double cosine = 0.05; cosine < 1; cosine += 0.05) {
    const double n = 1.515, within = std::sqrt(1 - (1 - cosine * cosine) / (n * n));
    EXPECT_NEAR(fresnel(cosine, n), fresnel(within, 1 / n), 1e-12);
  }
  EXPECT_EQ(fresnel(0.5, 1 / 1.515), 1);  // beyond the critical angle, whose cosine is 0.751
}

// (2) 0.0918 from outside and 0.596 from inside for n = 1.5 are the figures that are commonly quoted for glass (from memory).
TEST(Optics, MeanOverTheHemisphere) {
  EXPECT_NEAR(fresnel_mean(1.5), 0.0918, 5e-5);
  EXPECT_NEAR(1 - (1 - fresnel_mean(1.5)) / 2.25, 0.5964, 1e-4);
  for (const double n : {1.2, 1.5, 1.9}) {
    constexpr int steps = 20'000;
    double sum = 0;
    for (int i = 0; i < steps; ++i) sum += 2 * (i + 0.5) / steps * fresnel((i + 0.5) / steps, n) / steps;
    EXPECT_NEAR(fresnel_mean(n), sum, 1e-6);
  }
}

// (3)
TEST(Optics, FilmsThatAreNotThereChangeNothing) {
  for (double cosine = 0.1; cosine <= 1; cosine += 0.1)
    for (double nm = 400; nm <= 700; nm += 50) {
      EXPECT_NEAR(film_reflectance({2.2, 1.515, 0}, cosine, nm), fresnel(cosine, 1.515), 1e-9);
      EXPECT_NEAR(film_reflectance({1.515, 1.515, 300}, cosine, nm), fresnel(cosine, 1.515), 1e-9);
    }
}

TEST(Optics, QuarterAndHalfWaves) {
  // Magnesium fluoride (1.38) on glass (1.52), a quarter wave of 550 nm: 1.3 % instead of 4.3 % (E. Hecht, "Optics", from memory;
  // by closed form ((1.52 - 1.38^2) / (1.52 + 1.38^2))^2).
  EXPECT_NEAR(film_reflectance({1.38, 1.52, 550 / (4 * 1.38)}, 1, 550), 0.0126, 5e-5);
  // Zinc sulphide (2.35) on the same: 32 % by the same form.
  EXPECT_NEAR(film_reflectance({2.35, 1.52, 550 / (4 * 2.35)}, 1, 550),
              std::pow((1.52 - 5.5225) / (1.52 + 5.5225), 2), 1e-12);
  // A half wave is absent.
  EXPECT_NEAR(film_reflectance({2.35, 1.52, 550 / (2 * 2.35)}, 1, 550), fresnel(1, 1.52), 1e-12);
}

// (4)
TEST(Optics, ReflectanceIsBetweenNothingAndAll) {
  std::mt19937 random(4);
  std::uniform_real_distribution<double> share;
  for (int i = 0; i < 20'000; ++i) {
    const Film film{1.01 + 2 * share(random), 1.01 + 2 * share(random), 1000 * share(random)};
    const double r = film_reflectance(film, share(random), 380 + 400 * share(random));
    EXPECT_GE(r, -1e-12);
    EXPECT_LE(r, 1 + 1e-12);
  }
}

// (5)
TEST(Optics, GreyStaysGrey) {
  for (const double value : {0.0, 0.2, 1.0}) {
    const Spectrum s = film_colour([&](double) { return value; });
    for (int c = 0; c < 3; ++c) EXPECT_NEAR(s[c], value, 1e-12);
  }
  // White of D65 is at (0.3127, 0.3290) for the 2 degree observer (CIE 15); the observer here is a fit.
  EXPECT_NEAR(daylight().x, 0.3127, 0.003);
  EXPECT_NEAR(daylight().y, 0.3290, 0.003);
}

// The first colours of thin films by growing thickness: pale, straw yellow, purple, blue (the order of soap films and tempered steel; from memory).
TEST(Optics, ThinFilmsTakeTheirColoursInOrder) {
  const auto colour_at = [](double nm) { return film_colour({2.2, 1.515, nm}, 1); };
  const Spectrum straw = colour_at(95), blue = colour_at(145);
  EXPECT_GT(straw.r, straw.b);
  EXPECT_GT(blue.b, blue.r);
}

}  // namespace
}  // namespace evencount::render
