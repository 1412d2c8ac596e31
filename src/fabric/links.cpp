#include <algorithm>
#include <numbers>
#include <tuple>

#include "fabric/layout.hpp"

namespace evencount::fabric {
namespace {

using weave::Act;
using weave::Axis;
using weave::Plan;
using weave::Spot;
using weave::Stitch;
using weave::Travel;
using weave::Turn;

using std::numbers::pi;

int end_of(Travel travel) {
  return travel == Travel::right || travel == Travel::forth ? 1 : -1;
}

/// Thread from mouth to mouth.
struct Stretch {
  Mouth from, to;
  bool joins = false;  ///< by a stitch of the seam
};

/// How much thread lies between two mouths.
class Measure {
 public:
  Measure(const Plan& plan, const Layout& layout) : layout_(layout) {
    for (std::size_t i = 0; i < layout.beads().size(); ++i) pitches_.push_back(pitch_of(i));
    closed_ = weave::closes_round_edge(plan.closure);
    if (!layout.lattice().round || layout.lattice().columns < 3) return;
    roll_.emplace(layout);
    radius_mm_ = roll_->radius_mm(roll_->easy_chord_mm());
  }

  /// Next to a larger bead the thread of the others is let out too: they stand as far apart as it makes them.
  void let_out(std::span<const Stretch> thread) {
    const std::vector<FlatPoint> own = pitches_;
    const auto widen = [&](std::size_t bead, std::size_t beside) {
      pitches_[bead] = {std::max(pitches_[bead].x, own[beside].x), std::max(pitches_[bead].y, own[beside].y)};
    };
    for (const auto& [from, to, joins] : thread) {
      widen(from.bead, to.bead);
      widen(to.bead, from.bead);
    }
  }

  [[nodiscard]] Link link(Mouth from, Mouth to, bool joins) const {
    const Spot out = way_out(from), in = way_out(to);
    const Spot a = layout_.site(from.bead).middle, b = layout_.site(to.bead).middle;
    const Spot straight{b.across + in.across - a.across - out.across,
                        b.along + in.along - a.along - out.along};
    const Spot way = weave::apart(layout_.lattice(), {}, straight, joins);
    const FlatPoint p = pitches_[from.bead], q = pitches_[to.bead];
    const double h = shape(from).half_length_mm, k = shape(to).half_length_mm;
    // From middle to middle in half pitches, then back from both middles to the real mouths.
    const double x = (way.across + out.across - in.across) * (p.x + q.x) / 4 + in.across * k - out.across * h;
    const double straight_mm =
        (way.along + out.along - in.along) * (p.y + q.y) / 4 + in.along * k - out.along * h;
    const double y = std::max(std::abs(straight_mm), bent_mm(way.along));
    const double length_mm = std::max(std::hypot(x, y), rolled_mm(from, to));
    return {from, to, length_mm, joins || (layout_.lattice().round && way != straight)};
  }

 private:
  [[nodiscard]] const Cylinder& shape(Mouth mouth) const { return layout_.beads()[mouth.bead].shape; }
  [[nodiscard]] Spot way_out(Mouth mouth) const {
    return layout_.site(mouth.bead).axis == Axis::across ? Spot{mouth.end, 0} : Spot{0, mouth.end};
  }

  // A bead larger than the gauge's pushes its neighbours away; a smaller one keeps its place until it is drawn in.
  [[nodiscard]] FlatPoint pitch_of(std::size_t bead) const {
    const Cylinder& shape = layout_.beads()[bead].shape;
    const double length = 2 * shape.half_length_mm, diameter = 2 * shape.radius_mm;
    const bool across = layout_.site(bead).axis == Axis::across;
    return {std::max(layout_.column_mm(), across ? length : diameter),
            std::max(layout_.edge_mm(), across ? diameter : length)};
  }

  // In a closed band half a bead on is more than half a pitch, as the way round bends: most where few beads close.
  [[nodiscard]] double bent_mm(int half_steps) const {
    const int edge = layout_.lattice().edge;
    if (!closed_ || edge < 3) return 0;
    return layout_.edge_mm() * std::abs(std::sin(pi * half_steps / (2 * edge))) / std::sin(pi / edge);
  }

  // Worked round, the thread is let out until the beads' inner rims have room.
  [[nodiscard]] double rolled_mm(Mouth from, Mouth to) const {
    if (!roll_) return 0;
    const auto mouth = [&](Mouth m) {
      return place_of(roll_->placed(shape(m), layout_.flat(m.bead), layout_.site(m.bead).axis, radius_mm_),
                      m.end);
    };
    return norm(mouth(to) - mouth(from));
  }

