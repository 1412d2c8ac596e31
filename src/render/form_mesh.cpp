#include <algorithm>
#include <numbers>

#include "form/staying_on.hpp"
#include "render/mesh.hpp"

namespace evencount::render {
namespace {

using form::Point;

using std::numbers::pi;
constexpr double chord_error_mm = 0.004;
constexpr double crease = 0.8;  ///< cosine between normals of faces that are smoothed into each other

/// The section's outline with points where the line x = 0 crosses it, so that it can be cut in two there.
std::vector<Point> outline_of(const form::ConvexCurve& section) {
  const auto points = form::sample(section, millimetres(chord_error_mm));
  std::vector<Point> outline;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const Point a = points[i], b = points[(i + 1) % points.size()];
    outline.push_back(a);
    const double share = a.x_mm / (a.x_mm - b.x_mm);
    if (a.x_mm * b.x_mm < 0 && share > 1e-9 && share < 1 - 1e-9)
      outline.push_back({0, a.y_mm + share * (b.y_mm - a.y_mm)});
    else if (std::abs(a.x_mm) < 1e-12)
      outline.back().x_mm = 0;
  }
  std::vector<Point> distinct;  // a sharp tip is sampled by several normals
  for (const Point p : outline)
    if (distinct.empty() || std::hypot(p.x_mm - distinct.back().x_mm, p.y_mm - distinct.back().y_mm) > 1e-6)
      distinct.push_back(p);
  return distinct;
}

/// How far the outline is drawn in at a height above the rim's beginning: a quarter of an ellipse.
struct EasedRing {
  double z = 0, share = 1;  ///< height, and the outline's size
};

std::vector<EasedRing> rings_of(double half_length, double thickness) {
  const double high = std::min(0.12 * thickness, 0.25 * half_length),
               in = 0.06;  // from memory: pressed glass is eased a little
  std::vector<EasedRing> rings;
  constexpr int steps = 6;
  for (const int side : {-1, 1})
    for (int i = 0; i <= steps; ++i) {
      const double angle = pi / 2 * (side < 0 ? steps - i : i) / steps;
      rings.push_back({side * (half_length - high + high * std::sin(angle)), 1 - in + in * std::cos(angle)});
    }
  return rings;
}

class Builder {
 public:
  explicit Builder(std::vector<Point> outline) : outline_(std::move(outline)) {}

  Mesh make(const std::vector<EasedRing>& rings, const std::vector<Point>& holes, double hole_radius) {
    for (const EasedRing& ring : rings)
      for (const Point p : outline_)
        mesh_.points.push_back({ring.share * p.x_mm, ring.share * p.y_mm, ring.z});
    const std::uint32_t around = size(outline_);
    for (std::uint32_t ring = 0; ring + 1 < rings.size(); ++ring)
      for (std::uint32_t k = 0; k < around; ++k) {
        const std::uint32_t a = ring * around + k, b = ring * around + (k + 1) % around;
        quad(a, b, b + around, a + around);
      }
    const std::uint32_t top = (static_cast<std::uint32_t>(rings.size()) - 1) * around;
    std::vector<std::vector<std::uint32_t>> bottoms, tops;
    if (holes.size() == 2) {
      add_halves(bottoms, 0);
      add_halves(tops, top);
    } else {
      bottoms.push_back(run(0, around));
      tops.push_back(run(top, top + around));
    }
    mesh_.first_of_hole = mesh_.triangles.size();
    for (std::size_t i = 0; i < bottoms.size(); ++i) {
      if (holes.empty()) {
        fan(bottoms[i], -1);
        fan(tops[i], 1);
        continue;
      }
      // The halves come +x first.
      const Point hole = holes.size() == 2 && (holes[0].x_mm < 0) == (i == 0) ? holes[1] : holes[i];
      pierce(bottoms[i], tops[i], hole, hole_radius);
    }
    return smoothed(mesh_);
  }

 private:
  template <typename All>
  static std::uint32_t size(const All& all) {
    return static_cast<std::uint32_t>(all.size());
  }
  static std::vector<std::uint32_t> run(std::uint32_t from, std::uint32_t to) {
    std::vector<std::uint32_t> all;
    for (std::uint32_t i = from; i < to; ++i) all.push_back(i);
    return all;
  }
  void triangle(std::uint32_t a, std::uint32_t b, std::uint32_t c) { mesh_.triangles.push_back({a, b, c}); }
  void quad(std::uint32_t a, std::uint32_t b, std::uint32_t c, std::uint32_t d) {
    triangle(a, b, c);
    triangle(a, c, d);
  }
  void fan(const std::vector<std::uint32_t>& loop, int side) {
    for (std::size_t i = 1; i + 1 < loop.size(); ++i)
      side > 0 ? triangle(loop[0], loop[i], loop[i + 1]) : triangle(loop[0], loop[i + 1], loop[i]);
  }

