#include "fabric/cylinder.hpp"

#include <algorithm>
#include <array>

namespace evencount::fabric {
namespace {

constexpr double no_direction = 1e-9;  // shorter than this a difference of unit vectors is rounding

/// A rounded cylinder is a smaller sharp one with a ball of the rim's radius rolled over it.
double half_shadow(const Cylinder& cylinder, Vec3 towards) {
  const double along = dot(cylinder.axis, towards);
  return (cylinder.half_length_mm - cylinder.rim_mm) * std::abs(along) +
         (cylinder.radius_mm - cylinder.rim_mm) * norm(across(towards, cylinder.axis)) + cylinder.rim_mm;
}

/// How the sum of two shadows changes as the direction turns. Across an axis and along one the shadow has a kink: there the change
/// is any of a range, of which the smallest leads down.
class Slope {
 public:
  Slope(Vec3 towards, Vec3 base) : towards_(towards), slope_(across(base, towards)) {}

  void add(const Cylinder& cylinder) {
    const double along = dot(cylinder.axis, towards_);
    const Vec3 side = across(towards_, cylinder.axis);
    const double length = norm(side), straight = cylinder.half_length_mm - cylinder.rim_mm,
                 flat = cylinder.radius_mm - cylinder.rim_mm;
    const Vec3 turned = across(cylinder.axis, towards_);
    if (std::abs(along) > no_direction)
      slope_ = slope_ + std::copysign(straight, along) * turned;
    else
      lines_[line_count_++] = straight * turned;
    if (length > no_direction)
      slope_ = slope_ + (flat / length) * across(side, towards_);
    else
      disc_ += flat;
  }

  [[nodiscard]] Vec3 smallest() const {
    Vec3 left = slope_;
    std::array<double, 2> share{};
    constexpr int rounds = 8;  // two lines at an angle take from each other; one is done at once
    for (int i = 0; i < rounds; ++i) {
      for (std::size_t k = 0; k < line_count_; ++k) {
        const Vec3 line = lines_[k];
        const double wanted = share[k] - dot(left, line) / dot(line, line);
        const double taken = std::clamp(wanted, -1.0, 1.0);
        left = left + (taken - share[k]) * line;
        share[k] = taken;
      }
    }
    const double length = norm(left);
    return length <= disc_ ? Vec3{} : (1 - disc_ / length) * left;
  }

 private:
  Vec3 towards_;
  Vec3 slope_;
  std::array<Vec3, 2> lines_{};
  std::size_t line_count_ = 0;
  double disc_ = 0;
};

/// Places on two axes, in millimetres from the middles.
struct AxisPoints {
  double first_mm;
  double second_mm;
};

/// How two axes run to each other.
struct AxisPair {
  double h, k;                 // half lengths
  double cosine;               // of the angle between them
  double first_mm, second_mm;  // how far the way between the middles runs along each

  AxisPair(const Cylinder& first, const Cylinder& second)
      : h(first.half_length_mm), k(second.half_length_mm), cosine(dot(first.axis, second.axis)) {
    const Vec3 way = second.middle - first.middle;
    first_mm = dot(way, first.axis);
    second_mm = dot(way, second.axis);
  }
  [[nodiscard]] double sine_squared() const { return 1 - cosine * cosine; }
  [[nodiscard]] double on_first(double on_second) const {
    return std::clamp(first_mm + on_second * cosine, -h, h);
  }
  [[nodiscard]] double on_second(double on_first) const {
    return std::clamp(on_first * cosine - second_mm, -k, k);
  }

  /// The middle of the stretch that axes side by side share; where they share none, the nearest ends.
  [[nodiscard]] AxisPoints shared() const {
    const double reach = k * std::abs(cosine);
    const double low = std::max(-h, first_mm - reach), high = std::min(h, first_mm + reach);
    const double middle = low <= high ? (low + high) / 2 : std::clamp(first_mm, -h, h);
    return {middle, on_second(middle)};
  }
  /// The nearest points.
  [[nodiscard]] AxisPoints nearest() const {
    if (sine_squared() < no_direction) return shared();
    const double meeting = std::clamp((first_mm - cosine * second_mm) / sine_squared(), -h, h);
    const double second = on_second(meeting);
    return {on_first(second), second};
  }
};

/// Looks for the direction that shows the least overlap.
class Search {
 public:
  Search(const Cylinder& first, const Cylinder& second)
      : first_(first), second_(second), way_(second.middle - first.middle) {}

