#pragma once
/// Small scenes for the tests of this room.

#include <random>

#include "render/finishes.hpp"
#include "render/render.hpp"

namespace evencount::render::testing_support {

inline Lights furnace() {
  return {};
}

/// One bead seen across its hole, in even white light; an upright picture, half as wide as high, is inside its outline.
inline Scene lone_bead(const bead::Size& size, Surface surface) {
  Scene scene;
  scene.meshes.push_back(bead_mesh(shape_of(size), 96));
  scene.surfaces.push_back(std::move(surface));
  scene.solids.push_back({0, 0, Placement{{0, 1, 0}, {0, 0, 1}, {1, 0, 0}, {}}, 0.2});
  scene.lights = furnace();
  scene.camera.at = {0, 0, 100};
  scene.camera.up = {0, 1, 0};
  scene.camera.focus_mm = 100;
  // Looking at 98 % of its thickness; of its length at what is half as wide.
  // A tumbled bead is thinner there.
  scene.camera.half_view = (size.kind == bead::Kind::round ? 0.9 : 0.98) * size.diameter.mm() / 200;
  return scene;
}

/// Beads of all surfaces thrown together.
inline Scene heap(std::vector<Surface> surfaces, int beads, std::uint32_t seed) {
  Scene scene;
  for (const char* id : {"cylinder-11", "round-11", "round-8"})
    scene.meshes.push_back(bead_mesh(shape_of(bead::find_size(id).value()), 24));
  scene.surfaces = std::move(surfaces);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> share(-1, 1);
  std::normal_distribution<double> normal;
  for (int i = 0; i < beads; ++i) {
    const Frame frame = Frame::of(unit({normal(random), normal(random), normal(random)}));
    const double size = 1 + 0.2 * share(random);
    scene.solids.push_back({static_cast<std::uint32_t>(random() % scene.meshes.size()),
                            static_cast<std::uint32_t>(random() % scene.surfaces.size()),
                            {size * frame.tangent,
                             size * frame.bitangent,
                             size * frame.normal,
                             {3 * share(random), 3 * share(random), 2 + 1.5 * share(random)}},
                            share(random)});
  }
  scene.strands.push_back({{{-4, 0, 1}, {0, 1, 2}, {4, 0, 1}}, 0.15, 0});
  scene.camera.at = {0, -40, 25};
  scene.camera.up = {0, 0, 1};
  scene.camera.target = {0, 0, 1.5};
  scene.camera.focus_mm = 45;
  return scene;
}

/// The mean light of a picture's samples, unclipped.
inline Spectrum mean_light(const Scene& scene, int width, int height, int samples,
                           const PathOptions& options = {}) {
  const Tracer tracer = Tracer::build(scene).value();
  Spectrum sum;
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x)
      for (int i = 0; i < samples; ++i) {
        const auto pixel = static_cast<std::uint32_t>(y * width + x), sample = static_cast<std::uint32_t>(i);
        const Four at = spread_point(pixel, sample, 0, 1);
        const Ray ray = ray_through(scene.camera, static_cast<double>(width) / height,
                                    {(x + at[0]) / width, (y + at[1]) / height}, on_disc(at[2], at[3]));
        sum += look_along(scene, tracer, ray, {pixel, sample, 1}, options).light;
      }
  return (1.0 / (width * height * samples)) * sum;
}

}  // namespace evencount::render::testing_support
