#pragma once
/// Rays, frames and placements, in millimetres. Points and directions are the fabric's.
///
/// Properties (tests/render/space_test.cpp): (1) a frame's three directions are unit and at right angles, right-handed, whatever its
/// normal; (2) to_world(to_local(v)) == v within 1e-12; (3) Placement::then places a point as the two do one after another.

#include "fabric/vec3.hpp"

namespace evencount::render {

using fabric::across;
using fabric::cross;
using fabric::dot;
using fabric::norm;
using fabric::unit;
using fabric::Vec3;

struct Ray {
  Vec3 from;
  Vec3 towards;  ///< unit
};

/// Three directions at right angles; `normal` is the third.
struct Frame {
  Vec3 tangent{1, 0, 0}, bitangent{0, 1, 0}, normal{0, 0, 1};

  /// Any frame with that normal (T. Duff et al., "Building an Orthonormal Basis, Revisited", JCGT 6(1), 2017; from memory).
  [[nodiscard]] static Frame of(Vec3 normal) {
    const double sign = std::copysign(1.0, normal.z);
    const double a = -1 / (sign + normal.z), b = normal.x * normal.y * a;
    return {{1 + sign * normal.x * normal.x * a, sign * b, -sign * normal.x},
            {b, sign + normal.y * normal.y * a, -normal.y},
            normal};
  }
  [[nodiscard]] constexpr Vec3 to_local(Vec3 v) const {
    return {dot(v, tangent), dot(v, bitangent), dot(v, normal)};
  }
  [[nodiscard]] constexpr Vec3 to_world(Vec3 v) const {
    return v.x * tangent + v.y * bitangent + v.z * normal;
  }
};

/// A point's way from a shape's own space to the world: turned and stretched by the three columns, then moved.
struct Placement {
  Vec3 x{1, 0, 0}, y{0, 1, 0}, z{0, 0, 1}, origin;

  [[nodiscard]] constexpr Vec3 direction(Vec3 v) const { return v.x * x + v.y * y + v.z * z; }
  [[nodiscard]] constexpr Vec3 point(Vec3 p) const { return origin + direction(p); }
  /// This placement first, then `outer`.
  [[nodiscard]] constexpr Placement then(const Placement& outer) const {
    return {outer.direction(x), outer.direction(y), outer.direction(z), outer.point(origin)};
  }
};

[[nodiscard]] constexpr Placement moved(Vec3 by) {
  return {.origin = by};
}

}  // namespace evencount::render
