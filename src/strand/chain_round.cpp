#include "strand/chain_round.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "base/text.hpp"
#include "form/sections.hpp"
#include "strand/wearer.hpp"

namespace evencount::strand {
namespace {

using form::Point;
using std::numbers::pi;

/// The ellipse moved outwards, by the angle of its normals.
class Outline {
 public:
  Outline(double half_width, double half_height, double outwards)
      : a2_(half_width * half_width), b2_(half_height * half_height), outwards_(outwards) {}

  /// Distance of the tangent with that normal from the middle, and how it changes with the angle.
  [[nodiscard]] std::pair<double, double> support(double angle) const {
    const double c = std::cos(angle), s = std::sin(angle);
    const double root = std::sqrt(a2_ * c * c + b2_ * s * s);
    return {root + outwards_, root > 0 ? (b2_ - a2_) * s * c / root : 0};
  }
  [[nodiscard]] Point at(double angle, double beyond) const {
    const auto [h, slope] = support(angle);
    const double c = std::cos(angle), s = std::sin(angle), along = slope + beyond;
    return {h * c - along * s, h * s + along * c};
  }

 private:
  double a2_, b2_, outwards_;
};

/// A joint: so far beyond (before, below 0) the touching point of the tangent with that normal.
struct Joint {
  double angle = 0, beyond = 0;
};

/// The other tangent through a joint beyond its touching point: its angle, and how far ahead it touches.
Joint tangent_ahead(const Outline& outline, const Joint& joint) {
  const Point p = outline.at(joint.angle, joint.beyond);
  // f > 0 between the two tangents through p, and concave there; below zero up to half a turn on.
  const auto f = [&](double angle) {
    const auto [h, slope] = outline.support(angle);
    const double c = std::cos(angle), s = std::sin(angle);
    return std::pair{p.x_mm * c + p.y_mm * s - h, p.y_mm * c - p.x_mm * s - slope};
  };
  double low = joint.angle, high = joint.angle + pi;
  const double h = outline.support(joint.angle).first;
  double angle = joint.angle + 2 * std::atan2(joint.beyond, h);
  constexpr int most_steps = 100;
  for (int i = 0; i < most_steps; ++i) {
    const auto [value, slope] = f(angle);
    (value > 0 || slope > 0 ? low : high) = angle;  // slope > 0: before the top of the bow
    double next = slope < 0 ? angle - value / slope : high;
    if (!(next > low && next < high)) next = (low + high) / 2;
    const bool settled = std::abs(next - angle) < 1e-13;
    angle = next;
    if (settled) break;
  }
  return {angle, -f(angle).second};
}

/// Lays links one after another.
class Walk {
 public:
  Walk(const Outline& outline, Joint start) : outline_(outline), joint_(start) {}
  /// Along the line that touches ahead; or straight on, where it is not to turn or has not touched yet.
  void lay(double link, bool turn) {
    if (!turn || joint_.beyond <= 0) {
      joint_.beyond += link;
      return;
    }
    const Joint ahead = tangent_ahead(outline_, joint_);
    joint_ = {ahead.angle, link - ahead.beyond};
  }
  [[nodiscard]] const Joint& joint() const { return joint_; }
  [[nodiscard]] Point place() const { return outline_.at(joint_.angle, joint_.beyond); }

