#include "drawing/step_signs.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <numbers>

namespace evencount::drawing {
namespace {

constexpr double disc_apart_mm = 2 * disc_radius_mm + disc_gap_mm;

bool free_of(Point centre, const std::vector<Disc>& placed) {
  return std::all_of(placed.begin(), placed.end(),
                     [&](const Disc& other) { return distance(other.centre, centre) >= disc_apart_mm; });
}

/// From a point to a straight piece of thread.
double distance_to(Point point, Point from, Point to) {
  const Point way = to - from, off = point - from;
  const double length2 = way.x_mm * way.x_mm + way.y_mm * way.y_mm;
  const double share =
      length2 > 0 ? std::clamp((off.x_mm * way.x_mm + off.y_mm * way.y_mm) / length2, 0.0, 1.0) : 0;
  return distance(point, from + share * way);
}

/// How much a disc hides, by eye; of its own thread it may hide a little.
/// Asked of thousands of points: no root, and most are far off.
bool within(Point a, Point b, double mm) {
  const double x = a.x_mm - b.x_mm, y = a.y_mm - b.y_mm;
  return std::abs(x) <= mm && x * x + y * y <= mm * mm;
}

double cost_of(Point centre, const Strand& own, const Surroundings& around) {
  constexpr double thread_cost = 0.12, own_cost = 0.10, head_cost = 2.0;
  double cost = 0;
  for (const Point head : around.heads)
    cost += std::max(0.0, disc_radius_mm + 0.9 - distance(head, centre)) * head_cost;
  for (const Point point : around.thread)
    if (within(point, centre, disc_radius_mm + 0.3))
      cost += distance_to(point, own.front(), own.back()) > 0.5 ? thread_cost : own_cost;
  return cost;
}

Point in_direction(Point ahead, double angle) {
  return {ahead.x_mm * std::cos(angle) - ahead.y_mm * std::sin(angle),
          ahead.x_mm * std::sin(angle) + ahead.y_mm * std::cos(angle)};
}

}  // namespace

std::vector<Disc> place_discs(const std::vector<Strand>& strands, const Surroundings& around) {
  std::vector<Disc> placed;
  for (const Strand& strand : strands) {
    const double length = length_of(strand);
    const Disc usual{along(strand, 0.38 * length)[0], along(strand, 0.5 * length)[0]};
    Disc best = usual;
    double least = std::numeric_limits<double>::infinity();
    const auto consider = [&](Point centre, Point on_thread, double penalty) {
      if (penalty >= least || !free_of(centre, placed)) return;
      const double cost = penalty + cost_of(centre, strand, around);
      if (cost < least) least = cost, best = {centre, on_thread};
    };
    for (const double share : {0.38, 0.44, 0.32, 0.5, 0.26, 0.6, 0.7}) {
      const Point on = along(strand, share * length)[0];
      consider(on, on, 0.8 * std::abs(share - 0.38));
    }
    // Beside the thread, and further and further off until there is room.
    for (double off = 1.0; off < 60 && (off < 5 || !std::isfinite(least)); off += 0.5)
      for (int turn = 0; turn < 16; ++turn) {
        const Point on = along(strand, 0.45 * length)[0];
        consider(on + off * in_direction({1, 0}, turn * std::numbers::pi / 8), on, 0.35 * off);
      }
    placed.push_back(best);
  }
  return placed;
}

Point needle_direction(Point from, Point ahead, double length_mm, const Surroundings& around,
                       const std::vector<Disc>& discs) {
  Point best = ahead;
  double least = std::numeric_limits<double>::infinity();
  std::vector<Point> near;
  std::copy_if(around.thread.begin(), around.thread.end(), std::back_inserter(near),
               [&](Point thread) { return within(thread, from, length_mm + 1); });
  for (const int degrees : {0, 20, -20, 40, -40, 55, -55, 70, -70, 85, -85}) {
    const Point way = in_direction(ahead, degrees * std::numbers::pi / 180);
    double cost = 0.02 * std::abs(degrees);
    for (double mm = 1.5; mm <= length_mm; mm += 0.5) {
      const Point point = from + mm * way;
      for (const Rectangle& bead : around.beads)
        if (point.x_mm > bead.corner.x_mm - 0.3 && point.x_mm < bead.corner.x_mm + bead.width_mm + 0.3 &&
            point.y_mm > bead.corner.y_mm - 0.3 && point.y_mm < bead.corner.y_mm + bead.height_mm + 0.3)
          cost += 0.6;
      for (const Disc& disc : discs) cost += distance(disc.centre, point) < disc_radius_mm + 0.8 ? 1.0 : 0;
      if (mm <= 3) continue;
      for (const Point thread : near) cost += within(thread, point, 0.9) ? 0.1 : 0;
    }
    if (cost < least) least = cost, best = way;
  }
  return best;
}

}  // namespace evencount::drawing
