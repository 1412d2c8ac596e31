#include "render/glass_walk.hpp"

#include "render/optics.hpp"
#include "render/sampling.hpp"

namespace evencount::render {
namespace {

constexpr int most_turns = 400;
constexpr double most_absorbed_per_mm = 50;

enum class Meets { nothing, glass, hole, cell, paper, sky };

struct Wall {
  double distance = 1e30;
  Vec3 normal;  ///< out of the glass; into the next cell
  Meets what = Meets::nothing;
};

/// A bead's share of the sheet: it is met again beyond each of its four sides.
struct Cell {
  double half_x = 0, half_z = 0;
};
Cell cell_of(const GlassBead& bead) {
  return {worked_apart * bead.radius_mm, worked_apart * bead.half_length_mm};
}

/// Where a ray meets x^2 + y^2 = r^2 (the axis is z) ahead of it, both places.
void meet_round(const Ray& ray, double radius, double half_length, Meets what, Wall& nearest) {
  const double a = ray.towards.x * ray.towards.x + ray.towards.y * ray.towards.y;
  if (a < 1e-15) return;
  const double b = ray.from.x * ray.towards.x + ray.from.y * ray.towards.y;
  const double c = ray.from.x * ray.from.x + ray.from.y * ray.from.y - radius * radius;
  const double under = b * b - a * c;
  if (under <= 0) return;
  for (const double side : {-1.0, 1.0}) {
    const double t = (-b + side * std::sqrt(under)) / a;
    if (t < 1e-7 || t >= nearest.distance) continue;
    const Vec3 p = ray.from + t * ray.towards;
    if (std::abs(p.z) > half_length) continue;
    nearest = {t, (what == Meets::hole ? -1 / radius : 1 / radius) * Vec3{p.x, p.y, 0}, what};
  }
}

void meet_ends(const Ray& ray, const GlassBead& bead, Wall& nearest) {
  if (std::abs(ray.towards.z) < 1e-15) return;
  for (const double side : {-1.0, 1.0}) {
    const double t = (side * bead.half_length_mm - ray.from.z) / ray.towards.z;
    if (t < 1e-7 || t >= nearest.distance) continue;
    const Vec3 p = ray.from + t * ray.towards;
    const double r2 = p.x * p.x + p.y * p.y;
    if (r2 > bead.radius_mm * bead.radius_mm || r2 < bead.hole_radius_mm * bead.hole_radius_mm) continue;
    nearest = {t, {0, 0, side}, Meets::glass};
  }
}

/// The sides of the cell, the paper below and the sky above.
void meet_cell(const Ray& ray, const GlassBead& bead, Wall& nearest) {
  const Cell cell = cell_of(bead);
  const auto plane = [&](double at, double towards, double where, Vec3 normal, Meets what) {
    if (towards == 0) return;
    const double t = (where - at) / towards;
    if (t > 0 && t < nearest.distance) nearest = {t, normal, what};
  };
  const Vec3 from = ray.from, to = ray.towards;
  const double x = std::copysign(1.0, to.x), z = std::copysign(1.0, to.z);
  plane(from.x, to.x, x * cell.half_x, {x, 0, 0}, Meets::cell);
  plane(from.z, to.z, z * cell.half_z, {0, 0, z}, Meets::cell);
  if (to.y < 0) plane(from.y, to.y, -worked_apart * bead.radius_mm, {0, -1, 0}, Meets::paper);
  if (to.y > 0) plane(from.y, to.y, worked_apart * bead.radius_mm, {0, 1, 0}, Meets::sky);
}

Wall next_wall(const Ray& ray, const GlassBead& bead) {
  Wall nearest;
  meet_round(ray, bead.radius_mm, bead.half_length_mm, Meets::glass, nearest);
  meet_round(ray, bead.hole_radius_mm, bead.half_length_mm, Meets::hole, nearest);
  meet_ends(ray, bead, nearest);
  meet_cell(ray, bead, nearest);
  return nearest;
}

/// From above, across the hole, spread over the bead's cell and tilted a little.
Ray view_of(const GlassBead& bead, const Four& at) {
  const double tilt =
      (at[2] - 0.5) * 0.7;  // up to 20 degrees either way, from memory: how far a hand turns it
  const Cell cell = cell_of(bead);
  return {
      {(2 * at[0] - 1) * cell.half_x, 0.999 * worked_apart * bead.radius_mm, (2 * at[1] - 1) * cell.half_z},
      {0, -std::cos(tilt), std::sin(tilt)}};
}

/// Light bent or mirrored by the wall of the glass that `ray` has come to.
Vec3 beyond_glass(const Ray& ray, const Wall& wall, bool within, double density_of_glass, double choice) {
  const Frame frame = Frame::of(within ? -1 * wall.normal : wall.normal);
  const Vec3 out = frame.to_local(-1 * ray.towards);
  const double density = within ? 1 / density_of_glass : density_of_glass;
  Vec3 in{-out.x, -out.y, out.z};
  if (choice >= fresnel(out.z, density)) {
    in = {-out.x / density, -out.y / density, 0};
    in.z = -std::sqrt(std::max(0.0, 1 - in.x * in.x - in.y * in.y));
  }
  return unit(frame.to_world(in));
}

GlassWay walk(const GlassBead& bead, bool lined, std::uint32_t number) {
  Ray ray = view_of(bead, spread_point(0, number, 0, 7));
  GlassWay way;
  for (std::uint32_t turn = 0; turn < most_turns; ++turn) {
    const Wall wall = next_wall(ray, bead);
    if (wall.what == Meets::sky || wall.what == Meets::nothing) return way;
    const Four at = spread_point(0, number, turn + 1, 7);
    ray.from = ray.from + wall.distance * ray.towards;
    const bool within = dot(ray.towards, wall.normal) > 0;
    switch (wall.what) {
      case Meets::cell:  // in by the opposite side
        ray.from = ray.from - 2 * dot(ray.from, wall.normal) * wall.normal;
        continue;
      case Meets::paper:
        way.share *= bead.paper;
        ray.towards = Frame::of(-1 * wall.normal).to_world(cosine_direction(at[0], at[1]));
        continue;
      case Meets::hole:
        if (within) way.in_glass_mm += wall.distance;
        if (lined) {  // seen from the glass or through the open end
          ++way.off_lining;
          ray.towards =
              Frame::of(within ? -1 * wall.normal : wall.normal).to_world(cosine_direction(at[0], at[1]));
          continue;
        }
        break;
      default:
        if (within) way.in_glass_mm += wall.distance;
    }
    ray.towards = beyond_glass(ray, wall, within, bead.density, at[2]);
  }
  return way;
}

/// The argument from 0 to `most` for which a falling function has a value.
template <typename Falling>
double solve_falling(double value, double most, Falling f) {
  double low = 0, high = most;
  for (int i = 0; i < 60; ++i) {
    const double middle = (low + high) / 2;
    (f(middle) > value ? low : high) = middle;
  }
  return (low + high) / 2;
}

}  // namespace

std::vector<GlassWay> glass_ways(const GlassBead& bead, bool lined, int ways) {
  std::vector<GlassWay> all;
  for (int i = 0; i < ways; ++i) all.push_back(walk(bead, lined, static_cast<std::uint32_t>(i)));
  return all;
}

double shown(const std::vector<GlassWay>& ways, double absorbed_per_mm, double lining) {
  double sum = 0;
  for (const GlassWay& way : ways)
    sum += way.share * std::exp(-absorbed_per_mm * way.in_glass_mm) *
           (way.off_lining == 0 ? 1 : std::pow(lining, way.off_lining));
  return sum / static_cast<double>(ways.size());
}

double can_be_shown(double colour, double darkest) {
  return std::max(colour, darkest + 0.5 * (1 - darkest) * colour);
}

Spectrum absorption_for(const std::vector<GlassWay>& ways, Spectrum colour) {
  const double darkest = shown(ways, most_absorbed_per_mm, 1);
  Spectrum absorbed;
  for (int c = 0; c < 3; ++c)
    absorbed[c] = solve_falling(can_be_shown(colour[c], darkest), most_absorbed_per_mm,
                                [&](double a) { return shown(ways, a, 1); });
  return absorbed;
}

Spectrum lining_for(const std::vector<GlassWay>& ways, Spectrum colour) {
  const double darkest = shown(ways, 0, 0);
  Spectrum lining;
  for (int c = 0; c < 3; ++c)
    lining[c] = 1 - solve_falling(can_be_shown(colour[c], darkest), 1,
                                  [&](double a) { return shown(ways, 0, 1 - a); });
  return lining;
}

}  // namespace evencount::render