 private:
  const Outline& outline_;
  Joint joint_;
};

/// At which joints to turn. A joint x beyond its touching point costs about x^3 (the detour over the arc it
/// spares), so a long link
/// should touch at its middle, and the short ones before it leave the wrist in a straight line in good time.
/// The cheapest of
/// both ways at every joint, as if the wrist were round: what a joint's place is after n links depends on it
/// only by x.
std::vector<bool> turns_of(std::span<const double> links, double first_beyond, double last_ahead) {
  struct State {
    double beyond = 0, cost = 0;
    int from = -1;
    bool turned = false;
  };
  // Further beyond than the longest link (the last) nothing is gained by going straight on.
  constexpr int grid = 400;
  const double fine = links.back() / grid;
  std::vector<std::vector<State>> layers{{{first_beyond, 0, -1, false}}};
  std::vector<int> known(2 * grid + 1);
  for (std::size_t i = 0; i + 1 < links.size(); ++i) {
    std::vector<State> next;
    std::fill(known.begin(), known.end(), -1);
    const auto offer = [&](const State& state) {
      const long place = std::lround(state.beyond / fine) + grid;
      if (place < 0 || place > 2 * grid) return;
      int& there = known[static_cast<std::size_t>(place)];
      if (there < 0) {
        there = static_cast<int>(next.size());
        next.push_back(state);
      } else if (state.cost < next[static_cast<std::size_t>(there)].cost) {
        next[static_cast<std::size_t>(there)] = state;
      }
    };
    for (std::size_t k = 0; k < layers.back().size(); ++k) {
      const State& state = layers.back()[k];
      offer({state.beyond + links[i], state.cost, static_cast<int>(k), false});
      if (state.beyond >= 0)
        offer({links[i] - state.beyond, state.cost + std::pow(state.beyond, 3), static_cast<int>(k), true});
    }
    if (next.empty()) return std::vector<bool>(links.size(), true);
    layers.push_back(std::move(next));
  }
  const auto whole_cost = [&](const State& state) {
    constexpr double misfit = 8;  // the two ends of the chain must find each other
    return state.cost + std::pow(std::abs(state.beyond), 3) +
           misfit * std::pow(std::abs(state.beyond - last_ahead), 3);
  };
  const auto& ends = layers.back();
  const auto best = std::min_element(ends.begin(), ends.end(), [&](const State& a, const State& b) {
    return whole_cost(a) < whole_cost(b);
  });
  std::vector<bool> turns(links.size(), true);
  auto at = static_cast<int>(best - ends.begin());
  for (std::size_t i = layers.size() - 1; i > 0; --i) {
    const State& state = layers[i][static_cast<std::size_t>(at)];
    turns[i - 1] = state.turned;
    at = state.from;
  }
  return turns;
}

/// Where the chain begins: the normal of its last link's line, and which share of that link lies beyond the
/// touching point.
struct Start {
  double angle = 0, share = 0.5;
};

/// The links, the longest last.
class Chain {
 public:
  Chain(std::vector<double> links, double thickness, double ratio)
      : links_(std::move(links)), half_thickness_(thickness / 2), ratio_(ratio) {
    unit_girth_ = form::ellipse(millimetres(2), millimetres(2 / ratio)).value().perimeter().mm();
  }

  [[nodiscard]] std::pair<double, double> half_axes(double girth) const {
    return {girth / unit_girth_, girth / unit_girth_ / ratio_};
  }
  [[nodiscard]] std::size_t size() const { return links_.size(); }
  [[nodiscard]] double last() const { return links_.back(); }
  [[nodiscard]] std::vector<bool> turns(double share) const {
    return turns_of(links_, share * last(), (1 - share) * last());
  }

  /// All links but two, laid; the two close the chain as a bracket that stands outwards. None: the others
  /// alone lead home, or the
  /// two are too short or too unequal, or come too near.
  [[nodiscard]] std::optional<Point> apex(double girth, const Start& start,
                                          const std::vector<bool>& turns) const {
    const Outline curve = outline(girth);
    const Joint first{start.angle, start.share * last()};
    Walk walk(curve, first);
    const std::size_t laid = links_.size() - 2;
    for (std::size_t i = 0; i < laid; ++i) walk.lay(links_[i], turns[i]);
    const double home = start.angle + 2 * pi;
    if (walk.joint().angle >= home) return std::nullopt;
    const Point from = walk.place(), to = curve.at(home, first.beyond);
    const double apart = distance(from, to), one = links_[laid], two = last();
    if (apart > one + two || apart < std::abs(one - two) || apart == 0) return std::nullopt;
    const double along = (apart * apart + one * one - two * two) / (2 * apart);
    const Point ahead = (1 / apart) * (to - from);
    const double out = std::sqrt(std::max(0.0, one * one - along * along));
    const Point corner = from + along * ahead + (-out) * form::quarter_turn(ahead);
    if (!stays_out(curve, from, corner) || !stays_out(curve, corner, to)) return std::nullopt;
    return corner;
  }

  /// The largest girth above `low` and below `high` that closes so. It does for a stretch of girths about as
  /// long as the shorter
  /// link of the bracket, so half of that is looked at at a time.
  [[nodiscard]] std::optional<double> largest(double low, double high, const Start& start,
                                              const std::vector<bool>& turns) const {
    const double stretch = std::min(links_[links_.size() - 2], last()) / 2;
    const double step = (high - low) / std::ceil((high - low) / stretch + 1);
    double above = high;
    for (double girth = high - step; girth > low - step / 2; girth -= step) {
      if (apex(girth, start, turns)) return between(girth, above, start, turns);
      above = girth;
    }
    return std::nullopt;
  }

  [[nodiscard]] std::vector<Point> joints(double girth, const Start& start,
                                          const std::vector<bool>& turns) const {
    const Outline curve = outline(girth);
    Walk walk(curve, {start.angle, start.share * last()});
    std::vector<Point> joints{walk.place()};
    for (std::size_t i = 0; i + 2 < links_.size(); ++i) {
      walk.lay(links_[i], turns[i]);
      joints.push_back(walk.place());
    }
    joints.push_back(*apex(girth, start, turns));
    return joints;
  }

