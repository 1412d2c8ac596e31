#include "drawing/step_drawing.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "drawing/step_pen.hpp"
#include "drawing/stitched_cells.hpp"
#include "language/texts.hpp"

namespace evencount::drawing {
namespace {

/// One diagram while it is drawn, in the layout's own coordinates.
class StepPicture {
 public:
  StepPicture(const project::Project& project, const project::Band& band, const weave::Plan& plan,
              const weave::Moment& moment, const StepScene& scene, double bead_length_mm, const StepStyle& style)
      : project_(project),
        style_(style),
        plan_(plan),
        moment_(moment),
        layout_(plan.lattice, project::gauge_of(project, band), size_of(project, band), bead_length_mm,
                moment, goes_under(plan, moment)),
        beads_(scene.beads),
        steps_(scene.steps),
        passes_(scene.passes),
        has_lead_(scene.has_lead),
        linker_(plan.lattice, layout_, beads_, moment.at_seam) {
    give_lanes();
  }

  Drawing draw() {
    draw_earlier_thread();
    draw_beads();
    if (has_lead_ && is_shown(passes_.front())) pen_.lead_in_bead(through(passes_.front()));
    draw_moment_thread();
    draw_heads();
    const std::vector<Disc> discs = place_discs(within_, pen_.around());
    draw_end(discs);
    for (std::size_t i = 0; i < discs.size(); ++i)
      pen_.disc(discs[i], static_cast<int>(i) + 1, passes_[i + (has_lead_ ? 1 : 0)].strung);
    draw_seam_labels();
    return pen_.sheet();
  }

 private:
  static bead::Size size_of(const project::Project& project, const project::Band& band) {
    const bead::Size* size = project::find_bead(project, band.bead);
    return size ? *size : bead::sizes().front();
  }

  static bool goes_under(const weave::Plan& plan, const weave::Moment& moment) {
    return std::any_of(plan.stitches.begin() + static_cast<std::ptrdiff_t>(moment.first_stitch),
                       plan.stitches.begin() + static_cast<std::ptrdiff_t>(moment.end_stitch),
                       [](const weave::Stitch& stitch) { return stitch.act == weave::Act::under; });
  }

  [[nodiscard]] bool is_new(std::size_t strung_at) const {
    return strung_at >= moment_.new_from && strung_at < moment_.end_stitch;
  }

  // A lane for each time a bead is gone through

  /// The side of a bead's hole to which the thread wants, before and after it.
  [[nodiscard]] double pull_of(std::size_t pass) const {
    const bool across = weave::axis_of(passes_[pass].travel) == weave::Axis::across;
    const auto place = [&](std::size_t other) {
      const Point middle = layout_.middle(passes_[other].middle);
      return across ? middle.y_mm : middle.x_mm;
    };
    double sum = 0;
    int count = 0;
    for (const Step& step : steps_) {
      const bool before = step.to == passes_[pass].stitch, after = step.from == passes_[pass].stitch;
      if (!before && !after) continue;
      const std::size_t other = before ? pass - 1 : pass + 1;
      if ((before && pass == 0) || other >= passes_.size()) continue;
      // Round a thread along the edge the needle goes towards the rows before.
      sum += step.between.caught ? place(other) - layout_.half_width_mm() : place(other);
      ++count;
    }
    return count > 0 ? sum / count : 0;
  }

  void give_lanes() {
    if (plan_.on_warps) {  // beside the first thread through the row, which lies in the middle
      for (Pass& pass : passes_)
        if (plan_.stitches[pass.stitch].act == weave::Act::pass) pass.lane_mm = 1.2;
      return;
    }
    std::map<std::pair<int, int>, std::vector<std::size_t>> in_bead;
    for (std::size_t i = 0; i < passes_.size(); ++i)
      in_bead[{passes_[i].middle.across, passes_[i].middle.along}].push_back(i);
    for (auto& [bead, all] : in_bead) {
      std::stable_sort(all.begin(), all.end(),
                       [&](std::size_t a, std::size_t b) { return pull_of(a) < pull_of(b) - 1e-6; });
      const double spread =
          std::min(layout_.hole_mm() - StepPen::thread_mm, 2.0 * static_cast<double>(all.size() - 1));
      for (std::size_t k = 0; k < all.size() && all.size() > 1; ++k)
        passes_[all[k]].lane_mm =
            spread * (static_cast<double>(k) / static_cast<double>(all.size() - 1) - 0.5);
    }
  }

