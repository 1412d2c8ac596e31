#pragma once
/// Solids as triangles with smooth normals, in millimetres: beads of their kind, forms with their holes, and what else is strung.
///
/// Solids of revolution have z for their axis, and so do extruded ones for their length. A mesh is closed and its normals lead out of the solid.
///
/// Properties (tests/render/mesh_test.cpp):
///  (1) every edge belongs to two triangles, once each way: closed and all one way round
///  (2) the volume is the solid's by closed form, within what the facets cut off
///  (3) a bead lies within its size and touches it; no vertex is nearer to the axis than the hole
///  (4) normals are unit and lie within 90 degrees of their triangles'

#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include "bead/bead_size.hpp"
#include "form/form.hpp"
#include "render/space.hpp"

namespace evencount::render {

struct Mesh {
  std::vector<Vec3> points, normals;  ///< as many
  std::vector<std::array<std::uint32_t, 3>> triangles;
  /// Triangles from this one on line the hole: there a lined bead is painted.
  std::size_t first_of_hole = SIZE_MAX;
  bool operator==(const Mesh&) const = default;
};

[[nodiscard]] double volume_of(const Mesh& mesh);

/// A point of a profile: how far along the axis, how far from it, and the way out of the solid there.
struct ProfilePoint {
  double along = 0, away = 0;
  double normal_along = 0, normal_away = 1;
};

/// A closed profile turned about z: a ring. Points run with the solid on their right when `away` points up and `along` to the right.
/// `first_of_hole`: profile pieces from that one on line the hole.
[[nodiscard]] Mesh turned(std::span<const ProfilePoint> profile, int segments,
                          std::size_t first_of_hole = SIZE_MAX);

/// A bead: flat ends with rounded lips, a ball, or a seed bead's ring; its hole straight, with rounded mouths. Cylinders and balls have the
/// outline of the fabric's cylinder with rims (bead::rim). A seed bead is fuller, as tumbled ones are: its wall's section is a
/// superellipse (exponent 2.15, from memory of the look); it keeps within its length and diameter. The hole must leave a wall.
struct BeadShape {
  double radius_mm = 0.8, half_length_mm = 0.65, hole_radius_mm = 0.4, rim_mm = 0.16;
  bool tumbled = false;  ///< a seed bead's ring; `rim_mm` says nothing then
  bool operator==(const BeadShape&) const = default;
};
[[nodiscard]] BeadShape shape_of(const bead::Size& size);
[[nodiscard]] std::vector<ProfilePoint> bead_profile(const BeadShape& shape);
[[nodiscard]] Mesh bead_mesh(const BeadShape& shape, int segments = 56);

/// A ring of round wire about z.
[[nodiscard]] Mesh ring_mesh(double radius_mm, double wire_radius_mm);

/// The form's section pulled along z, its two rims eased, its holes open; `length_mm` long. Errors: those of form::section.
[[nodiscard]] Result<Mesh> form_mesh(const form::Form& form, double length_mm);

/// A box with rounded edges: full sizes along x, y and z; the rounding at most half the least.
[[nodiscard]] Mesh box_mesh(double x_mm, double y_mm, double z_mm, double rounding_mm);

/// An ellipse (half axes along x and y) pulled along z, without ends: what a piece is worn on.
[[nodiscard]] Mesh oval_tube_mesh(double half_x_mm, double half_y_mm, double half_length_mm);

}  // namespace evencount::render
