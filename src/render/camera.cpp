#include "render/camera.hpp"

namespace evencount::render {
namespace {

/// The camera's own directions: right, up, and along the line of sight.
Frame frame_of(const Camera& camera) {
  const Vec3 sight = unit(camera.target - camera.at);
  const Vec3 right = unit(cross(sight, camera.up));
  return {right, cross(right, sight), sight};
}

/// Tangents of half the view across and up.
struct HalfView {
  double across = 0, up = 0;
};
HalfView half_view_of(const Camera& camera, double aspect) {
  return aspect >= 1 ? HalfView{camera.half_view, camera.half_view / aspect}
                     : HalfView{camera.half_view * aspect, camera.half_view};
}

struct Span {
  double low = 1e30, high = -1e30;
};

}  // namespace

Ray ray_through(const Camera& camera, double aspect, PicturePoint point, DiscPoint lens) {
  const Frame frame = frame_of(camera);
  const HalfView half = half_view_of(camera, aspect);
  const Vec3 through = (2 * point.x - 1) * half.across * frame.tangent +
                       (1 - 2 * point.y) * half.up * frame.bitangent + frame.normal;
  const double radius = camera.lens_mm / 2;
  const Vec3 aside = radius * lens.x * frame.tangent + radius * lens.y * frame.bitangent;
  return {camera.at + aside, unit(camera.focus_mm * through - aside)};
}

PicturePoint pixel_of(const Camera& camera, double aspect, Vec3 point) {
  const Frame frame = frame_of(camera);
  const HalfView half = half_view_of(camera, aspect);
  const Vec3 p = frame.to_local(point - camera.at);
  return {(p.x / (p.z * half.across) + 1) / 2, (1 - p.y / (p.z * half.up)) / 2};
}

Camera framed(Camera camera, double aspect, std::span<const Ball> balls, double margin) {
  const Frame frame = frame_of(camera);
  HalfView half = half_view_of(camera, aspect);
  const double shorter = std::min(half.across, half.up);
  half = {half.across - 2 * margin * shorter, half.up - 2 * margin * shorter};
  // A ball is seen within the view where its middle is within planes moved inwards by its radius. Each plane is a line in (aside, distance):
  // aside - tangent x depth <= -radius / cosine; so the tightest of all balls on both sides meet in the place of the camera.
  const auto fit = [&](Vec3 axis, double tangent) {
    const double slope = std::sqrt(1 + tangent * tangent);
    Span span;
    for (const Ball& ball : balls) {
      const double aside = dot(ball.middle, axis), depth = dot(ball.middle, frame.normal),
                   room = slope * ball.radius_mm;
      span.high = std::max(span.high, aside - tangent * depth + room);
      span.low = std::min(span.low, aside + tangent * depth - room);
    }
    struct Place {
      double aside, depth;
    };
    return Place{(span.high + span.low) / 2, -(span.high - span.low) / (2 * tangent)};
  };
  const auto across = fit(frame.tangent, half.across), up = fit(frame.bitangent, half.up);
  const double depth = std::min(across.depth, up.depth);
  // Standing further off than one direction needs leaves room there: its middle is kept by sight, not by equal planes.
  const Vec3 at = across.aside * frame.tangent + up.aside * frame.bitangent + depth * frame.normal;
  const double distance = dot(camera.target, frame.normal) - depth;
  camera.at = at;
  camera.target = at + distance * frame.normal;
  camera.focus_mm = distance;
  return camera;
}

}  // namespace evencount::render
