#pragma once
/// Where the picture is taken from, and through what lens.
///
/// Properties (tests/render/camera_test.cpp):
///  (1) with a closed lens all rays of a picture point pass through one line; its middle looks at the target
///  (2) with an open one, rays of a picture point meet again at the focused distance, within 1e-9 mm
///  (3) pixel_of(camera, p) is where the ray through p comes from
///  (4) framed: every given ball lies in the picture with the margin, and touches it

#include <span>

#include "render/sampling.hpp"

namespace evencount::render {

struct Camera {
  Vec3 at{0, 0, 300};
  Vec3 target;
  Vec3 up{0, 1, 0};         ///< not along the line of sight
  double half_view = 0.18;  ///< tangent of half the angle along the picture's longer side
  double lens_mm = 0;       ///< diameter of the lens; 0 keeps everything sharp
  double focus_mm = 300;    ///< distance along the line of sight that is sharp
};

/// A place in the picture: 0 to 1 from left to right and from top to bottom.
struct PicturePoint {
  double x = 0, y = 0;
};

/// Width over height.
[[nodiscard]] Ray ray_through(const Camera& camera, double aspect, PicturePoint point, DiscPoint lens);
/// Where a point in front of the camera is seen through the lens's middle.
[[nodiscard]] PicturePoint pixel_of(const Camera& camera, double aspect, Vec3 point);

struct Ball {
  Vec3 middle;
  double radius_mm = 0;
};

/// The camera moved, its direction kept, so that all balls fill the picture but for a margin (share of the shorter side on each side).
/// Focused on the plane through the old target. At least one ball.
[[nodiscard]] Camera framed(Camera camera, double aspect, std::span<const Ball> balls, double margin);

}  // namespace evencount::render
