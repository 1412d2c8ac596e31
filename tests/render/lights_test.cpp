#include "render/lights.hpp"

#include <gtest/gtest.h>

#include <numbers>
#include <random>

namespace evencount::render {
namespace {

using std::numbers::pi;

// (1)
TEST(Lights, PaperOnTheTableIsWhite) {
  EXPECT_NEAR(light_on_table({}).g, pi, 1e-12);
  for (const LightPreset preset : {LightPreset::tent, LightPreset::window})
    for (const double turn : {0.0, 1.0, -2.0}) {
      const Lights lights = lights_of(preset, 40, turn);
      // By looking everywhere instead of by the boxes.
      Spectrum sum;
      constexpr std::uint32_t points = 65'536;
      for (std::uint32_t i = 0; i < points; ++i) {
        const Four at = spread_point(0, i, 0, 1);
        const Ray ray{{}, cosine_direction(at[0], at[1])};
        Spectrum seen = radiance_of(lights.dome, ray.towards);
        for (const SoftBox& box : lights.boxes)
          if (meet(box, ray)) seen = box.radiance;
        sum += pi / points * seen;
      }
      for (int c = 0; c < 3; ++c) EXPECT_NEAR(sum[c], pi, 5e-3 * pi) << light_name(preset);
      EXPECT_EQ(parse_light(light_name(preset)).value(), preset);
    }
  EXPECT_EQ(parse_light("candle").problem().code, ProblemCode::unknown_name);
}

// (2), (3)
TEST(Lights, BoxesAreAimedAtWithTheirDensity) {
  std::mt19937 random(5);
  std::uniform_real_distribution<double> share(-1, 1);
  const SoftBox box = lights_of(LightPreset::window, 40).boxes.front();
  for (int i = 0; i < 20; ++i) {
    const Vec3 from{30 * share(random), 30 * share(random), 10 * share(random)};
    double solid_angle = 0, by_density = 0;
    constexpr std::uint32_t points = 16'384;
    for (std::uint32_t k = 0; k < points; ++k) {
      const Four at = spread_point(0, k, 0, 2);
      const LightSample s = sample_box(box, from, at[0], at[1]);
      const auto met = meet(box, {from, s.towards});
      ASSERT_TRUE(met);
      EXPECT_NEAR(*met, s.distance_mm, 1e-9 * s.distance_mm);
      EXPECT_NEAR(box_density(box, s.towards, s.distance_mm), s.density, 1e-12 * s.density);
      solid_angle += 1 / s.density / points;
      const double z = 2 * at[2] - 1, r = std::sqrt(1 - z * z), turn = 2 * pi * at[3];
      const Vec3 towards{r * std::cos(turn), r * std::sin(turn), z};
      if (const auto t = meet(box, {from, towards}))
        by_density += 4 * pi / points * box_density(box, towards, *t);
    }
    EXPECT_NEAR(by_density, 1, 0.06);
    EXPECT_GT(solid_angle, 0.1);
  }
  EXPECT_EQ(sample_box(box, 3 * box.middle, 0.5, 0.5).density, 0);  // from behind
}

// (4)
TEST(Lights, SpreadOutABoxGivesAsMuchLight) {
  for (const SoftBox& box : lights_of(LightPreset::tent, 40).boxes) {
    const SoftBox spread = spread_out(box, 2);
    EXPECT_LE(largest(spread.radiance), 2 + 1e-12);
    const double area = norm(cross(box.side_x, box.side_y)),
                 wider = norm(cross(spread.side_x, spread.side_y));
    EXPECT_NEAR(wider * spread.radiance.g, area * box.radiance.g, 1e-9 * area);
    EXPECT_EQ(spread.middle, box.middle);
    EXPECT_EQ(spread_out(box, 1e6).radiance, box.radiance);
    Lights one{.boxes = {box}}, other{.boxes = {spread}};
    one.dome = other.dome = {grey(0), grey(0), grey(0)};
    EXPECT_NEAR(light_on_table(other).g, light_on_table(one).g, 0.05 * light_on_table(one).g);
  }
}

}  // namespace
}  // namespace evencount::render
