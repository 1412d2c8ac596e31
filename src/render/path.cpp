#include "render/path.hpp"

namespace evencount::render {
namespace {

/// A hit with what it is made of, its frame turned to the side that the ray comes from.
struct Spot {
  Vec3 at;
  Vec3 side;  ///< the triangle's normal on that side
  Frame frame;
  Vec3 out;  ///< local
  const Surface* surface = nullptr;
  Surface own = plain({});  ///< where its colour is made for this spot: ground, lining
  double film = 0.5;
  bool within = false;
};

class Walk {
 public:
  Walk(const Scene& scene, const Tracer& tracer, PathNumber number, const PathOptions& options)
      : scene_(scene), tracer_(tracer), number_(number), options_(options) {}

  Seen along(const Ray& ray) {
    branches_.push_back({ray, grey(1), 0});
    for (std::uint32_t number = 0; number < branches_.size(); ++number) follow(number);
    return seen_;
  }

 private:
  /// What is followed later: the mirrored part of a ray that glass splits.
  struct Branch {
    Ray ray;
    Spectrum share;
    int turn = 0;
  };

  void follow(std::uint32_t number) {
    branch_ = number;
    Ray ray = branches_[number].ray;
    share_ = branches_[number].share;
    sharp_ = true, by_chance_ = false, after_matt_ = false;
    const double begun_with = largest(share_);
    const int first = branches_[number].turn;
    for (int turn = first; turn < options_.most_turns; ++turn) {
      const auto hit = tracer_.closest(ray);
      ++seen_.rays;
      if (shines(ray, hit ? hit->distance_mm : 1e30, turn)) return;
      if (!hit) return add(share_ * radiance_of(scene_.lights.dome, ray.towards));
      meet_surface(ray, *hit);
      if (turn == 0) note_first(*hit);
      const Four at = point(turn, 0);
      const bool glass = spot_.surface->make == Make::glass;
      if (options_.aim_at_boxes && !scene_.lights.boxes.empty() && !glass) aim(point(turn, 1));
      if (glass && turn < options_.splitting_turns && !after_matt_)
        split(ray, turn, at[0]);
      else if (!go_on(ray, at))
        return;
      if (turn >= first + sure_turns && !survives(at[3], begun_with)) return;
    }
  }

  Four point(int turn, int which) const {
    const auto step = static_cast<std::uint32_t>(2 * turn + 1 + which);
    return spread_point(number_.pixel, number_.sample, step + sets_a_branch * branch_, number_.seed);
  }

  void add(Spectrum light) {
    if (after_matt_ && largest(light) > options_.brightest)
      light = options_.brightest / largest(light) * light;
    seen_.light += light;
  }

  /// A box in front of everything else ends the path.
  bool shines(const Ray& ray, double nearest, int turn) {
    if (turn == 0) return false;
    std::optional<SoftBox> box;
    for (SoftBox one : scene_.lights.boxes) {
      if (by_chance_) one = spread_out(one, options_.brightest_by_chance);
      if (const auto t = meet(one, ray); t && *t < nearest) nearest = *t, box = one;
    }
    if (!box) return false;
    const double aimed =
        box_density(*box, ray.towards, nearest) / static_cast<double>(scene_.lights.boxes.size());
    add((sharp_ || !options_.aim_at_boxes ? 1 : power_share(density_, aimed)) * share_ * box->radiance);
    return true;
  }

  void meet_surface(const Ray& ray, const Hit& hit) {
    spot_.at = ray.from + hit.distance_mm * ray.towards;
    spot_.within = dot(ray.towards, hit.normal) > 0;
    spot_.film = hit.film;
    Vec3 smooth = hit.smooth;
    if (hit.ground) {
      const GroundSpot ground = ground_spot(scene_.ground.kind, spot_.at.x, spot_.at.y);
      spot_.own.base = ground.shade * scene_.ground.colour;
      spot_.surface = &spot_.own;
      smooth = unit({ground.lean_x, ground.lean_y, 1});
    } else {
      spot_.surface = &scene_.surfaces[hit.surface];
      if (spot_.within && spot_.surface->make == Make::glass)
        share_ *= exp(-hit.distance_mm * spot_.surface->absorbed_per_mm);
      if (hit.hole && spot_.surface->lining) {
        spot_.own.base = *spot_.surface->lining;
        spot_.surface = &spot_.own;
      }
    }
    spot_.side = spot_.within ? -1 * hit.normal : hit.normal;
    if (spot_.within) smooth = -1 * smooth;
    // Towards the outline a smooth normal may look away from the eye; the triangle's never does.
    constexpr double grazing = 0.01;  // cosine; below that mirrored light would go into the solid
    const bool turned_away = -dot(ray.towards, smooth) < grazing;
    spot_.frame = Frame::of(turned_away ? spot_.side : smooth);
    spot_.out = spot_.frame.to_local(-1 * ray.towards);
  }

