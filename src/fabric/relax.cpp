#include "fabric/relax.hpp"

#include <algorithm>
#include <array>

#include "fabric/neighbours.hpp"

namespace evencount::fabric {
namespace {

/// A bead that can be pushed: all beads weigh alike, as it is their thread and their neighbours that hold them.
struct Body {
  Cylinder shape;
  double ease_of_turning = 0;  ///< 1 / moment of inertia of a solid cylinder of weight 1, across its axis

  explicit Body(const Cylinder& cylinder)
      : shape(cylinder),
        ease_of_turning(1 / (cylinder.half_length_mm * cylinder.half_length_mm / 3 +
                             cylinder.radius_mm * cylinder.radius_mm / 4)) {}

  /// How far the end of an arm gives way to a push of 1.
  [[nodiscard]] double give(Vec3 arm, Vec3 towards) const {
    const Vec3 twist = across(cross(arm, towards), shape.axis);
    return 1 + ease_of_turning * dot(twist, twist);
  }

  void push(Vec3 arm, Vec3 towards, double by) {
    shape.middle = shape.middle + by * towards;
    Vec3 turn = (by * ease_of_turning) * across(cross(arm, towards), shape.axis);
    constexpr double most = 0.2;  // radians at once: beyond, a small turn is no longer straight
    if (const double size = norm(turn); size > most) turn = (most / size) * turn;
    shape.axis = unit(shape.axis + cross(turn, shape.axis));
  }
};

double link_measure_mm(const Link& link, const Cylinder& from, const Cylinder& to) {
  return std::max(link.length_mm, std::min(from.radius_mm, to.radius_mm));
}

double smaller_diameter_mm(const Cylinder& a, const Cylinder& b) {
  return 2 * std::min(a.radius_mm, b.radius_mm);
}

/// Where a bead's side is measured against a form: at its middle and at both ends.
constexpr std::array places_on_axis{-1, 0, 1};

bool satisfied(const Residual& residual, const RelaxOptions& options) {
  return residual.worst_overlap <= options.overlap_tolerance &&
         residual.worst_link <= options.link_tolerance &&
         residual.worst_inside_form_mm <= options.inside_tolerance_mm;
}

class Relaxation {
 public:
  Relaxation(const Fabric& start, const RelaxOptions& options) : options_(options), trial_(start) {
    for (const SettledBead& bead : start.beads) {
      bodies_.emplace_back(bead.shape);
      widest_ = std::max(widest_, bead.shape.radius_mm);
    }
    for (const Link& link : start.links)
      if (start.closed || !link.across_seam) links_.push_back(link);
  }

  int run() {
    int rounds = 0;
    const int drawing = options_.draw_tight ? std::min(rounds_of_drawing, options_.most_rounds) : 0;
    for (; rounds < drawing; ++rounds) {
      drift(drift_drawing);
      draw(first_draw * widest_ * (drawing - rounds) / drawing);
      one_round();
    }
    while (rounds < options_.most_rounds) {
      ++rounds;
      drift(drift_settling);
      if (one_round() && settled()) break;
    }
    return rounds;
  }

  void write_to(Fabric& fabric) const {
    for (std::size_t i = 0; i < bodies_.size(); ++i) fabric.beads[i].shape = bodies_[i].shape;
  }

 private:
  // Tried on bezels and drawn-in rings: the least thread without jams; on shaken pieces: the fewest rounds without overshoot.
  static constexpr int rounds_of_drawing = 1000;
  static constexpr double first_draw = 0.01;  // of a bead's radius; it falls to nothing
  static constexpr double drift_drawing = 0.95, drift_settling = 0.8;

  /// The heavy ball: beads go on by a share of what they moved in the round before. Shifts that run through the whole piece get through it in tens
  /// of rounds, not hundreds.
  void drift(double share) {
    if (before_.empty()) before_ = shapes();
    const std::vector<Cylinder> here = shapes();
    for (std::size_t i = 0; i < bodies_.size(); ++i) {
      Cylinder& bead = bodies_[i].shape;
      bead.middle = bead.middle + share * (bead.middle - before_[i].middle);
      bead.axis = unit(bead.axis + share * (bead.axis - before_[i].axis));
    }
    before_ = here;
  }

  [[nodiscard]] std::vector<Cylinder> shapes() const {
    std::vector<Cylinder> shapes;
    shapes.reserve(bodies_.size());
    for (const Body& body : bodies_) shapes.push_back(body.shape);
    return shapes;
  }

  /// Whether what a round has set right has not been undone later in it.
  [[nodiscard]] bool settled() {
    write_to(trial_);
    return satisfied(residual_of(trial_, options_.obstacle), options_);
  }

  /// True when nothing was out of tolerance on the way.
  bool one_round() {
    look_round();
    within_ = true;
    for (const Link& link : links_) hold(link);
    for (Touch& touch : touches_) part(touch);
    if (options_.obstacle)
      for (Body& body : bodies_) keep_out(body);
    return within_;
  }

  /// Beads that may come to touch before anybody has moved further than the margin.
  void look_round() {
    constexpr double margin = 0.5;  // of the widest radius
    const double most = margin * widest_ / 2;
    bool moved = seen_.empty();
    for (std::size_t i = 0; i < seen_.size() && !moved; ++i) {
      const Vec3 way = bodies_[i].shape.middle - seen_[i];
      moved = dot(way, way) > most * most;
    }
    if (!moved) return;
    seen_.clear();
    for (const Body& body : bodies_) seen_.push_back(body.shape.middle);
    touches_.clear();
    for (const Pair& pair : close_pairs(shapes(), 2 * most)) touches_.push_back({pair, {}});
  }