  [[nodiscard]] Strand through(const Pass& pass) const {
    return {layout_.mouth(pass.middle, weave::opposite(pass.travel), pass.lane_mm),
            layout_.mouth(pass.middle, pass.travel, pass.lane_mm)};
  }

  // Beads

  void draw_beads() {
    for (const ShownBead& bead : beads_)
      if (!bead.beyond && is_new(bead.strung_at))
        pen_.ring(layout_.barrel(bead.middle, layout_.axis_of(bead.cell)));
    for (const ShownBead& bead : beads_) {
      const weave::Axis axis = layout_.axis_of(bead.cell);
      const colour::Rgb colour = colour_of(project_, bead.bead);
      if (bead.beyond)
        pen_.hinted_bead(layout_.barrel(bead.middle, axis), colour);
      else
        pen_.bead(layout_.barrel(bead.middle, axis), colour, is_new(bead.strung_at),
                  layout_.hole(bead.middle, axis));
    }
  }

  // Thread

  /// What lies between beads of the window already.
  void draw_earlier_thread() {
    std::multimap<weave::Cell, const ShownBead*> places;
    for (const ShownBead& bead : beads_)
      if (!bead.beyond) places.emplace(bead.cell, &bead);
    for (const Step& step : steps_) {
      if (step.to >= moment_.first_stitch) break;
      const weave::Stitch& from = plan_.stitches[step.from];
      const weave::Stitch& to = plan_.stitches[step.to];
      const auto [first, end] = places.equal_range(from.cell);
      for (auto place = first; place != end; ++place) {
        const Pass a{.cell = from.cell, .middle = place->second->middle, .travel = from.travel};
        const auto b = next_to(a, to);
        if (!b || (step.between.caught && !places.contains(step.between.caught->cell))) continue;
        earlier_.push_back({linker_.link(a, *b, step.between).whole(), step.between.laid});
        pen_.earlier_thread(earlier_.back().strand);
      }
    }
  }

  /// Where the next bead on the thread is shown.
  [[nodiscard]] std::optional<Pass> next_to(const Pass& a, const weave::Stitch& to) const {
    const weave::Site site = plan_.lattice.site(to.cell);
    const weave::Spot left_at = weave::exit_of({a.middle, layout_.axis_of(a.cell)}, a.travel);
    const weave::Spot mouth = weave::exit_of(site, weave::opposite(to.travel));
    const weave::Spot way = weave::apart(plan_.lattice, left_at, mouth, moment_.at_seam);
    const weave::Spot middle{left_at.across + way.across - mouth.across + site.middle.across,
                             left_at.along + way.along - mouth.along + site.middle.along};
    const bool shown = std::any_of(beads_.begin(), beads_.end(), [&](const ShownBead& bead) {
      return !bead.beyond && bead.middle == middle && bead.cell == to.cell;
    });
    if (!shown) return std::nullopt;
    return Pass{.cell = to.cell, .middle = middle, .travel = to.travel};
  }

  [[nodiscard]] bool is_shown(const Pass& pass) const {
    return std::any_of(beads_.begin(), beads_.end(),
                       [&](const ShownBead& bead) { return !bead.beyond && bead.middle == pass.middle; });
  }

  void draw_moment_thread() {
    for (std::size_t i = 0; i < passes_.size(); ++i) {
      if (i > 0) draw_link(passes_[i - 1], passes_[i]);
      if (i > 0 || !has_lead_) within_.push_back(through(passes_[i]));
    }
    for (const Strand& strand : within_) pen_.thread_in_bead(strand);
    if (!has_lead_) draw_tails();
    if (plan_.on_warps) draw_warps();
    for (const Link& link : over_warps_) pen_.thread(link.whole());
  }

