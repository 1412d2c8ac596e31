#include "fabric/neighbours.hpp"

#include <algorithm>
#include <array>
#include <cstdint>

namespace evencount::fabric {
namespace {

struct Corner {
  std::int64_t x, y, z;
  auto operator<=>(const Corner&) const = default;
};

struct Placed {
  Corner cell;
  std::size_t bead;
  auto operator<=>(const Placed&) const = default;
};

}  // namespace

std::vector<Pair> close_pairs(std::span<const Cylinder> beads, double margin_mm) {
  double widest = 0;
  for (const Cylinder& bead : beads) widest = std::max(widest, reach_mm(bead));
  const double size = 2 * widest + margin_mm;
  const auto cell_of = [&](Vec3 p) {
    const auto number = [&](double mm) { return static_cast<std::int64_t>(std::floor(mm / size)); };
    return Corner{number(p.x), number(p.y), number(p.z)};
  };
  std::vector<Placed> placed;
  placed.reserve(beads.size());
  for (std::size_t i = 0; i < beads.size(); ++i) placed.push_back({cell_of(beads[i].middle), i});
  std::sort(placed.begin(), placed.end());

  std::vector<Pair> pairs;
  for (std::size_t i = 0; i < beads.size(); ++i) {
    const Corner here = cell_of(beads[i].middle);
    for (int dx = -1; dx <= 1; ++dx) {
      for (int dy = -1; dy <= 1; ++dy) {
        // Cells that differ in z only stand next to each other in the order.
        const Placed from{{here.x + dx, here.y + dy, here.z - 1}, 0};
        for (auto at = std::lower_bound(placed.begin(), placed.end(), from);
             at != placed.end() && at->cell <= Corner{here.x + dx, here.y + dy, here.z + 1}; ++at) {
          if (at->bead <= i) continue;
          const double near = reach_mm(beads[i]) + reach_mm(beads[at->bead]) + margin_mm;
          const Vec3 way = beads[at->bead].middle - beads[i].middle;
          if (dot(way, way) < near * near) pairs.push_back({i, at->bead});
        }
      }
    }
  }
  std::sort(pairs.begin(), pairs.end(), [](const Pair& a, const Pair& b) {
    return std::pair(a.first, a.second) < std::pair(b.first, b.second);
  });
  return pairs;
}

}  // namespace evencount::fabric