  void hold(const Link& link) {
    Body& from = bodies_[link.from.bead];
    Body& to = bodies_[link.to.bead];
    const double measure = link_measure_mm(link, from.shape, to.shape);
    shorten(link, link.length_mm, measure * options_.link_tolerance);
  }

  /// Draws two mouths together until no more than `length_mm` lies between them.
  void shorten(const Link& link, double length_mm, double tolerance_mm) {
    Body& from = bodies_[link.from.bead];
    Body& to = bodies_[link.to.bead];
    const Vec3 way = place_of(to.shape, link.to.end) - place_of(from.shape, link.from.end);
    const double apart = norm(way);
    if (apart <= length_mm || apart == 0) return;
    if (apart > length_mm + tolerance_mm) within_ = false;
    const Vec3 towards = (1 / apart) * way;
    const Vec3 from_arm = (link.from.end * from.shape.half_length_mm) * from.shape.axis;
    const Vec3 to_arm = (link.to.end * to.shape.half_length_mm) * to.shape.axis;
    const double by = (apart - length_mm) / (from.give(from_arm, towards) + to.give(to_arm, towards));
    from.push(from_arm, towards, by);
    to.push(to_arm, towards, -by);
  }

  /// Thread under tension: every link a little shorter than it is.
  void draw(double by_mm) {
    for (const Link& link : links_) {
      const Vec3 way = place_of(bodies_[link.to.bead].shape, link.to.end) -
                       place_of(bodies_[link.from.bead].shape, link.from.end);
      shorten(link, std::max(0.0, norm(way) - by_mm), 0);
    }
  }

  struct Touch {
    Pair pair;
    Vec3 hint;
  };

  void part(Touch& touch) {
    Body& first = bodies_[touch.pair.first];
    Body& second = bodies_[touch.pair.second];
    const Vec3 way = second.shape.middle - first.shape.middle;
    const double near = reach_mm(first.shape) + reach_mm(second.shape);
    if (dot(way, way) >= near * near) return;
    const Contact found = contact(first.shape, second.shape, touch.hint);
    touch.hint = found.towards;
    if (found.overlap_mm <= 0) return;
    if (found.overlap_mm > options_.overlap_tolerance * smaller_diameter_mm(first.shape, second.shape))
      within_ = false;
    const Arms arms = contact_arms(first.shape, second.shape, found.towards);
    const double by =
        found.overlap_mm / (first.give(arms.first, found.towards) + second.give(arms.second, found.towards));
    first.push(arms.first, found.towards, -by);
    second.push(arms.second, found.towards, by);
  }

  void keep_out(Body& body) {
    for (const int place : places_on_axis) {
      const Vec3 arm = (place * body.shape.half_length_mm) * body.shape.axis;
      const Clearance found = options_.obstacle(body.shape.middle + arm);
      const double deep = body.shape.radius_mm - found.distance_mm;
      if (deep <= 0) continue;
      if (deep > options_.inside_tolerance_mm) within_ = false;
      body.push(arm, found.away, deep / body.give(arm, found.away));
    }
  }

  const RelaxOptions& options_;
  Fabric trial_;
  std::vector<Body> bodies_;
  std::vector<Link> links_;
  double widest_ = 0;
  std::vector<Touch> touches_;
  std::vector<Vec3> seen_;
  std::vector<Cylinder> before_;
  bool within_ = true;
};

}  // namespace

Residual residual_of(const Fabric& fabric, const Obstacle& obstacle) {
  Residual residual;
  std::vector<Cylinder> shapes;
  for (const SettledBead& bead : fabric.beads) shapes.push_back(bead.shape);
  for (const Pair& pair : close_pairs(shapes, 0)) {
    const Cylinder& a = shapes[pair.first];
    const Cylinder& b = shapes[pair.second];
    residual.worst_overlap =
        std::max(residual.worst_overlap, contact(a, b).overlap_mm / smaller_diameter_mm(a, b));
  }
  for (const Link& link : fabric.links) {
    if (link.across_seam && !fabric.closed) continue;
    const Cylinder& from = shapes[link.from.bead];
    const Cylinder& to = shapes[link.to.bead];
    const double apart = norm(place_of(to, link.to.end) - place_of(from, link.from.end));
    residual.worst_link =
        std::max(residual.worst_link, (apart - link.length_mm) / link_measure_mm(link, from, to));
  }
  if (obstacle)
    for (const Cylinder& shape : shapes)
      for (const int place : places_on_axis)
        residual.worst_inside_form_mm = std::max(
            residual.worst_inside_form_mm, shape.radius_mm - obstacle(place_of(shape, place)).distance_mm);
  return residual;
}

Fabric relax(const Fabric& start, const RelaxOptions& options) {
  Fabric fabric = start;
  fabric.residual = residual_of(start, options.obstacle);
  if (fabric.beads.empty() || (satisfied(fabric.residual, options) && !options.draw_tight)) return fabric;
  Relaxation relaxation(start, options);
  const int rounds = relaxation.run();
  relaxation.write_to(fabric);
  fabric.residual = residual_of(fabric, options.obstacle);
  fabric.residual.rounds = rounds;
  return fabric;
}

}  // namespace evencount::fabric