  void draw_link(const Pass& from, const Pass& to) {
    const auto step =
        std::find_if(steps_.begin(), steps_.end(), [&](const Step& s) { return s.to == to.stitch; });
    if (step == steps_.end()) return;
    if (has_lead_ && &from == &passes_.front() && !is_shown(from)) {
      const Point mouth = layout_.mouth(to.middle, weave::opposite(to.travel), to.lane_mm);
      pen_.lead_in({mouth - 4.0 * direction_of(to.travel), mouth});
      return;
    }
    const Link link = linker_.link(from, to, step->between);
    const Strand whole = link.whole();
    if (length_of(whole) > 5) long_links_.push_back(whole);
    if (plan_.on_warps && !to.strung && !step->between.turn) {
      over_warps_.push_back(link);
      return;
    }
    if (link.beneath.empty()) {
      pen_.thread(link.over);
      return;
    }
    const Strand caught = caught_by(link.beneath, *step->between.caught);
    pen_.caught_thread(caught);
    pen_.thread(link.beneath);
    pen_.caught_thread(near(caught, link.beneath));
    pen_.thread(link.over);
    pen_.thread(link.rest);
  }

  /// The earlier thread that a strand goes under: of those that lie there, the nearest.
  [[nodiscard]] Strand caught_by(const Strand& beneath, const EdgeThread& edge) const {
    const Strand* nearest = nullptr;
    double least_mm = 1e9;
    for (const Earlier& earlier : earlier_)
      for (const Point point : earlier.strand)
        if (const double mm = distance(point, beneath.front()); earlier.laid == edge && mm < least_mm)
          least_mm = mm, nearest = &earlier.strand;
    return nearest ? *nearest : Strand{};
  }

  [[nodiscard]] static Strand near(const Strand& strand, const Strand& other) {
    Strand part;
    for (const Point point : strand)
      if (std::any_of(other.begin(), other.end(), [&](Point p) { return distance(p, point) < 0.8; }))
        part.push_back(point);
    return part;
  }

  /// The end of a thread out of a bead's mouth, in waves, where it hides least; its name at the end.
  void draw_tail(Point mouth, Point out, std::string name, bool earlier) {
    constexpr double length_mm = 9;
    const Point way = needle_direction(mouth, out, length_mm, pen_.around(), {}), side = aside_of(way);
    Strand tail = curve(mouth, mouth + 0.8 * out, mouth + 1.6 * way, mouth + 2.4 * way);
    for (double mm = 2.4; mm <= length_mm; mm += 0.3)
      tail.push_back(mouth + mm * way + 0.8 * std::sin((mm - 2.4) / 1.2) * side);
    if (earlier)
      pen_.lead_in(tail);
    else
      pen_.thread(tail);
    pen_.label_end(mouth + length_mm * way, way, std::move(name));
  }

  [[nodiscard]] std::string said(language::Text text) const { return std::string(style_.language->text(text)); }

  void draw_tails() {
    const Pass& first = passes_.front();
    const bool joins = moment_.kind == weave::MomentKind::new_thread;
    draw_tail(layout_.mouth(first.middle, weave::opposite(first.travel), first.lane_mm),
              -1.0 * direction_of(first.travel),
              said(joins ? &language::Texts::picture_new : &language::Texts::picture_tail), false);
    if (!joins) return;
    const auto next = std::find_if(passes_.begin(), passes_.end(),
                                   [&](const Pass& p) { return p.stitch >= moment_.new_from; });
    if (next == passes_.begin()) return;
    const Pass& last = *(next - 1);
    draw_tail(layout_.mouth(last.middle, last.travel, last.lane_mm), direction_of(last.travel),
              said(&language::Texts::picture_old), true);
  }

  void draw_warps() {
    constexpr double past_mm = 5, doubled_mm = 0.9;
    double top = 1e9, bottom = -1e9;
    for (const ShownBead& bead : beads_) {
      const Rectangle barrel = layout_.barrel(bead.middle, weave::Axis::across);
      top = std::min(top, barrel.corner.y_mm - past_mm);
      bottom = std::max(bottom, barrel.corner.y_mm + barrel.height_mm + past_mm);
    }
    for (int warp = moment_.window.first_column; warp <= moment_.window.end_column; ++warp) {
      const double x = layout_.middle({2 * warp - 1, 0}).x_mm;
      const bool outer = warp == 0 || warp == plan_.lattice.columns;
      for (const double off : outer ? std::vector{-doubled_mm / 2, doubled_mm / 2} : std::vector{0.0})
        pen_.warp(x + off, top, bottom);
    }
  }

  // Signs

  void draw_heads() {
    for (const Strand& strand : within_) {
      const auto [tip, way] = along(strand, length_of(strand) - 0.1);
      pen_.head(tip, way);
    }
    for (const Strand& strand : long_links_) {
      const auto [tip, way] = along(strand, length_of(strand) / 2 + 0.9);
      pen_.head(tip, way);
    }
  }

