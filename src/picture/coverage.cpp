#include "picture/coverage.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace evencount::picture {
namespace {

double signed_area(const Quad& quad) {
  double twice = 0;
  for (std::size_t i = 0; i < 4; ++i) {
    const PicturePoint &p = quad[i], &q = quad[(i + 1) % 4], &origin = quad[0];
    twice += (p.x - origin.x) * (q.y - origin.y) - (q.x - origin.x) * (p.y - origin.y);
  }
  return twice / 2;
}

}  // namespace

double area(const Quad& quad) {
  return std::abs(signed_area(quad));
}

CoverageRows::CoverageRows(const PictureRectangle& bounds)
    : left_(bounds.left),
      top_(bounds.top),
      right_(bounds.left + bounds.width),
      bottom_(bounds.top + bounds.height) {
  assert(left_ >= 0 && top_ >= 0 && right_ < 1e9 && bottom_ < 1e9);
}

void CoverageRows::begin(const Quad& quad) {
  quad_ = quad;
  // With y down and the corners clockwise, sides that go down have the figure on their left.
  sign_ = signed_area(quad) > 0 ? -1 : 1;
  const auto [low, high] = std::minmax({quad[0].y, quad[1].y, quad[2].y, quad[3].y});
  y_ = static_cast<int>(std::floor(std::clamp(low, top_, bottom_))) - 1;
  last_y_ = static_cast<int>(std::ceil(std::clamp(high, top_, bottom_))) - 1;
}

bool CoverageRows::next() {
  if (++y_ > last_y_) return false;
  const double from = std::max<double>(y_, top_), to = std::min<double>(y_ + 1, bottom_);
  std::array<Side, 4> sides;
  std::size_t count = 0;
  double low = right_, high = left_;
  for (std::size_t i = 0; i < 4; ++i) {
    const PicturePoint &p = quad_[i], &q = quad_[(i + 1) % 4];
    const bool down = p.y < q.y;
    const PicturePoint &upper = down ? p : q, &lower = down ? q : p;
    const double y = std::max(upper.y, from), lower_y = std::min(lower.y, to);
    if (y >= lower_y) continue;
    const auto x_at = [&](double at) {
      return upper.x + (lower.x - upper.x) * ((at - upper.y) / (lower.y - upper.y));
    };
    const Side side{x_at(y), x_at(lower_y), y, lower_y, down ? sign_ : -sign_};
    for (const double x : {side.x, side.lower_x}) {
      low = std::min(low, std::clamp(x, left_, right_));
      high = std::max(high, std::clamp(x, left_, right_));
    }
    sides[count++] = side;
  }
  first_x_ = static_cast<int>(std::floor(low));
  count_ =
      low <= high ? static_cast<std::size_t>(std::max(0, static_cast<int>(std::ceil(high)) - first_x_)) : 0;
  cover_.assign(count_ + 2, 0.0);
  for (std::size_t i = 0; i < count; ++i) add(sides[i]);
  double sum = 0;
  for (std::size_t i = 0; i < count_; ++i) cover_[i] = sum += cover_[i];
  return true;
}

/// What lies outside the bounds counts as if it stood on their side.
void CoverageRows::add(const Side& side) {
  const double width = side.lower_x - side.x, height = side.lower_y - side.y;
  // Shares of the way down at which it crosses the bounds.
  std::array<double, 4> cuts{0, 0, 0, 1};
  std::size_t count = 1;
  if (width != 0)
    for (const double bound : {width > 0 ? left_ : right_, width > 0 ? right_ : left_})
      if (const double share = (bound - side.x) / width; share > cuts[count - 1] && share < 1)
        cuts[count++] = share;
  cuts[count] = 1;
  for (std::size_t i = 0; i < count; ++i)
    add_within_bounds(
        std::clamp(side.x + width * cuts[i], left_, right_),
        std::clamp(cuts[i + 1] == 1 ? side.lower_x : side.x + width * cuts[i + 1], left_, right_),
        side.sign * height * (cuts[i + 1] - cuts[i]));
}

/// Each piece between two columns' sides leaves its height to all pixels on its right, and to its own the part right of it.
void CoverageRows::add_within_bounds(double x, double lower_x, double height) {
  const double low = std::min(x, lower_x), high = std::max(x, lower_x);
  double from = low;
  for (int column = static_cast<int>(std::floor(low)); from < high || from == low; ++column) {
    const double to = std::min<double>(column + 1, high);
    const double part = high == low ? height : height * ((to - from) / (high - low));
    const double middle = (from + to) / 2 - column;
    const auto place = static_cast<std::size_t>(column - first_x_);
    cover_[place] += part * (1 - middle);
    cover_[place + 1] += part * middle;
    if (to >= high) break;
    from = to;
  }
}

}  // namespace evencount::picture
