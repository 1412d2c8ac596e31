#include "render/mesh.hpp"

#include <algorithm>
#include <numbers>

namespace evencount::render {
namespace {

using std::numbers::pi;

/// An arc of a profile about (along, away) from one angle to another; 0 points along the axis, a quarter turn away from it. Its normals lead
/// out of the arc's circle.
void add_arc(std::vector<ProfilePoint>& profile, double along, double away, double radius, double from,
             double to, int steps) {
  for (int i = 0; i <= steps; ++i) {
    const double angle = from + (to - from) * i / steps;
    const double c = std::cos(angle), s = std::sin(angle);
    profile.push_back({along + radius * c, away + radius * s, c, s});
  }
}

}  // namespace

double volume_of(const Mesh& mesh) {
  double sum = 0;
  for (const auto& t : mesh.triangles)
    sum += dot(mesh.points[t[0]], cross(mesh.points[t[1]], mesh.points[t[2]])) / 6;
  return sum;
}

Mesh turned(std::span<const ProfilePoint> profile, int segments, std::size_t first_of_hole) {
  Mesh mesh;
  const auto around = static_cast<std::uint32_t>(segments);
  const auto count = static_cast<std::uint32_t>(profile.size());
  for (const ProfilePoint& p : profile)
    for (std::uint32_t k = 0; k < around; ++k) {
      const double angle = 2 * pi * k / segments, c = std::cos(angle), s = std::sin(angle);
      mesh.points.push_back({p.away * c, p.away * s, p.along});
      mesh.normals.push_back(unit({p.normal_away * c, p.normal_away * s, p.normal_along}));
    }
  for (std::uint32_t i = 0; i < count; ++i) {
    if (i == first_of_hole) mesh.first_of_hole = mesh.triangles.size();
    const std::uint32_t next = (i + 1) % count;
    for (std::uint32_t k = 0; k < around; ++k) {
      const std::uint32_t a = i * around + k, b = i * around + (k + 1) % around;
      const std::uint32_t c = next * around + (k + 1) % around, d = next * around + k;
      mesh.triangles.push_back({a, b, c});
      mesh.triangles.push_back({a, c, d});
    }
  }
  return mesh;
}

BeadShape shape_of(const bead::Size& size) {
  const double radius = size.diameter.mm() / 2;
  const double half = size.length.mm() / 2;
  const bool tumbled = size.kind == bead::Kind::round && half < 0.95 * radius;  // as long as wide: a ball
  return {radius, half, std::min(size.hole.mm() / 2, 0.85 * radius), bead::rim(size).mm(), tumbled};
}

namespace {

/// Half a turn and a bit round the wall's section, then straight through the hole. From the middle of the side, clockwise.
std::vector<ProfilePoint> tumbled_profile(const BeadShape& s) {
  constexpr int steps = 32;
  constexpr double power = 2 / 2.15;
  const double middle = (s.radius_mm + s.hole_radius_mm) / 2, wall = (s.radius_mm - s.hole_radius_mm) / 2;
  std::vector<ProfilePoint> profile;
  const auto bent = [](double x, double p) { return std::copysign(std::pow(std::abs(x), p), x); };
  for (int i = 0; i < steps; ++i) {
    const double angle = pi / 2 - 2 * pi * (i + 0.5) / steps, c = std::cos(angle), sine = std::sin(angle);
    const double n_along = bent(c, 2 - power) / s.half_length_mm, n_away = bent(sine, 2 - power) / wall,
                 n = std::hypot(n_along, n_away);
    profile.push_back(
        {s.half_length_mm * bent(c, power), middle + wall * bent(sine, power), n_along / n, n_away / n});
  }
  // The pieces beside the middle of the side and of the hole are drawn out to the full radii, straight along.
  for (ProfilePoint* p : {&profile.front(), &profile.back()})
    p->away = s.radius_mm, p->normal_along = 0, p->normal_away = 1;
  for (ProfilePoint* p : {&profile[steps / 2 - 1], &profile[steps / 2]})
    p->away = s.hole_radius_mm, p->normal_along = 0, p->normal_away = -1;
  return profile;
}

}  // namespace

std::vector<ProfilePoint> bead_profile(const BeadShape& s) {
  if (s.tumbled) return tumbled_profile(s);
  // From the middle of the side over the lip to the mouth, through the hole to the other mouth and back; the second half mirrors the first.
  const double rim = std::min({s.rim_mm, s.half_length_mm, s.radius_mm});
  const double lip_along = s.half_length_mm - rim, lip_away = s.radius_mm - rim;
  const double wall = s.radius_mm - s.hole_radius_mm;
  const double mouth = std::min({0.6 * rim, 0.45 * wall, 0.45 * s.half_length_mm});
  // The mouth's rounding touches the end from within: the lip's circle where it reaches the hole, the flat end otherwise.
  const double mouth_away = s.hole_radius_mm + mouth;
  const bool into_lip = mouth_away > lip_away;
  const double rise = mouth_away - lip_away;
  const double mouth_along =
      into_lip ? lip_along + std::sqrt(std::max(0.0, (rim - mouth) * (rim - mouth) - rise * rise))
               : s.half_length_mm - mouth;
  const double meets = into_lip ? std::atan2(rise, mouth_along - lip_along) : 0.0;
  std::vector<ProfilePoint> half;
  add_arc(half, lip_along, lip_away, rim, pi / 2, meets, 8);
  add_arc(half, mouth_along, mouth_away, mouth, meets, -pi / 2, 6);
  std::vector<ProfilePoint> profile(half);
  for (auto p = half.rbegin(); p != half.rend(); ++p)
    profile.push_back({-p->along, p->away, -p->normal_along, p->normal_away});
  // Points that two pieces share, or that lie on the mirror line, come once.
  std::vector<ProfilePoint> distinct;
  for (const ProfilePoint& p : profile)
    if (distinct.empty() || std::hypot(p.along - distinct.back().along, p.away - distinct.back().away) > 1e-9)
      distinct.push_back(p);
  if (std::hypot(distinct.front().along - distinct.back().along,
                 distinct.front().away - distinct.back().away) < 1e-9)
    distinct.pop_back();
  return distinct;
}

Mesh bead_mesh(const BeadShape& shape, int segments) {
  const auto profile = bead_profile(shape);
  // The hole is the piece between the two mouths: the longest one beside the axis.
  std::size_t hole = 0;
  for (std::size_t i = 0; i + 1 < profile.size(); ++i)
    if (profile[i].normal_away < -0.999 && profile[i + 1].normal_away < -0.999) hole = i;
  // It goes last, so that the triangles from one on are the hole's.
  std::vector<ProfilePoint> from_hole(profile.begin() + static_cast<std::ptrdiff_t>(hole) + 1, profile.end());
  from_hole.insert(from_hole.end(), profile.begin(), profile.begin() + static_cast<std::ptrdiff_t>(hole) + 1);
  return turned(from_hole, segments, from_hole.size() - 1);
}

Mesh ring_mesh(double radius_mm, double wire_radius_mm) {
  std::vector<ProfilePoint> wire;
  add_arc(wire, 0, radius_mm, wire_radius_mm, 2 * pi, 0, 16);
  wire.pop_back();
  return turned(wire, 48);
}

Mesh box_mesh(double x_mm, double y_mm, double z_mm, double rounding_mm) {
  // A ball whose eight octants are moved apart, its seams stretched into the faces.
  const double r = std::min({rounding_mm, x_mm / 2, y_mm / 2, z_mm / 2});
  const Vec3 core{x_mm / 2 - r, y_mm / 2 - r, z_mm / 2 - r};
  constexpr std::uint32_t quarter = 5, around = 4 * quarter, rows = 2 * quarter;
  Mesh mesh;
  for (std::uint32_t row = 0; row < rows; ++row)
    for (std::uint32_t k = 0; k < around; ++k) {
      const auto in_octant = [](std::uint32_t i) {
        return pi / 2 * ((i % quarter) / double{quarter - 1} + i / quarter);
      };
      const double up = in_octant(row) - pi / 2, turn = in_octant(k);
      const Vec3 n{std::cos(up) * std::cos(turn), std::cos(up) * std::sin(turn), std::sin(up)};
      const bool right = k < quarter || k >= 3 * quarter, back = k < 2 * quarter, top = row >= quarter;
      mesh.normals.push_back(n);
      mesh.points.push_back(r * n +
                            Vec3{right ? core.x : -core.x, back ? core.y : -core.y, top ? core.z : -core.z});
    }
  const auto at = [&](std::uint32_t row, std::uint32_t k) { return row * around + k % around; };
  for (std::uint32_t row = 0; row + 1 < rows; ++row)
    for (std::uint32_t k = 0; k < around; ++k) {
      mesh.triangles.push_back({at(row, k), at(row, k + 1), at(row + 1, k + 1)});
      mesh.triangles.push_back({at(row, k), at(row + 1, k + 1), at(row + 1, k)});
    }
  for (const std::uint32_t row : {0u, rows - 1})  // the two flat faces across z
    for (std::uint32_t k = 1; k + 1 < around; ++k) {
      if (row == 0)
        mesh.triangles.push_back({at(row, 0), at(row, k + 1), at(row, k)});
      else
        mesh.triangles.push_back({at(row, 0), at(row, k), at(row, k + 1)});
    }
  return mesh;
}

Mesh oval_tube_mesh(double half_x_mm, double half_y_mm, double half_length_mm) {
  Mesh mesh;
  constexpr std::uint32_t around = 256;
  for (const double z : {-half_length_mm, half_length_mm})
    for (std::uint32_t k = 0; k < around; ++k) {
      const double turn = 2 * pi * k / around, c = std::cos(turn), s = std::sin(turn);
      mesh.points.push_back({half_x_mm * c, half_y_mm * s, z});
      mesh.normals.push_back(unit({half_y_mm * c, half_x_mm * s, 0}));
    }
  for (std::uint32_t k = 0; k < around; ++k) {
    const std::uint32_t next = (k + 1) % around;
    mesh.triangles.push_back({k, next, around + next});
    mesh.triangles.push_back({k, around + next, around + k});
  }
  return mesh;
}

}  // namespace evencount::render