  void draw_end(const std::vector<Disc>& discs) {
    constexpr double lead_mm = 2.2;  // from the last bead to the needle's eye
    const Pass& last = passes_.back();
    const Point mouth = layout_.mouth(last.middle, last.travel, last.lane_mm);
    const Point ahead = direction_of(last.travel);
    const Point way = needle_direction(mouth, ahead, lead_mm + StepPen::needle_mm, pen_.around(), discs);
    const Point eye = mouth + 0.5 * lead_mm * ahead + lead_mm * way;
    pen_.thread(curve(mouth, mouth + 0.7 * lead_mm * ahead, eye - 0.7 * lead_mm * way, eye));
    if (plan_.stitches[moment_.end_stitch - 1].act == weave::Act::finish)
      pen_.cut(eye, way);
    else
      pen_.needle(eye, way);
  }

  /// What lies on the two sides of a seam.
  void draw_seam_labels() {
    if (!moment_.at_seam) return;
    double left = 1e9, right = -1e9, low = 1e9, high = -1e9;
    const int seam = 2 * plan_.lattice.edge;
    for (const ShownBead& bead : beads_) {
      const Rectangle barrel = layout_.barrel(bead.middle, layout_.axis_of(bead.cell));
      left = std::min(left, barrel.corner.x_mm);
      right = std::max(right, barrel.corner.x_mm + barrel.width_mm);
      if (bead.beyond) continue;
      const double y = layout_.middle(bead.middle).y_mm;
      (bead.middle.along < seam ? high : low) =
          bead.middle.along < seam ? std::max(high, y) : std::min(low, y);
    }
    // On the side where the needle is not.
    const bool on_right = passes_.back().travel == weave::Travel::left;
    const auto widen = [&](const Strand& strand) {
      for (const Point point : strand) {
        left = std::min(left, point.x_mm - StepPen::thread_mm);
        right = std::max(right, point.x_mm + StepPen::thread_mm);
      }
    };
    widen(pen_.around().thread);
    for (const Earlier& earlier : earlier_) widen(earlier.strand);
    const double x = on_right ? right + 1.2 : left - 1.2;
    if (high > -1e9) pen_.label({x, high + 0.8}, moment_.last_end, !on_right);
    if (low < 1e9) pen_.label({x, low + 0.8}, moment_.first_end, !on_right);
  }

  const project::Project& project_;
  const StepStyle& style_;
  const weave::Plan& plan_;
  const weave::Moment& moment_;
  StepLayout layout_;
  const std::vector<ShownBead>& beads_;
  const std::vector<Step>& steps_;
  std::vector<Pass> passes_;  ///< the lead-in first, where there is one
  bool has_lead_;
  Linker linker_;
  struct Earlier {
    Strand strand;
    std::optional<EdgeThread> laid;
  };
  std::vector<Earlier> earlier_;
  std::vector<Strand> within_, long_links_;
  std::vector<Link> over_warps_;
  StepPen pen_;
};

/// How often the bead gone through most is gone through.
int most_lanes(const StepScene& scene) {
  std::map<std::pair<int, int>, int> lanes;
  int most = 1;
  for (const Pass& pass : scene.passes)
    most = std::max(most, ++lanes[{pass.middle.across, pass.middle.along}]);
  return most;
}

}  // namespace

Drawing step_drawing(const project::Project& project, const project::Band& band, const weave::Plan& plan,
                     const weave::Moment& moment, const StepStyle& style) {
  constexpr double least_bead_mm = 3.2;  // smaller ones have no room for numbers
  constexpr double more_a_lane = 0.2;
  const StepScene scene = step_scene(plan, moment);
  double bead_mm = style.bead_length.mm() * (1 + more_a_lane * (most_lanes(scene) - 1));
  for (;;) {
    Drawing drawing = StepPicture(project, band, plan, moment, scene, bead_mm, style).draw();
    const double share = style.most_width / drawing.width;
    if (share >= 1 || bead_mm <= least_bead_mm) return drawing;
    bead_mm = std::max(least_bead_mm, bead_mm * std::clamp(share, 0.6, 0.97));
  }
}

}  // namespace evencount::drawing
