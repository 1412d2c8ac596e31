#include "picture/bead_colour.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <random>

#include "colour/difference.hpp"
#include "files.hpp"
#include "picture/decode.hpp"

namespace evencount::picture {
namespace {

using Random = std::mt19937;
using Triple = std::array<double, 3>;

double uniform(Random& random, double from, double to) {
  return from + (to - from) * (static_cast<double>(random()) / 4294967296.0);
}

/// Box and Muller's: the same on every machine, but for the last bits.
double normal(Random& random) {
  const double a = 1 - uniform(random, 0, 1), b = uniform(random, 0, 1);
  return std::sqrt(-2 * std::log(a)) * std::cos(2 * std::numbers::pi * b);
}

/// A photograph with a card on the left and a bead on the right.
struct Scene {
  Triple bead{0.3, 0.1, 0.2};
  double card = white_card;
  Triple light{0.9, 0.9, 0.9};  ///< of a perfect white in the file
  double noise = 1;             ///< 1: about a telephone's indoors
  double highlight = 0;         ///< radius of its middle, of the bead's
  double shadow = 0;            ///< share of the bead's height
  double shade = 0.06;          ///< how much the bead's light rises and falls
  double slope = 0;             ///< how much more light there is on the right of the card than on its left
  int bead_side = 26;
  int bits = 8;
};

constexpr PictureRectangle card_place{4, 4, 40, 40};
PictureRectangle bead_place(const Scene& scene) {
  return {60, 6, double(scene.bead_side), double(scene.bead_side)};
}

double reflected(const Scene& scene, int x, int y, std::size_t channel) {
  if (x >= 2 && x < 46 && y >= 2 && y < 46) return scene.card * (1 + scene.slope * (x - 24) / 40.0);
  const double u = (x - 60 + 0.5) / scene.bead_side - 0.5, v = (y - 6 + 0.5) / scene.bead_side - 0.5;
  if (std::abs(u) > 0.55 || std::abs(v) > 0.55) return 0.4;
  double body = scene.bead[channel] * (1 + scene.shade * std::sin(2 * std::numbers::pi * u));
  if (v > 0.5 - scene.shadow) body *= 0.15;
  const double far = std::hypot(u + 0.15, v + 0.2) / (0.5 * std::max(scene.highlight, 1e-9));
  return body + 1.5 * std::exp(-far * far);  // a lamp seen in the glass: the light's colour, not the bead's
}

Image photograph(const Scene& scene, Random& random, Numbers* file = nullptr) {
  Image image{100, 50, {}};
  image.bits = scene.bits;
  const double most = scene.bits == 8 ? 255 : 65535;
  Numbers numbers{100, 50, 3, scene.bits, {}};
  for (int y = 0; y < 50; ++y)
    for (int x = 0; x < 100; ++x) {
      const bool looked_at = x < 50 || (x >= 58 && x < 98 && y < 44);
      if (!looked_at) {
        image.pixels.push_back({0.4F, 0.4F, 0.4F, 1});
        for (int i = 0; i < 3; ++i) numbers.values.push_back(static_cast<std::uint16_t>(most / 2));
        continue;
      }
      Triple seen{};
      for (std::size_t channel = 0; channel < 3; ++channel) {
        const double light = scene.light[channel] * reflected(scene, x, y, channel);
        // Photons' noise goes with the root of the light; 3 % at a grey card.
        const double noisy = light + scene.noise * std::sqrt(1.6e-4 * light + 4e-6) * normal(random);
        const double encoded = std::clamp(colour::to_encoded(colour::Linear{noisy, 0, 0}).red, 0.0, 1.0);
        const double number = std::round(most * encoded);
        numbers.values.push_back(static_cast<std::uint16_t>(number));
        seen[channel] = colour::to_linear(colour::Encoded{number / most, 0, 0}).red;
      }
      image.pixels.push_back(
          {static_cast<float>(seen[0]), static_cast<float>(seen[1]), static_cast<float>(seen[2]), 1});
    }
  if (file != nullptr) *file = numbers;
  return image;
}

Result<BeadColour> measured(const Scene& scene, Random& random) {
  return measure_bead(photograph(scene, random), card_place, scene.card, bead_place(scene));
}

colour::LabD65 truth(const Scene& scene) {
  return colour::to_lab_d65(colour::Linear{scene.bead[0], scene.bead[1], scene.bead[2]});
}

Scene random_scene(Random& random) {
  Scene scene;
  scene.card = random() % 2 == 0 ? white_card : grey_card;
  for (double& channel : scene.bead)
    channel = random() % 4 == 0 ? uniform(random, 0.02, 0.1) : uniform(random, 0.05, 0.85);
  // Exposed so that neither the card nor the bead is clipped.
  const double most = std::max(scene.card, 1.2 * *std::max_element(scene.bead.begin(), scene.bead.end()));
  const double brightest = uniform(random, 0.4, 0.9) / most;
  for (double& channel : scene.light) channel = brightest / uniform(random, 1, 2.5);
  scene.noise = uniform(random, 0.2, 1.5);
  scene.highlight = random() % 2 == 0 ? uniform(random, 0.1, 0.4) : 0;
  scene.shadow = random() % 2 == 0 ? uniform(random, 0.05, 0.2) : 0;
  scene.shade = uniform(random, 0, 0.1);
  scene.bead_side = 10 + static_cast<int>(random() % 25);
  scene.bits = random() % 4 == 0 ? 16 : 8;
  return scene;
}

TEST(BeadColour, TheTruthIsWithinTheUncertainty) {
  Random random(71);
  std::vector<double> uncertainties, shares;
  int within = 0;
  constexpr int rounds = 200;
  for (int round = 0; round < rounds; ++round) {
    const Scene scene = random_scene(random);
    const auto bead = measured(scene, random);
    ASSERT_TRUE(bead.ok()) << round << ": " << message(bead.problem());
    const double error = colour::ciede2000(truth(scene), bead->lab);
    within += error <= bead->uncertainty ? 1 : 0;
    uncertainties.push_back(bead->uncertainty), shares.push_back(error / bead->uncertainty);
  }
  EXPECT_GE(within, rounds * 95 / 100);
  std::sort(uncertainties.begin(), uncertainties.end());
  std::sort(shares.begin(), shares.end());
  // An uncertainty so wide that it says nothing would pass the first. Measured: 0.7, 1.4 and 0.19.
  EXPECT_LE(uncertainties[rounds / 2], 1.0);
  EXPECT_LE(uncertainties[rounds * 9 / 10], 2.0);
  EXPECT_GE(shares[rounds / 2], 0.12);
}

TEST(BeadColour, CastAndExposureHardlyMatter) {
  Random random(72);
  for (int round = 0; round < 25; ++round) {
    Scene scene = random_scene(random);
    scene.noise = 0.5;
    const double most = std::max(scene.card, 1.2 * *std::max_element(scene.bead.begin(), scene.bead.end()));
    scene.light = {0.85 / most, 0.85 / most, 0.85 / most};
    const auto neutral = measured(scene, random);
    scene.light = {0.8 / most, 0.5 / most, 0.23 / most};  // as lamplight, 3.5 times as much red as blue
    const auto lamp = measured(scene, random);
    scene.light = {0.3 / most, 0.3 / most, 0.3 / most};
    const auto dim = measured(scene, random);
    ASSERT_TRUE(neutral.ok() && lamp.ok() && dim.ok());
    EXPECT_LE(colour::ciede2000(neutral->lab, lamp->lab),
              std::hypot(neutral->uncertainty, lamp->uncertainty));
    EXPECT_LE(colour::ciede2000(neutral->lab, dim->lab), std::hypot(neutral->uncertainty, dim->uncertainty));
  }
}

TEST(BeadColour, HighlightsAndShadowsAreLeftOut) {
  Random random(73);
  const Scene plain{}, bad{.highlight = 0.35, .shadow = 0.2};
  const auto even = measured(plain, random), uneven = measured(bad, random);
  ASSERT_TRUE(even.ok() && uneven.ok());
  EXPECT_LE(even->left_out, 0.1);
  EXPECT_GE(uneven->left_out, 0.2 + 0.05);
  EXPECT_LE(colour::ciede2000(truth(bad), uneven->lab), 1.5);
  // The mean of the whole rectangle would be far off.
  const Image image = photograph(bad, random);
  colour::Linear mean;
  for (int y = 6; y < 32; ++y)
    for (int x = 60; x < 86; ++x) {
      mean.red += double{image.at(x, y).red} / (26 * 26 * 0.9),
          mean.green += double{image.at(x, y).green} / (26 * 26 * 0.9);
      mean.blue += double{image.at(x, y).blue} / (26 * 26 * 0.9);
    }
  EXPECT_GE(colour::ciede2000(truth(bad), colour::to_lab_d65(mean)), 6);
}

TEST(BeadColour, WorsePhotographsAreLessCertain) {
  Random random(74);
  const auto of = [&](const Scene& scene) {
    const auto bead = measured(scene, random);
    EXPECT_TRUE(bead.ok());
    return bead ? *bead : BeadColour{};
  };
  const BeadColour good = of({}), noisy = of({.noise = 4}), small = of({.bead_side = 8}),
                   uneven = of({.slope = 0.2}), fine = of({.bits = 16});
  EXPECT_GT(noisy.of_bead, 2 * good.of_bead);
  EXPECT_GT(noisy.of_card, good.of_card);
  EXPECT_GT(small.of_bead, 2 * good.of_bead);
  EXPECT_GT(uneven.of_card, 5 * good.of_card);
  EXPECT_EQ(fine.of_steps, 0);
  EXPECT_GT(good.of_steps, 0.02);
  for (const BeadColour& one : {good, noisy, small, uneven, fine}) {
    const double squares = one.of_bead * one.of_bead + one.of_card * one.of_card +
                           one.of_steps * one.of_steps + one.of_left_out * one.of_left_out +
                           one.of_sides * one.of_sides;
    EXPECT_NEAR(one.uncertainty, 2 * std::sqrt(squares), 1e-12);
  }
}

TEST(BeadColour, FromAFileToAColour) {
  Random random(75);
  const Scene scene{.bead = {0.05, 0.25, 0.4}, .card = grey_card, .light = {1.6, 1.2, 1.0}, .highlight = 0.2};
  Numbers numbers;
  photograph(scene, random, &numbers);
  const auto image = decode(png_file(numbers));
  ASSERT_TRUE(image.ok());
  const auto bead = measure_bead(*image, card_place, grey_card, bead_place(scene));
  ASSERT_TRUE(bead.ok()) << message(bead.problem());
  EXPECT_LE(colour::ciede2000(truth(scene), bead->lab), bead->uncertainty);
  EXPECT_EQ(bead->rgb, colour::to_rgb(bead->light));
  EXPECT_EQ(bead->lab, colour::to_lab_d65(bead->light));
}

TEST(BeadColour, ALargeRectangleIsTheSameColour) {
  Image image{700, 500, {}};
  for (int y = 0; y < 500; ++y)
    for (int x = 0; x < 700; ++x)
      image.pixels.push_back(x < 300 ? Pixel{0.45F, 0.45F, 0.45F, 1} : Pixel{0.1F, 0.2F, 0.3F, 1});
  const auto bead = measure_bead(image, {0, 0, 300, 500}, 0.9, {300, 0, 400, 500});
  ASSERT_TRUE(bead.ok());
  EXPECT_NEAR(bead->light.red, 0.2, 1e-6);
  EXPECT_NEAR(bead->light.green, 0.4, 1e-6);
  EXPECT_NEAR(bead->light.blue, 0.6, 1e-6);
}

/// Where the problem is and what was found.
std::string refusal(const Scene& scene, const PictureRectangle& card, const PictureRectangle& bead,
                    double reflectance = white_card) {
  Random random(76);
  const auto measurement = measure_bead(photograph(scene, random), card, reflectance, bead);
  return measurement.ok() ? "measured" : measurement.problem().where + ": " + measurement.problem().found;
}

TEST(BeadColourRefuses, RectanglesThatCannotServe) {
  const Scene scene;
  const PictureRectangle bead = bead_place(scene);
  EXPECT_EQ(refusal(scene, card_place, bead), "measured");
  EXPECT_EQ(refusal(scene, {4, 4, 7.9, 9}, bead), "card: a rectangle of 63 whole pixels");
  EXPECT_EQ(refusal(scene, {4.5, 4.5, 8.9, 8.9}, bead), "measured");  // 8 x 8 of them whole
  EXPECT_EQ(refusal(scene, card_place, {60, 6, 5, 7}), "bead: a rectangle of 35 whole pixels");
  EXPECT_EQ(refusal(scene, card_place, {80, 6, 20.5, 20}),
            "bead: a rectangle that reaches outside the picture");
  EXPECT_EQ(refusal(scene, {-1, 4, 20, 20}, bead), "card: a rectangle that reaches outside the picture");
  EXPECT_EQ(refusal(scene, {std::nan(""), 4, 20, 20}, bead),
            "card: a rectangle that reaches outside the picture");
  EXPECT_EQ(refusal(scene, card_place, {40, 6, 20, 20}), "bead: a rectangle that overlaps the card's");
  EXPECT_EQ(refusal(scene, card_place, bead, 0.01), "card: 0.01 of the light sent back");
  EXPECT_EQ(refusal(scene, card_place, bead, 1.01), "card: 1.01 of the light sent back");
  EXPECT_EQ(refusal(scene, card_place, bead, std::nan("")), "card: nan of the light sent back");
}

TEST(BeadColourRefuses, CardsThatAreNone) {
  const Scene scene;
  const PictureRectangle bead = bead_place(scene);
  EXPECT_EQ(refusal({.light = {1.3, 1.3, 1.3}}, card_place, bead),
            "card: 100 % of its pixels at the end of the scale");
  EXPECT_EQ(refusal({.light = {1.3, 0.5, 0.5}}, card_place, bead),
            "card: 100 % of its pixels at the end of the scale");
  EXPECT_EQ(refusal({.light = {0.015, 0.015, 0.015}}, card_place, bead), "card: almost no light on it");
  EXPECT_EQ(refusal({.light = {0.9, 0.8, 0.1}}, card_place, bead).substr(0, 15), "card: light of ");
  // A rectangle half on the card and half beside it.
  EXPECT_EQ(refusal(scene, {34, 4, 24, 42}, bead).substr(0, 24), "card: light that differs");
}

TEST(BeadColour, ACardRectangleThatSlipsALittleIsLessCertain) {
  Random random(78);
  const auto slipped = measure_bead(photograph({}, random), {20, 4, 32, 42}, white_card, bead_place({}));
  ASSERT_TRUE(slipped.ok());
  EXPECT_GT(slipped->uncertainty, 3 * measured({}, random)->uncertainty);
}

TEST(BeadColourRefuses, BeadsThatShowNoBody) {
  Scene bright{.bead = {0.9, 0.9, 0.9}, .card = grey_card, .light = {1.5, 1.5, 1.5}};
  EXPECT_EQ(refusal(bright, card_place, bead_place(bright), grey_card),
            "bead: most of its pixels at the end of the scale");
}

TEST(BeadColourRefuses, ABeadOfWhichTooLittleIsSeen) {
  // Of twenty pixels nine are clipped, seven of every lightness, and four the bead's own.
  const auto photographed = [](int own) {
    Image image{100, 50, {}};
    for (int y = 0; y < 50; ++y)
      for (int x = 0; x < 100; ++x) {
        const int place = (x + 7 * y) % 20;
        const auto any = static_cast<float>(0.02 + 0.9 * ((13 * x + 29 * y) % 97) / 97);
        const float light = x < 50 ? 0.8F : place < 9 ? 1.0F : place < 20 - own ? any : 0.3F;
        image.pixels.push_back({light, light, light, 1});
      }
    return measure_bead(image, {0, 0, 48, 50}, 0.9, {50, 0, 50, 50});
  };
  const auto little = photographed(4), enough = photographed(8);
  ASSERT_FALSE(little.ok());
  EXPECT_EQ(little.problem().code, ProblemCode::bad_picture);
  EXPECT_EQ(little.problem().found.substr(0, 34), "highlights and shadows on all but ");
  ASSERT_TRUE(enough.ok());
  EXPECT_NEAR(enough->light.red, 0.3 / 0.8 * 0.9, 0.01);
}

}  // namespace
}  // namespace evencount::picture