  const Layout& layout_;
  std::vector<FlatPoint> pitches_;
  bool closed_ = false;
  std::optional<Roll> roll_;
  double radius_mm_ = 0;
};

/// Follows the thread from mouth to mouth.
class Threader {
 public:
  Threader(const Plan& plan, const Layout& layout) : plan_(plan), layout_(layout), measure_(plan, layout) {}

  std::vector<Link> run() {
    for (const Stitch& stitch : plan_.stitches) {
      if (stitch.act == Act::turn && stitch.turn == Turn::loop) hold_down();
      if (stitch.act == Act::under) hold_under(stitch);
      if (!weave::goes_through(stitch.act)) continue;
      const std::size_t bead = *layout_.bead_at(stitch.cell);
      if (left_) link(*left_, {bead, -end_of(stitch.travel)}, stitch.act == Act::join);
      left_ = Mouth{bead, end_of(stitch.travel)};
    }
    if (plan_.on_warps) hang_on_warps();
    if (layout_.several_sizes()) measure_.let_out(thread_);
    return each_once();
  }

 private:
  /// Warps run past the mouths of every bead and hold row to row.
  void hang_on_warps() {
    for (std::size_t i = 0; i < layout_.beads().size(); ++i) {
      const Cell cell = layout_.beads()[i].cell;
      const auto next = layout_.bead_at({cell.column, cell.step + 1});
      for (const int end : {-1, 1})
        if (next) link({i, end}, {*next, end}, false);
    }
  }

  /// A loop lies round the thread below the bead: it can't rise from the bead before it along the edge.
  void hold_down() {
    if (!left_) return;
    const Cell cell = layout_.beads()[left_->bead].cell;
    if (const auto below = layout_.bead_at({cell.column, cell.step - 1}))
      link(*left_, {*below, left_->end}, false);
  }

  /// Round the thread between two beads, whose mouths face the one that the needle came out of.
  void hold_under(const Stitch& stitch) {
    if (!left_) return;
    for (const int step : {0, 1}) {
      const auto beside = layout_.bead_at({stitch.cell.column, stitch.cell.step + step});
      if (beside) link(*left_, {*beside, end_of(stitch.travel)}, false);
    }
  }

  void link(Mouth from, Mouth to, bool joins) {
    if (from == to) return;  // round a thread and back into the same mouth
    thread_.push_back({from, to, joins});
  }

  /// Thread that lies there twice holds no better; of two lengths the shorter one holds.
  std::vector<Link> each_once() {
    std::vector<Link> links;
    for (const auto& [from, to, joins] : thread_) links.push_back(measure_.link(from, to, joins));
    using Mouths = std::tuple<std::size_t, int, std::size_t, int>;
    std::vector<std::tuple<Mouths, double, std::size_t>> keys;
    for (std::size_t i = 0; i < links.size(); ++i) {
      Mouth a = links[i].from, b = links[i].to;
      if (std::pair(b.bead, b.end) < std::pair(a.bead, a.end)) std::swap(a, b);
      keys.emplace_back(Mouths{a.bead, a.end, b.bead, b.end}, links[i].length_mm, i);
    }
    std::sort(keys.begin(), keys.end());
    std::vector<std::size_t> kept;
    for (std::size_t k = 0; k < keys.size(); ++k)
      if (k == 0 || std::get<Mouths>(keys[k]) != std::get<Mouths>(keys[k - 1]))
        kept.push_back(std::get<2>(keys[k]));
    std::sort(kept.begin(), kept.end());
    std::vector<Link> once;
    once.reserve(kept.size());
    for (const std::size_t i : kept) once.push_back(links[i]);
    return once;
  }

  const Plan& plan_;
  const Layout& layout_;
  Measure measure_;
  std::optional<Mouth> left_;
  std::vector<Stretch> thread_;
};

}  // namespace

std::vector<Link> thread_links(const Plan& plan, const Layout& layout) {
  return Threader(plan, layout).run();
}

Result<std::vector<Link>> links_of(const Plan& plan, std::span<const bead::Size> sizes,
                                   const bead::Gauge& gauge) {
  const auto layout = Layout::make(plan, sizes, gauge);
  if (!layout) return layout.problem();
  return thread_links(plan, *layout);
}

}  // namespace evencount::fabric
