#pragma once
/// What lights a scene: a dome of even white light that may fade towards the horizon, and soft boxes.
///
/// All light is white (D65, the white of the colours), so that colours are shown as they were measured. Lights are set so that white paper lying
/// flat at the origin shows white: light_on_table is (pi, pi, pi).
///
/// Properties (tests/render/lights_test.cpp):
///  (1) light_on_table of a dome of radiance 1 all round is pi, of any preset pi, within 0.5 %
///  (2) the density of a box, as seen from anywhere, integrates to 1
///  (3) what meet says of a ray is what sample_box aims at
///  (4) a box spread out gives as much light: area times radiance stay

#include <optional>
#include <string_view>
#include <vector>

#include "base/result.hpp"
#include "render/sampling.hpp"
#include "render/spectrum.hpp"

namespace evencount::render {

/// A flat rectangle that shines to one side: that of side_x x side_y.
struct SoftBox {
  Vec3 middle;
  Vec3 side_x, side_y;  ///< from the middle to the middles of two edges
  Spectrum radiance;
};

/// +z is up.
struct Dome {
  Spectrum above = grey(1), horizon = grey(1), below = grey(1);
};

struct Lights {
  Dome dome;
  std::vector<SoftBox> boxes;
};

enum class LightPreset {
  tent,    ///< soft from all sides, as in a light tent: little shadow, even colours
  window,  ///< a large window on the left: shadows that tell the shape
};
[[nodiscard]] std::string_view light_name(LightPreset preset);
/// Errors: unknown_name.
[[nodiscard]] Result<LightPreset> parse_light(std::string_view name);

/// For a scene of that size. `turn`: radians that the boxes stand round +z, with the camera.
[[nodiscard]] Lights lights_of(LightPreset preset, double scene_radius_mm, double turn = 0);

[[nodiscard]] Spectrum radiance_of(const Dome& dome, Vec3 towards);

/// Light that falls on a small white sheet at the origin, seen from above: irradiance.
[[nodiscard]] Spectrum light_on_table(const Lights& lights);

/// Where a ray meets the shining side of a box.
[[nodiscard]] std::optional<double> meet(const SoftBox& box, const Ray& ray);

/// The box, or where it is brighter than that a larger one of that brightness and as much light.
[[nodiscard]] SoftBox spread_out(SoftBox box, double brightest);

struct LightSample {
  Vec3 towards;
  double distance_mm = 0;
  double density = 0;  ///< per solid angle; 0 from behind
};
[[nodiscard]] LightSample sample_box(const SoftBox& box, Vec3 from, double u, double v);
/// The density with which sample_box aims that way, where it meets the box at that distance.
[[nodiscard]] double box_density(const SoftBox& box, Vec3 towards, double distance_mm);

}  // namespace evencount::render
