#include <cstdint>

#include "base/text.hpp"
#include "render/scene.hpp"

namespace evencount::render {
namespace {

/// Smooth noise, -1 to 1, that changes over a distance of 1.
double noise(double x, double y, std::uint32_t kind) {
  const double fx = std::floor(x), fy = std::floor(y);
  const auto at = [&](int dx, int dy) {
    const auto ix = static_cast<std::uint32_t>(static_cast<std::int32_t>(fx) + dx);
    const auto iy = static_cast<std::uint32_t>(static_cast<std::int32_t>(fy) + dy);
    return 2 * share_of(hashed(hashed(ix, kind), iy)) - 1;
  };
  const auto eased = [](double t) { return t * t * (3 - 2 * t); };
  const double u = eased(x - fx), v = eased(y - fy);
  return (1 - v) * ((1 - u) * at(0, 0) + u * at(1, 0)) + v * ((1 - u) * at(0, 1) + u * at(1, 1));
}

/// Plain weave of yarns half a millimetre apart, some thicker than others; from memory of linen of about 20 threads a centimetre.
GroundSpot linen_spot(double x, double y) {
  constexpr double yarn_mm = 0.5, pi = 3.14159265358979323846;
  const double u = x / yarn_mm + 0.18 * noise(x / 3, y / 9, 1),
               v = y / yarn_mm + 0.18 * noise(x / 9, y / 3, 2);
  const double across = std::sin(pi * u), along = std::sin(pi * v);
  // Which of the two yarns lies on top, and how far round its own middle the spot is.
  const bool warp_on_top =
      (static_cast<std::int64_t>(std::floor(u)) + static_cast<std::int64_t>(std::floor(v))) % 2 == 0;
  const double round = warp_on_top ? std::abs(across) : std::abs(along);
  const double slub = warp_on_top ? noise(u / 1.0, y / 14, 3) : noise(x / 14, v / 1.0, 4);
  GroundSpot spot;
  spot.shade = (0.80 + 0.20 * round) * (1 + 0.05 * slub + 0.03 * noise(x / 0.15, y / 0.15, 5));
  const double lean = 0.35 * std::cos(pi * (warp_on_top ? u - std::floor(u) : v - std::floor(v)));
  (warp_on_top ? spot.lean_x : spot.lean_y) = -lean;
  return spot;
}

}  // namespace

std::string_view ground_name(GroundKind kind) {
  switch (kind) {
    case GroundKind::none:
      return "none";
    case GroundKind::paper:
      return "paper";
    case GroundKind::linen:
      return "linen";
  }
  return "none";
}

Result<GroundKind> parse_ground(std::string_view name) {
  for (const GroundKind kind : {GroundKind::paper, GroundKind::linen, GroundKind::none})
    if (name == ground_name(kind)) return kind;
  return Problem{ProblemCode::unknown_name, "ground", quote(name), "paper, linen or none"};
}

GroundSpot ground_spot(GroundKind kind, double x, double y) {
  constexpr double far_mm = 1e5;  // a hundred metres off no yarn is seen
  if (!(std::abs(x) < far_mm && std::abs(y) < far_mm)) return {};
  if (kind == GroundKind::linen) return linen_spot(x, y);
  if (kind == GroundKind::paper)
    return {1 + 0.012 * noise(x / 0.25, y / 0.25, 6) + 0.008 * noise(x / 2, y / 2, 7),
            0.02 * noise(x / 0.4, y / 0.4, 8), 0.02 * noise(x / 0.4, y / 0.4, 9)};
  return {};
}

}  // namespace evencount::render
