#include "render/lights.hpp"

#include <numbers>

#include "base/text.hpp"

namespace evencount::render {
namespace {

double area_of(const SoftBox& box) {
  return 4 * norm(cross(box.side_x, box.side_y));
}

/// A square box that looks at the origin, by where it stands: turn round +z, height over the table, both in radians.
SoftBox box_at(double turn, double height, double distance, double half_side, double radiance) {
  const Vec3 towards{std::cos(height) * std::cos(turn), std::cos(height) * std::sin(turn), std::sin(height)};
  const Vec3 side = unit(cross({0, 0, 1}, towards));
  const Vec3 up = cross(side, towards);
  return {distance * towards, half_side * side, half_side * up, grey(radiance)};
}

}  // namespace

std::string_view light_name(LightPreset preset) {
  return preset == LightPreset::tent ? "tent" : "window";
}

Result<LightPreset> parse_light(std::string_view name) {
  for (const LightPreset preset : {LightPreset::tent, LightPreset::window})
    if (name == light_name(preset)) return preset;
  return Problem{ProblemCode::unknown_name, "light", quote(name), "tent or window"};
}

Lights lights_of(LightPreset preset, double size, double turn) {
  // Angles, sizes and shares from memory of how small things are lit: a large box high at the back left, a smaller one opposite.
  // A small bright one adds little light and gives glass its glints.
  const double far = 4 * size, degrees = std::numbers::pi / 180, glint = 45;
  Lights lights;
  if (preset == LightPreset::tent) {
    lights.dome = {grey(1.0), grey(0.42), grey(0.3)};
    lights.boxes = {box_at(turn + 125 * degrees, 55 * degrees, far, 1.5 * size, 2.6),
                    box_at(turn + 20 * degrees, 45 * degrees, far, 1.0 * size, 1.6),
                    box_at(turn + 100 * degrees, 48 * degrees, 0.9 * far, 0.14 * size, glint)};
  } else {
    lights.dome = {grey(0.5), grey(0.3), grey(0.22)};
    lights.boxes = {box_at(turn + 155 * degrees, 38 * degrees, far, 1.7 * size, 4.2),
                    box_at(turn + 75 * degrees, 60 * degrees, 0.9 * far, 0.14 * size, glint)};
  }
  const double k = std::numbers::pi / light_on_table(lights).g;
  for (Spectrum* s : {&lights.dome.above, &lights.dome.horizon, &lights.dome.below}) *s = k * *s;
  for (SoftBox& box : lights.boxes) box.radiance = k * box.radiance;
  return lights;
}

Spectrum radiance_of(const Dome& dome, Vec3 towards) {
  const double z = std::clamp(towards.z, -1.0, 1.0);
  return z >= 0 ? mix(dome.horizon, dome.above, z) : mix(dome.horizon, dome.below, -z);
}

Spectrum light_on_table(const Lights& lights) {
  // Dome: the integral of (h + (a - h) z) z over the upper half is pi h + 2 pi (a - h) / 3.
  const double pi = std::numbers::pi;
  Spectrum sum = pi * lights.dome.horizon + 2 * pi / 3 * (lights.dome.above - lights.dome.horizon);
  constexpr int cuts = 32;
  for (const SoftBox& box : lights.boxes)
    for (int i = 0; i < cuts; ++i)
      for (int k = 0; k < cuts; ++k) {
        const LightSample s = sample_box(box, {}, (i + 0.5) / cuts, (k + 0.5) / cuts);
        // The dome is hidden behind the box.
        if (s.density > 0 && s.towards.z > 0)
          sum +=
              s.towards.z / (s.density * cuts * cuts) * (box.radiance - radiance_of(lights.dome, s.towards));
      }
  return sum;
}

std::optional<double> meet(const SoftBox& box, const Ray& ray) {
  const Vec3 normal = cross(box.side_x, box.side_y);
  const double against = dot(ray.towards, normal);
  if (against >= 0) return std::nullopt;
  const double t = dot(box.middle - ray.from, normal) / against;
  if (t <= 0) return std::nullopt;
  const Vec3 on = ray.from + t * ray.towards - box.middle;
  if (std::abs(dot(on, box.side_x)) > dot(box.side_x, box.side_x)) return std::nullopt;
  if (std::abs(dot(on, box.side_y)) > dot(box.side_y, box.side_y)) return std::nullopt;
  return t;
}

SoftBox spread_out(SoftBox box, double brightest) {
  const double too_bright = largest(box.radiance) / brightest;
  if (too_bright <= 1) return box;
  const double wider = std::sqrt(too_bright);
  box.side_x = wider * box.side_x, box.side_y = wider * box.side_y;
  box.radiance = 1 / too_bright * box.radiance;
  return box;
}

LightSample sample_box(const SoftBox& box, Vec3 from, double u, double v) {
  const Vec3 to = box.middle + (2 * u - 1) * box.side_x + (2 * v - 1) * box.side_y - from;
  const double distance = norm(to);
  const Vec3 towards = (1 / distance) * to;
  return {towards, distance, box_density(box, towards, distance)};
}

double box_density(const SoftBox& box, Vec3 towards, double distance_mm) {
  const double cosine = -dot(towards, unit(cross(box.side_x, box.side_y)));
  return cosine <= 0 ? 0 : distance_mm * distance_mm / (cosine * area_of(box));
}

}  // namespace evencount::render