  /// The end's outline as two loops, cut along x = 0, with the points of the cut in both; counterclockwise seen from +z.
  void add_halves(std::vector<std::vector<std::uint32_t>>& loops, std::uint32_t first) {
    std::uint32_t up = 0, down = 0;  // where the outline crosses x = 0
    for (std::uint32_t i = 0; i < size(outline_); ++i)
      if (outline_[i].x_mm == 0) (outline_[i].y_mm > 0 ? up : down) = i;
    const auto from_to = [&](std::uint32_t a, std::uint32_t b) {
      std::vector<std::uint32_t> loop;
      for (std::uint32_t i = a;; i = (i + 1) % size(outline_)) {
        loop.push_back(first + i);
        if (i == b) return loop;
      }
    };
    std::vector<std::uint32_t> right = from_to(down, up), left = from_to(up, down);
    constexpr int cuts = 12;
    std::vector<std::uint32_t> cut;
    const Vec3 a = mesh_.points[first + up], b = mesh_.points[first + down];
    for (int i = 1; i < cuts; ++i) {
      cut.push_back(size(mesh_.points));
      mesh_.points.push_back(a + (static_cast<double>(i) / cuts) * (b - a));
    }
    right.insert(right.end(), cut.begin(), cut.end());
    left.insert(left.end(), cut.rbegin(), cut.rend());
    loops.push_back(std::move(right));
    loops.push_back(std::move(left));
  }

  /// Between each end's loop and a circle whose points lie in the same directions from the hole's middle, and the hole's wall.
  void pierce(const std::vector<std::uint32_t>& bottom, const std::vector<std::uint32_t>& top, Point hole,
              double radius) {
    const auto on_circle = [&](std::uint32_t vertex) {
      const Vec3 p = mesh_.points[vertex];
      const double x = p.x - hole.x_mm, y = p.y - hole.y_mm, far = std::hypot(x, y);
      mesh_.points.push_back({hole.x_mm + radius * x / far, hole.y_mm + radius * y / far, p.z});
      return size(mesh_.points) - 1;
    };
    std::vector<std::uint32_t> low, high;
    for (const std::uint32_t v : bottom) low.push_back(on_circle(v));
    for (const std::uint32_t v : top) high.push_back(on_circle(v));
    for (std::size_t i = 0; i < bottom.size(); ++i) {
      const std::size_t next = (i + 1) % bottom.size();
      quad(bottom[next], bottom[i], low[i], low[next]);
      quad(top[i], top[next], high[next], high[i]);
      quad(low[next], low[i], high[i], high[next]);
    }
  }

  /// Normals by the faces round each corner that don't bend away too far; corners with a crease become several points.
  static Mesh smoothed(const Mesh& flat) {
    std::vector<Vec3> face(flat.triangles.size());
    std::vector<std::vector<std::uint32_t>> faces_at(flat.points.size());
    for (std::uint32_t t = 0; t < flat.triangles.size(); ++t) {
      const auto& [a, b, c] = flat.triangles[t];
      face[t] = cross(flat.points[b] - flat.points[a], flat.points[c] - flat.points[a]);
      for (const std::uint32_t v : flat.triangles[t]) faces_at[v].push_back(t);
    }
    Mesh mesh{.first_of_hole = flat.first_of_hole};
    for (std::uint32_t t = 0; t < flat.triangles.size(); ++t) {
      const Vec3 own = unit(face[t]);
      for (const std::uint32_t v : flat.triangles[t]) {
        Vec3 sum;
        for (const std::uint32_t other : faces_at[v])
          if (norm(face[other]) > 0 && dot(unit(face[other]), own) > crease) sum = sum + face[other];
        mesh.points.push_back(flat.points[v]);
        mesh.normals.push_back(unit(sum));
      }
      mesh.triangles.push_back({3 * t, 3 * t + 1, 3 * t + 2});
    }
    return mesh;
  }

  std::vector<Point> outline_;
  Mesh mesh_;
};

}  // namespace

Result<Mesh> form_mesh(const form::Form& form, double length_mm) {
  const auto section = form::section(form);
  if (!section) return section.problem();
  std::vector<Point> centres;
  double hole_radius = 0;
  if (const auto holes = form::holes_of(form)) {
    hole_radius = holes->diameter.mm() / 2;
    if (holes->count == 2)
      centres = {{holes->spacing.mm() / 2, 0}, {-holes->spacing.mm() / 2, 0}};
    else
      centres = {{0, 0}};
  }
  Builder builder(outline_of(*section));
  return builder.make(rings_of(length_mm / 2, form.thickness.mm()), centres, hole_radius);
}

}  // namespace evencount::render
