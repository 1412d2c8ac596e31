#pragma once
/// What a ray meets first in a scene. The only part that knows Embree.
///
/// Properties (tests/render/tracer_test.cpp):
///  (1) the nearest hit is that of a slow search through all triangles, within 1e-4 mm
///  (2) hidden says whether closest finds something nearer
///  (3) a solid moved, turned and stretched is met where its triangles lie; its normals are unit and lead out of it

#include <memory>
#include <optional>

#include "base/result.hpp"
#include "render/scene.hpp"

namespace evencount::render {

struct Hit {
  double distance_mm = 0;
  Vec3 normal;                ///< of the triangle: unit, out of the solid
  Vec3 smooth;                ///< as the solid is meant to be: unit
  std::uint32_t surface = 0;  ///< of the ground: none
  bool ground = false;
  bool hole = false;  ///< on the wall of a hole
  double film = 0.5;  ///< where in the range of its coat
};

class Tracer {
 public:
  /// Keeps its own copy of what it needs; the scene's meshes are read again for normals, so the scene must outlive it.
  /// Errors: out_of_range (a placement of a mesh or surface that isn't there, a point that is not finite), system_failure (Embree's own words).
  [[nodiscard]] static Result<Tracer> build(const Scene& scene);

  [[nodiscard]] std::optional<Hit> closest(const Ray& ray) const;
  /// Whether something lies on the way.
  [[nodiscard]] bool hidden(const Ray& ray, double distance_mm) const;
  /// Embree's first hit and nothing made of it: what the machine can do at best.
  [[nodiscard]] bool bare(const Ray& ray) const;

 private:
  struct Inside;
  struct Ends {
    void operator()(Inside* inside) const;
  };
  explicit Tracer(std::unique_ptr<Inside, Ends> inside) : inside_(std::move(inside)) {}
  std::unique_ptr<Inside, Ends> inside_;
};

}  // namespace evencount::render