  void note_first(const Hit& hit) {
    seen_.colour = albedo(*spot_.surface, std::max(0.0, spot_.out.z), spot_.film);
    seen_.normal = spot_.frame.normal;
    seen_.depth_mm = hit.distance_mm;
  }

  void aim(const Four& at) {
    const auto count = static_cast<double>(scene_.lights.boxes.size());
    const SoftBox& box = scene_.lights.boxes[static_cast<std::size_t>(at[2] * count)];
    const Vec3 from = beside(spot_.side);
    const LightSample light = sample_box(box, from, at[0], at[1]);
    if (light.density <= 0 || dot(light.towards, spot_.side) <= 0) return;
    const Vec3 in = spot_.frame.to_local(light.towards);
    const Spectrum thrown = reflected(*spot_.surface, spot_.out, in, spot_.film);
    if (largest(thrown) <= 0) return;
    ++seen_.rays;
    if (tracer_.hidden({from, light.towards}, light.distance_mm)) return;
    const double density = light.density / count;
    const double share = power_share(density, density_of(*spot_.surface, spot_.out, in, spot_.film));
    add(share / density * share_ * thrown * box.radiance);
  }

  bool go_on(Ray& ray, const Four& at) {
    const auto next = bounce(*spot_.surface, spot_.out, spot_.film, spot_.within, at);
    if (!next) return false;
    ray = leaving(next->towards);
    share_ *= next->weight;
    density_ = next->density;
    sharp_ = by_chance_ = next->sharp;
    after_matt_ = after_matt_ || !next->sharp;
    return largest(share_) > 0;
  }

  /// Both what goes through glass and what is mirrored, each by its share, where chance would rarely find a lamp in the mirror. The
  /// larger is followed first.
  void split(Ray& ray, int turn, double chance) {
    const GlassSplit parts = split_by_glass(*spot_.surface, spot_.out, spot_.within);
    const bool mirror_first = parts.mirrored_share > 0.5;
    const Spectrum mirrored = parts.mirrored_share * share_, through = (1 - parts.mirrored_share) * share_;
    const Spectrum later = mirror_first ? through : mirrored;
    const double keep = std::min(1.0, largest(later) / least_branch);
    if (chance < keep)
      branches_.push_back(
          {leaving(mirror_first ? parts.through : parts.mirrored), 1 / keep * later, turn + 1});
    ray = leaving(mirror_first ? parts.mirrored : parts.through);
    share_ = mirror_first ? mirrored : through;
    sharp_ = true, by_chance_ = false;
  }

  [[nodiscard]] Ray leaving(Vec3 local) const {
    Vec3 towards = unit(spot_.frame.to_world(local));
    // Smooth normals may send light through the triangle, or keep it from going through: it is mirrored back.
    const Vec3 side = local.z < 0 ? -1 * spot_.side : spot_.side;
    if (const double into = dot(towards, side); into <= 0) towards = unit(towards - (2 * into - 1e-4) * side);
    return {beside(side), towards};
  }

  /// Off the surface by what single precision can't tell apart.
  [[nodiscard]] Vec3 beside(Vec3 side) const {
    const double size = 1 + std::max({std::abs(spot_.at.x), std::abs(spot_.at.y), std::abs(spot_.at.z)});
    constexpr double shift = 4e-6;  // of the coordinates: some steps of a float's 6e-8
    return spot_.at + shift * size * side;
  }

  bool survives(double chance, double begun_with) {
    const double keep = std::min(1.0, largest(share_) / begun_with);
    if (chance >= keep) return false;
    share_ = 1 / keep * share_;
    return true;
  }

  const Scene& scene_;
  const Tracer& tracer_;
  const PathNumber number_;
  const PathOptions& options_;
  static constexpr int sure_turns = 3;          ///< that no path ends by chance in
  static constexpr double least_branch = 0.02;  ///< a share below that is followed now and then only
  static constexpr std::uint32_t sets_a_branch = 1u << 16;
  std::vector<Branch> branches_;
  std::uint32_t branch_ = 0;
  Seen seen_;
  Spot spot_;
  Spectrum share_ = grey(1);
  double density_ = 0;
  bool sharp_ = true, by_chance_ = false, after_matt_ = false;
};

}  // namespace

Seen look_along(const Scene& scene, const Tracer& tracer, Ray ray, PathNumber number,
                const PathOptions& options) {
  return Walk(scene, tracer, number, options).along(ray);
}

}  // namespace evencount::render