 private:
  [[nodiscard]] Outline outline(double girth) const {
    const auto [half_width, half_height] = half_axes(girth);
    return {half_width, half_height, half_thickness_};
  }
  [[nodiscard]] double between(double low, double high, const Start& start,
                               const std::vector<bool>& turns) const {
    constexpr double fine = 1e-10;
    while (high - low > fine * high) {
      const double middle = (low + high) / 2;
      (apex(middle, start, turns) ? low : high) = middle;
    }
    return low;
  }
  /// Both ends lie outside. The straight line between them does where its whole line does, or where the curve
  /// comes nearest to
  /// (or furthest beyond) that line before or behind it.
  [[nodiscard]] static bool stays_out(const Outline& curve, Point from, Point to) {
    const double angle = std::atan2(from.x_mm - to.x_mm, to.y_mm - from.y_mm);  // of the outward normal
    constexpr double touching_mm = 1e-9;
    if (dot(from, form::direction(angle)) >= curve.support(angle).first - touching_mm) return true;
    const double along = dot(curve.at(angle, 0) - from, form::quarter_turn(form::direction(angle)));
    return along <= 0 || along >= distance(from, to);
  }

  std::vector<double> links_;
  double half_thickness_, ratio_, unit_girth_ = 0;
};

/// The best start: a grid of them, then ever smaller steps about the best.
class Search {
 public:
  Search(const Chain& chain, double most) : chain_(chain), most_(most) {
    for (const double share : {0.5, 0.3, 0.7}) {
      const auto planned = chain.turns(share);
      constexpr int angles = 12;  // an ellipse is the same after half a turn
      for (int i = 0; i < angles; ++i) offer({pi * i / angles, share}, planned);
    }
    for (int i = 0; i < 2; ++i) offer({pi * i / 2, 0.5}, std::vector<bool>(chain.size(), true));
    double angle_step = pi / 24, share_step = 0.1;
    constexpr int halvings = 6;
    for (int i = 0; girth > 0 && i < halvings; ++i, angle_step /= 2, share_step /= 2) {
      const Start from = start;
      const std::vector<bool> as_before = turns;
      for (const double a : {-1.0, 0.0, 1.0})
        for (const double s : {-1.0, 0.0, 1.0})
          offer({from.angle + a * angle_step, from.share + s * share_step}, as_before);
    }
  }
  double girth = 0;
  Start start;
  std::vector<bool> turns;

 private:
  void offer(const Start& from, const std::vector<bool>& turning) {
    constexpr double worth_it = 1e-7, least_share = 1e-3;
    const double least = std::max(girth * (1 + worth_it), most_ * least_share);
    if (least >= most_ || from.share <= 0 || from.share >= 1) return;
    if (const auto found = chain_.largest(least, most_, from, turning)) {
      girth = *found;
      start = from;
      turns = turning;
    }
  }

  const Chain& chain_;
  double most_;
};

}  // namespace

Result<ChainRound> chain_round(std::span<const Length> links, Length thickness, double ratio) {
  constexpr std::size_t fewest = 3, most_links = 2'000;
  if (links.size() < fewest)
    return Problem{ProblemCode::too_few_beads, "links of the chain", fmt::format("{}", links.size()),
                   "at least 3"};
  if (links.size() > most_links)
    return out_of_range("links of the chain", fmt::format("{}", links.size()), "at most 2000");
  Length sum;
  std::vector<double> links_mm;
  for (const Length link : links) {
    if (!(link > Length{}) || !std::isfinite(link.mm()))
      return out_of_range("a link", plain_number(link.mm(), 3) + " mm", "above 0");
    sum = sum + link;
    links_mm.push_back(link.mm());
  }
  if (!(thickness >= Length{}) || !std::isfinite(thickness.mm()))
    return out_of_range("thickness", plain_number(thickness.mm(), 3) + " mm", "0 or more");
  if (!(ratio > 0.1 && ratio < 10))
    return out_of_range("breadth over depth", plain_number(ratio, 3), "0.1 to 10");
  // The longest comes last.
  const auto first = std::max_element(links_mm.begin(), links_mm.end()) - links_mm.begin() + 1;
  std::rotate(links_mm.begin(), links_mm.begin() + first, links_mm.end());
  const Chain chain(links_mm, thickness.mm(), ratio);
  const double most = inside_of(sum, thickness).mm();
  std::optional<Search> best;
  if (most > 0) best.emplace(chain, most);
  if (!best || best->girth <= 0)
    return Problem{
        ProblemCode::cannot_close, "the chain",
        fmt::format("links of {} mm, {} mm thick", plain_number(sum.mm()), plain_number(thickness.mm())),
        "links that go round with room inside"};
  const auto [half_width, half_height] = chain.half_axes(best->girth);
  std::vector<Point> joints = chain.joints(best->girth, best->start, best->turns);
  std::rotate(joints.begin(), joints.end() - first % static_cast<std::ptrdiff_t>(joints.size()),
              joints.end());
  return ChainRound{millimetres(best->girth), millimetres(half_width), millimetres(half_height),
                    std::move(joints)};
}

}  // namespace evencount::strand
