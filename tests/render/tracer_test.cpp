#include "render/tracer.hpp"

#include <gtest/gtest.h>

#include "scenes.hpp"
#include "support/sanitized.hpp"

namespace evencount::render {
namespace {

using namespace testing_support;

/// The nearest triangle of all, one by one (T. Möller, B. Trumbore 1997).
std::optional<double> slow_search(const Scene& scene, const Ray& ray) {
  std::optional<double> nearest;
  for (const Placed& solid : scene.solids)
    for (const auto& t : scene.meshes[solid.mesh].triangles) {
      const auto& points = scene.meshes[solid.mesh].points;
      const Vec3 a = solid.placement.point(points[t[0]]), ab = solid.placement.point(points[t[1]]) - a,
                 ac = solid.placement.point(points[t[2]]) - a;
      const Vec3 p = cross(ray.towards, ac);
      const double det = dot(ab, p);
      if (std::abs(det) < 1e-14) continue;
      const Vec3 s = ray.from - a, q = cross(s, ab);
      const double u = dot(s, p) / det, v = dot(ray.towards, q) / det, distance = dot(ac, q) / det;
      if (u < 0 || v < 0 || u + v > 1 || distance <= 0) continue;
      if (!nearest || distance < *nearest) nearest = distance;
    }
  return nearest;
}

// (1), (2), (3)
TEST(Tracer, FindsWhatASlowSearchFinds) {
  Scene scene = heap({plain(grey(0.5))}, 25, 3);
  scene.strands.clear();
  const Tracer tracer = Tracer::build(scene).value();
  std::mt19937 random(4);
  std::uniform_real_distribution<double> share(-1, 1);
  constexpr int rays = sanitized ? 1000 : 3000;
  int hits = 0, different = 0;
  for (int i = 0; i < rays; ++i) {
    const Vec3 from = 14 * unit({share(random), share(random), share(random)});
    const Ray ray{from, unit(Vec3{3 * share(random), 3 * share(random), 2 + share(random)} - from)};
    const auto found = tracer.closest(ray);
    const auto slow = slow_search(scene, ray);
    if (found.has_value() != slow.has_value() || (found && std::abs(found->distance_mm - *slow) > 1e-4)) {
      ++different;
      continue;
    }
    EXPECT_EQ(tracer.bare(ray), found.has_value());
    EXPECT_EQ(tracer.hidden(ray, 1e6), found.has_value());
    if (!found) continue;
    ++hits;
    EXPECT_FALSE(tracer.hidden(ray, found->distance_mm * 0.999));
    EXPECT_NEAR(norm(found->normal), 1, 1e-6);
    EXPECT_NEAR(norm(found->smooth), 1, 1e-6);
    EXPECT_GT(dot(found->normal, found->smooth), 0.5);
    EXPECT_LT(dot(found->normal, ray.towards), 0);  // from outside
  }
  EXPECT_GT(hits, rays * 4 / 15);
  EXPECT_LE(different, 2);  // a ray that runs along an outline: single precision may see it pass
}

TEST(Tracer, GroundLiesBelow) {
  Scene scene;
  scene.ground = {GroundKind::paper, 2, grey(0.5)};
  const Tracer tracer = Tracer::build(scene).value();
  const auto hit = tracer.closest({{0, 0, 5}, {0, 0, -1}});
  ASSERT_TRUE(hit);
  EXPECT_TRUE(hit->ground);
  EXPECT_DOUBLE_EQ(hit->distance_mm, 3);
  EXPECT_FALSE(tracer.closest({{0, 0, 5}, {0, 0, 1}}));
  EXPECT_TRUE(tracer.hidden({{0, 0, 5}, {0, 0, -1}}, 4));
  EXPECT_FALSE(tracer.hidden({{0, 0, 5}, {0, 0, -1}}, 2));
}

TEST(Tracer, RefusesWhatIsNotThere) {
  Scene scene = heap({plain(grey(0.5))}, 3, 1);
  scene.solids[1].mesh = 9;
  EXPECT_EQ(Tracer::build(scene).problem().code, ProblemCode::out_of_range);
  scene.solids[1].mesh = 0;
  scene.solids[1].placement.origin.x = std::nan("");
  EXPECT_EQ(Tracer::build(scene).problem().code, ProblemCode::out_of_range);
  scene.solids.clear();
  scene.strands = {{{{0, 0, 0}}, 1, 0}};
  EXPECT_EQ(Tracer::build(scene).problem().code, ProblemCode::out_of_range);
}

}  // namespace
}  // namespace evencount::render
