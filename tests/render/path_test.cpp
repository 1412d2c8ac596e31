#include "render/path.hpp"

#include <gtest/gtest.h>

#include "colour/difference.hpp"
#include "render/glass_walk.hpp"
#include "scenes.hpp"
#include "support/sanitized.hpp"

namespace evencount::render {
namespace {

using namespace testing_support;

constexpr PathOptions patient{.most_turns = 2000, .brightest = 1e9};

std::vector<Surface> lossless() {
  return {plain(grey(1)),
          coated(grey(1), 0.06, glass_mirror(bead_glass)),
          coated(grey(1), 0.45, glass_mirror(bead_glass)),
          coated(grey(1), 0.1,
                 AngleTable(4,
                            [](double c, int row) {
                              return film_colour(Film{2.2, bead_glass, 250.0 + 50 * row}, c);
                            })),
          metal(grey(1), 0.15),
          glass({}),
          glass({}, grey(1))};
}

// (1)
TEST(Path, WhiteFurnace) {
  for (const Surface& surface : lossless()) {
    Scene scene = heap({surface}, 60, 1);
    const Spectrum light = mean_light(scene, 24, 24, 16, patient);
    for (int c = 0; c < 3; ++c)
      EXPECT_NEAR(light[c], 1, 0.01) << static_cast<int>(surface.make) << " " << surface.alpha;
  }
  Scene all = heap(lossless(), 80, 2);
  all.ground = {GroundKind::paper, 0, grey(1 / 1.03)};  // paper's own grain is up to 2 % lighter
  const Spectrum light = mean_light(all, 24, 24, 16, patient);
  for (int c = 0; c < 3; ++c) {
    EXPECT_LE(light[c], 1.01);
    EXPECT_GE(light[c], 0.9);
  }
}

// (1) for every finish: white beads lose nothing, whatever their coat.
TEST(Path, WhiteFurnaceOfEveryFinish) {
  const bead::Size size = bead::find_size("round-11").value();
  for (const bead::Finish finish : bead::finishes) {
    const Scene scene = heap({surface_of(finish, {255, 255, 255}, size)}, 40, 3);
    const Spectrum light = mean_light(scene, 20, 20, 16, patient);
    for (int c = 0; c < 3; ++c) EXPECT_NEAR(light[c], 1, 0.01) << finish_name(finish);
  }
}

// (2)
TEST(Path, NothingIsGained) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> share;
  for (std::uint32_t i = 0; i < 12; ++i) {
    std::vector<Surface> surfaces;
    for (int k = 0; k < 4; ++k) {
      const colour::Rgb colour{static_cast<std::uint8_t>(random() % 256),
                               static_cast<std::uint8_t>(random() % 256),
                               static_cast<std::uint8_t>(random() % 256)};
      surfaces.push_back(surface_of(bead::finishes[random() % bead::finishes.size()], colour,
                                    bead::find_size("round-11").value()));
    }
    surfaces.push_back(glass({share(random), share(random), share(random)}, {}, 1.05 + share(random)));
    surfaces.push_back(metal({share(random), share(random), share(random)}, 0.02 + share(random)));
    Scene scene = heap(surfaces, 40, i);
    scene.ground = {i % 2 == 0 ? GroundKind::paper : GroundKind::linen, 0, grey(share(random))};
    const Spectrum light = mean_light(scene, 20, 20, 8, patient);
    for (int c = 0; c < 3; ++c) EXPECT_LE(light[c], 1.01);
  }
}

// (3)
TEST(Path, AimingChangesNoMean) {
  Scene scene = heap({plain({0.7, 0.5, 0.3}), coated({0.2, 0.4, 0.6}, 0.2, glass_mirror(bead_glass)),
                      metal({0.9, 0.7, 0.3}, 0.3)},
                     40, 5);
  scene.ground = {GroundKind::paper, 0, grey(0.8)};
  scene.lights = lights_of(LightPreset::window, 6);
  PathOptions options = patient;
  const Spectrum aimed = mean_light(scene, 24, 24, 64, options);
  options.aim_at_boxes = false;
  const Spectrum blind = mean_light(scene, 24, 24, 256, options);
  for (int c = 0; c < 3; ++c) EXPECT_NEAR(aimed[c], blind[c], 0.015 * blind[c]);
}

// (4)
TEST(Path, SplittingAndSpreadingChangeNoMean) {
  Scene scene =
      heap({glass({0.1, 0.3, 0.6}), glass({}, Spectrum{0.2, 0.4, 0.7}), plain({0.7, 0.5, 0.3})}, 40, 9);
  scene.ground = {GroundKind::paper, 0, grey(0.8)};
  scene.lights = lights_of(LightPreset::window, 6);
  const Spectrum both = mean_light(scene, 24, 24, 96, patient);
  PathOptions options = patient;
  options.splitting_turns = 0, options.brightest_by_chance = 1e9;
  const Spectrum chance = mean_light(scene, 24, 24, 384, options);
  for (int c = 0; c < 3; ++c) EXPECT_NEAR(both[c], chance[c], 0.03 * chance[c]);
}

double off(const bead::Size& size, bead::Finish finish, colour::Rgb colour) {
  const Scene scene = lone_bead(size, surface_of(finish, colour, size));
  const Spectrum light = mean_light(scene, 16, 32, 16, patient);
  return colour::ciede2000(colour::to_lab_d65(to_linear(light)), colour::to_lab_d65(colour));
}

// The promise of finishes.hpp, by rays: the beads themselves in even white light.
TEST(Path, OpaqueBeadsShowTheLegendsColour) {
  const std::vector<colour::Rgb> legend{{0x17, 0x23, 0x3f}, {0xf3, 0xe9, 0xcf}, {0x46, 0x55, 0x7a},
                                        {0xd8, 0xa6, 0x3a}, {0x55, 0xa9, 0xb0}, {0x1b, 0x64, 0x78},
                                        {0xcf, 0xa6, 0x73}, {0xc3, 0xd3, 0xe0}, {0x10, 0x10, 0x10},
                                        {0xff, 0xff, 0xff}, {0xc0, 0x10, 0x20}};
  std::size_t number = 0;
  for (const char* id : {"cylinder-11", "round-8"})
    for (const colour::Rgb colour : legend)
      for (const bead::Finish finish :
           {bead::Finish::opaque, bead::Finish::matte, bead::Finish::metallic, bead::Finish::galvanised}) {
        if (sanitized && ++number % 3 != 0) continue;
        EXPECT_LE(off(bead::find_size(id).value(), finish, colour), 3)
            << id << " " << finish_name(finish) << " " << to_hex(colour);
      }
}

/// A sheet of beads as glass_walk.hpp has them, on white paper in even light; `across` and `along` of them.
Scene sheet_of_glass(const bead::Size& size, Surface surface, int across, int along) {
  Scene scene;
  BeadShape shape = shape_of(size);
  shape.rim_mm = 0.02 * shape.radius_mm;  // flat ends
  scene.meshes.push_back(bead_mesh(shape, 96));
  scene.surfaces.push_back(std::move(surface));
  const double x = worked_apart * size.diameter.mm(), y = worked_apart * size.length.mm();
  for (int i = 0; i < across; ++i)
    for (int k = 0; k < along; ++k)
      scene.solids.push_back(
          {0,
           0,
           {{1, 0, 0}, {0, 0, -1}, {0, 1, 0}, {(i - (across - 1) / 2.0) * x, (k - (along - 1) / 2.0) * y, 0}},
           0});
  scene.ground = {GroundKind::paper, -worked_apart * size.diameter.mm() / 2, grey(GlassBead{}.paper)};
  scene.camera.at = {0, 0, 100};
  scene.camera.up = {0, 1, 0};
  scene.camera.focus_mm = 100;
  scene.camera.half_view = x / 2 / 100;  // one bead's place
  return scene;
}

// What glass beads can show among their like (glass_walk.hpp) they do show.
TEST(Path, GlassBeadsShowTheirColourSideBySide) {
  const bead::Size size = bead::find_size("cylinder-11").value();
  const GlassBead alone{size.diameter.mm() / 2, size.length.mm() / 2, size.hole.mm() / 2, bead_glass};
  for (const bool lined : {false, true}) {
    const auto ways = glass_ways(alone, lined);
    const double darkest = lined ? shown(ways, 0, 0) : shown(ways, 50, 1);
    for (const colour::Rgb colour :
         {colour::Rgb{0x55, 0xa9, 0xb0}, {0xd0, 0x70, 0x60}, {0x80, 0x80, 0xc0}, {0x3a, 0x3a, 0x70}}) {
      const Spectrum asked = of(colour);
      const Spectrum can_be{can_be_shown(asked.r, darkest), can_be_shown(asked.g, darkest),
                            can_be_shown(asked.b, darkest)};
      const Scene scene = sheet_of_glass(
          size, surface_of(lined ? bead::Finish::lined : bead::Finish::transparent, colour, size), 13, 17);
      const Spectrum light = mean_light(scene, 24, 20, 24, patient);
      EXPECT_LE(
          colour::ciede2000(colour::to_lab_d65(to_linear(light)), colour::to_lab_d65(to_linear(can_be))), 4)
          << lined << " " << to_hex(colour) << " " << light.r << " " << light.g << " " << light.b;
    }
  }
}

}  // namespace
}  // namespace evencount::render