  Contact run(Vec3 hint) {
    const bool hinted = dot(hint, hint) > 0.5;
    if (hinted && attempt(hint)) return best_;
    const AxisPoints nearest = AxisPair(first_, second_).nearest();
    const Vec3 between = way_ + nearest.second_mm * second_.axis - nearest.first_mm * first_.axis;
    for (const Vec3 direction : {first_.axis, second_.axis, between, across(way_, first_.axis),
                                 across(way_, second_.axis), cross(first_.axis, second_.axis), way_})
      if (attempt(direction)) return best_;
    if (tried_ == 0) attempt_anything();
    // With a hint the best of all is near where it was; without one every direction may lead to it.
    if (hinted) return best_ = turned_until_least(best_);
    for (std::size_t i = 0; i < tried_ && best_.overlap_mm >= 0; ++i) keep(turned_until_least(attempts_[i]));
    return best_;
  }

 private:
  // Of directions that are alike but for rounding the first stays, so that turning the two turns the contact.
  static constexpr double alike_mm = 1e-9;

  void keep(const Contact& found) {
    if (found.overlap_mm < best_.overlap_mm - alike_mm) best_ = found;
  }

  /// True when the direction parts the two.
  bool attempt(Vec3 direction) {
    const double length = norm(direction);
    if (length < no_direction) return false;
    const Vec3 towards = (std::copysign(1.0, dot(direction, way_)) / length) * direction;
    const Contact found{overlap_along(towards), towards};
    if (tried_ == 0) best_ = found;
    keep(found);
    attempts_[tried_++] = found;
    return best_.overlap_mm < 0;
  }

  /// The same middle and the same axis: any way out across the axis is as good as another.
  void attempt_anything() {
    const Vec3 axis = first_.axis;
    attempt(cross(axis, std::abs(axis.x) < 0.5 ? Vec3{1, 0, 0} : Vec3{0, 1, 0}));
  }

  [[nodiscard]] double overlap_along(Vec3 towards) const {
    return half_shadow(first_, towards) + half_shadow(second_, towards) - dot(way_, towards);
  }

  /// Down the slope of the overlap, on the sphere of directions.
  [[nodiscard]] Contact turned_until_least(Contact contact) const {
    constexpr double first_turn = 0.2, least_turn = 0.004;  // radians: what is left beyond it is second order
    constexpr int most = 24;
    double turn = first_turn;
    for (int i = 0; i < most && turn > least_turn && contact.overlap_mm >= 0; ++i) {
      Slope slope(contact.towards, -1.0 * way_);
      slope.add(first_);
      slope.add(second_);
      const Vec3 aside = slope.smallest();
      const double steepness = norm(aside);
      if (steepness < no_direction) break;
      const Vec3 turned = unit(contact.towards - (turn / steepness) * aside);
      const double overlap = overlap_along(turned);
      if (overlap < contact.overlap_mm - alike_mm)
        contact = {overlap, turned};
      else
        turn /= 2;
    }
    return contact;
  }

  const Cylinder& first_;
  const Cylinder& second_;
  Vec3 way_;
  Contact best_;
  std::array<Contact, 9> attempts_{};
  std::size_t tried_ = 0;
};

Vec3 arm(const Cylinder& cylinder, Vec3 towards, double nearest_mm) {
  // Between a touch along the side and one at an end the arm must not jump.
  constexpr double blend = 0.2;
  const double along = std::clamp(dot(cylinder.axis, towards) / blend, -1.0, 1.0);
  const Vec3 side = across(towards, cylinder.axis);
  const double out = cylinder.radius_mm / std::max(norm(side), blend);
  return (along * cylinder.half_length_mm + (1 - std::abs(along)) * nearest_mm) * cylinder.axis + out * side;
}

}  // namespace

Contact contact(const Cylinder& first, const Cylinder& second, Vec3 hint) {
  return Search(first, second).run(hint);
}

Arms contact_arms(const Cylinder& first, const Cylinder& second, Vec3 towards) {
  const AxisPair axes(first, second);
  const AxisPoints nearest = axes.nearest(), shared = axes.shared();
  // The nearest points of axes that are hardly turned to each other leap about: the stretch that they share takes over.
  constexpr double side_by_side = 0.02;  // of the sine squared: 8 degrees
  const double share = std::min(1.0, axes.sine_squared() / side_by_side);
  return {arm(first, towards, share * nearest.first_mm + (1 - share) * shared.first_mm),
          arm(second, -1.0 * towards, share * nearest.second_mm + (1 - share) * shared.second_mm)};
}

}  // namespace evencount::fabric
