#include "render/camera.hpp"

#include <gtest/gtest.h>

#include <random>
#include <vector>

namespace evencount::render {
namespace {

Camera some_camera(std::mt19937& random) {
  std::uniform_real_distribution<double> share(-1, 1);
  Camera camera;
  camera.at = {100 * share(random), -200 + 50 * share(random), 150 + 50 * share(random)};
  camera.target = {20 * share(random), 20 * share(random), 0};
  camera.up = {0, 0, 1};
  camera.lens_mm = 8;
  camera.focus_mm = norm(camera.target - camera.at);
  return camera;
}

// (1), (3)
TEST(Camera, TheMiddleLooksAtTheTarget) {
  std::mt19937 random(1);
  std::uniform_real_distribution<double> share;
  for (int i = 0; i < 100; ++i) {
    const Camera camera = some_camera(random);
    const Ray middle = ray_through(camera, 1.5, {0.5, 0.5}, {});
    EXPECT_NEAR(norm(middle.towards - unit(camera.target - camera.at)), 0, 1e-12);
    const PicturePoint p{share(random), share(random)};
    const Ray ray = ray_through(camera, 1.5, p, {});
    EXPECT_EQ(ray.from, camera.at);
    const PicturePoint back = pixel_of(camera, 1.5, ray.from + 77 * ray.towards);
    EXPECT_NEAR(back.x, p.x, 1e-12);
    EXPECT_NEAR(back.y, p.y, 1e-12);
  }
}

// (2)
TEST(Camera, RaysMeetAtTheFocusedDistance) {
  std::mt19937 random(2);
  std::uniform_real_distribution<double> share(-0.7, 0.7);
  for (int i = 0; i < 100; ++i) {
    const Camera camera = some_camera(random);
    const Vec3 sight = unit(camera.target - camera.at);
    const PicturePoint p{0.3, 0.8};
    const auto meets = [&](const Ray& ray) {
      return ray.from +
             (camera.focus_mm - dot(ray.from - camera.at, sight)) / dot(ray.towards, sight) * ray.towards;
    };
    const Vec3 sharp = meets(ray_through(camera, 1.2, p, {}));
    EXPECT_NEAR(norm(meets(ray_through(camera, 1.2, p, {share(random), share(random)})) - sharp), 0, 1e-9);
  }
}

// (4)
TEST(Camera, FramedBallsTouchTheMargin) {
  std::mt19937 random(3);
  std::uniform_real_distribution<double> share(-1, 1);
  for (int i = 0; i < 60; ++i) {
    std::vector<Ball> balls;
    for (int k = 0; k < 8; ++k)
      balls.push_back(
          {{30 * share(random), 20 * share(random), 5 * share(random)}, 1 + std::abs(share(random))});
    const double aspect = i % 2 == 0 ? 4.0 / 3 : 0.7, margin = 0.06;
    const Camera camera = framed(some_camera(random), aspect, balls, margin);
    double nearest = 1;
    for (const Ball& ball : balls)
      for (int k = 0; k < 3000; ++k) {
        const Vec3 on = ball.middle + ball.radius_mm * unit({share(random), share(random), share(random)});
        const PicturePoint p = pixel_of(camera, aspect, on);
        // The margin is a share of the shorter side.
        const double x = std::min(p.x, 1 - p.x) * std::max(1.0, aspect),
                     y = std::min(p.y, 1 - p.y) * std::max(1.0, 1 / aspect);
        nearest = std::min({nearest, x, y});
      }
    EXPECT_GE(nearest, margin - 1e-9);
    EXPECT_LT(nearest, margin + 0.02);
  }
}

}  // namespace
}  // namespace evencount::render
