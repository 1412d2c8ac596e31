#include "render/mesh.hpp"

#include <gtest/gtest.h>

#include <map>
#include <numbers>

#include "form/sections.hpp"

namespace evencount::render {
namespace {

using std::numbers::pi;

/// Places that are the same to a hundredth of a micrometre.
std::array<long, 3> place(Vec3 p) {
  return {std::lround(p.x * 1e5), std::lround(p.y * 1e5), std::lround(p.z * 1e5)};
}

// (1)
void expect_closed(const Mesh& mesh, const char* what) {
  std::map<std::pair<std::array<long, 3>, std::array<long, 3>>, int> edges;
  for (const auto& t : mesh.triangles) {
    const std::array corners{place(mesh.points[t[0]]), place(mesh.points[t[1]]), place(mesh.points[t[2]])};
    if (corners[0] == corners[1] || corners[1] == corners[2] || corners[2] == corners[0])
      continue;  // no area
    for (std::size_t k = 0; k < 3; ++k) ++edges[{corners[k], corners[(k + 1) % 3]}];
  }
  int wrong = 0;
  for (const auto& [edge, count] : edges) {
    const auto back = edges.find({edge.second, edge.first});
    wrong += count != 1 || back == edges.end() || back->second != 1;
  }
  EXPECT_EQ(wrong, 0) << what << " of " << edges.size();
}

// (4)
void expect_good_normals(const Mesh& mesh, const char* what) {
  ASSERT_EQ(mesh.points.size(), mesh.normals.size());
  int wrong = 0;
  for (const auto& t : mesh.triangles) {
    const Vec3 face = cross(mesh.points[t[1]] - mesh.points[t[0]], mesh.points[t[2]] - mesh.points[t[0]]);
    if (norm(face) < 1e-9) continue;
    for (const std::uint32_t v : t)
      wrong += std::abs(norm(mesh.normals[v]) - 1) > 1e-9 || dot(mesh.normals[v], face) <= 0;
  }
  EXPECT_EQ(wrong, 0) << what << " of " << mesh.triangles.size();
}

TEST(Mesh, EveryBeadIsClosedAndWithinItsSize) {
  for (const bead::Size& size : bead::sizes()) {
    const BeadShape shape = shape_of(size);
    const Mesh mesh = bead_mesh(shape);
    expect_closed(mesh, size.id.c_str());
    expect_good_normals(mesh, size.id.c_str());
    double widest = 0, longest = 0, nearest = 1e9;  // (3)
    for (const Vec3 p : mesh.points) {
      const double away = std::hypot(p.x, p.y);
      widest = std::max(widest, away), nearest = std::min(nearest, away),
      longest = std::max(longest, std::abs(p.z));
    }
    EXPECT_NEAR(widest, shape.radius_mm, 1e-9);
    EXPECT_NEAR(nearest, shape.hole_radius_mm, 1e-9);
    EXPECT_LE(longest, shape.half_length_mm + 1e-9);
    EXPECT_GT(longest, 0.97 * shape.half_length_mm);
    // The hole's triangles are those on its wall.
    for (std::size_t t = mesh.first_of_hole; t < mesh.triangles.size(); ++t)
      for (const std::uint32_t v : mesh.triangles[t])
        EXPECT_NEAR(std::hypot(mesh.points[v].x, mesh.points[v].y), shape.hole_radius_mm, 1e-9);
    EXPECT_LT(mesh.first_of_hole, mesh.triangles.size());
  }
}

// (2)
TEST(Mesh, VolumesByClosedForm) {
  const double facets = 56 / (2 * pi) * std::sin(2 * pi / 56);  // a polygon's area over its circle's
  const Mesh sharp = bead_mesh({0.8, 0.65, 0.4, 1e-4});
  EXPECT_NEAR(volume_of(sharp), facets * pi * (0.64 - 0.16) * 1.3, 2e-3);
  // Rounded lips take away; Pappus: each of the four rounded edges (1 - pi / 4) r^2 turned about the axis.
  const double r = 0.16, q = 0.6 * r;
  const auto edge = [](double radius, double at, double side) {
    const double area = (1 - pi / 4) * radius * radius,
                 off = radius * (5 / 6.0 - pi / 4) / (1 - pi / 4);  // its middle, from the arc's centre
    return area * 2 * pi * (at + side * off);
  };
  const double lips = 2 * edge(r, 0.8 - r, 1) + 2 * edge(q, 0.4 + q, -1);
  EXPECT_NEAR(volume_of(bead_mesh({0.8, 0.65, 0.4, r})), facets * (pi * 0.48 * 1.3 - lips),
              1e-2);  // lips have facets too
  EXPECT_NEAR(volume_of(ring_mesh(3, 0.5)), 2 * pi * pi * 3 * 0.25, 0.03 * 2 * pi * pi * 3 * 0.25);
  EXPECT_NEAR(volume_of(box_mesh(2, 3, 4, 1e-3)), 24, 0.05);
  const double ball = volume_of(box_mesh(2, 2, 2, 1));
  EXPECT_LT(ball, 4 * pi / 3);
  EXPECT_GT(ball, 0.9 * 4 * pi / 3);
}

TEST(Mesh, RingsAndBoxesAreClosed) {
  for (const auto& [mesh, what] :
       {std::pair{ring_mesh(3, 0.5), "ring"}, std::pair{box_mesh(2, 3, 4, 0.4), "box"}}) {
    expect_closed(mesh, what);
    expect_good_normals(mesh, what);
  }
}

TEST(Mesh, FormsAreClosedWithTheirHolesOpen) {
  for (const char* notation :
       {"lens:16x5x9,holes=9.6,hole=2", "lens:17x5x9,tip=0.5", "round:12x20", "oval:18x13x5", "bar:20x4x10",
        "dome:20x6x10,edge=0.5", "bar:20x4x10,holes=12,hole=1.5"}) {
    const form::Form form = form::parse_form(notation).value();
    const auto mesh = form_mesh(form, form.length_along_holes->mm());
    ASSERT_TRUE(mesh) << notation;
    expect_closed(*mesh, notation);
    const auto points = form::sample(form::section(form).value(), millimetres(0.001));
    double area = 0;
    for (std::size_t i = 0; i < points.size(); ++i) {
      const form::Point a = points[i], b = points[(i + 1) % points.size()];
      area += (a.x_mm * b.y_mm - b.x_mm * a.y_mm) / 2;
    }
    const double length = form.length_along_holes->mm(), whole = area * length;
    // Holes and eased rims take a little away.
    EXPECT_LT(volume_of(*mesh), whole) << notation;
    EXPECT_GT(volume_of(*mesh), 0.8 * whole) << notation;
    EXPECT_LT(mesh->first_of_hole, mesh->triangles.size());
  }
}

}  // namespace
}  // namespace evencount::render
