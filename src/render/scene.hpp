#pragma once
/// What a picture shows, as plain data, in millimetres: solids placed in space, threads, a ground, lights and a camera. +z is up.
///
/// A solid is kept once and placed many times; sixty thousand beads are sixty thousand placements.

#include <optional>
#include <string_view>
#include <vector>

#include "render/camera.hpp"
#include "render/lights.hpp"
#include "render/mesh.hpp"
#include "render/surface.hpp"

namespace evencount::render {

/// One solid in its place.
struct Placed {
  std::uint32_t mesh = 0;     ///< in Scene::meshes
  std::uint32_t surface = 0;  ///< in Scene::surfaces
  Placement placement;
  double turn = 0;  ///< 0 to 1: where its coat begins; every bead has its own
};

/// A thread or cord: round, through its points.
struct Strand {
  std::vector<Vec3> points;  ///< at least two
  double radius_mm = 0.1;
  std::uint32_t surface = 0;
};

enum class GroundKind { none, paper, linen };
[[nodiscard]] std::string_view ground_name(GroundKind kind);
/// Errors: unknown_name.
[[nodiscard]] Result<GroundKind> parse_ground(std::string_view name);

/// A level sheet of endless size, seen from above.
struct Ground {
  GroundKind kind = GroundKind::none;
  double height_mm = 0;
  Spectrum colour = grey(0.8);
};

/// How light or dark the ground is at a place, and how its surface leans: even for paper, woven for linen.
struct GroundSpot {
  double shade = 1;
  double lean_x = 0, lean_y = 0;
};
[[nodiscard]] GroundSpot ground_spot(GroundKind kind, double x_mm, double y_mm);

/// 60,000 beads take 380 MB (docs/rendering.md).
inline constexpr std::size_t most_solids = 250'000;

struct Scene {
  std::vector<Mesh> meshes;
  std::vector<Surface> surfaces;
  std::vector<Placed> solids;
  std::vector<Strand> strands;
  Ground ground;
  Lights lights;
  Camera camera;
};

}  // namespace evencount::render
