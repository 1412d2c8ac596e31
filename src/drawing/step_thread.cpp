#include "drawing/step_thread.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace evencount::drawing {
namespace {

using weave::Axis;
using weave::Travel;
using weave::Turn;

double dot(Point a, Point b) {
  return a.x_mm * b.x_mm + a.y_mm * b.y_mm;
}

void append(Strand& strand, const Strand& more) {
  for (const Point point : more)
    if (strand.empty() || distance(strand.back(), point) > 1e-9) strand.push_back(point);
}

}  // namespace

Strand curve(Point from, Point from_pull, Point to_pull, Point to) {
  constexpr int pieces = 20;
  Strand strand;
  for (int i = 0; i <= pieces; ++i) {
    const double t = static_cast<double>(i) / pieces, s = 1 - t;
    strand.push_back(s * s * s * from + 3 * s * s * t * from_pull + 3 * s * t * t * to_pull + t * t * t * to);
  }
  return strand;
}

double length_of(const Strand& strand) {
  double mm = 0;
  for (std::size_t i = 1; i < strand.size(); ++i) mm += distance(strand[i - 1], strand[i]);
  return mm;
}

std::array<Point, 2> along(const Strand& strand, double mm) {
  for (std::size_t i = 1; i < strand.size(); ++i) {
    const double piece = distance(strand[i - 1], strand[i]);
    if ((mm <= piece || i + 1 == strand.size()) && piece > 0) {
      const Point way = 1 / piece * (strand[i] - strand[i - 1]);
      return {strand[i - 1] + std::min(mm, piece) * way, way};
    }
    mm -= piece;
  }
  return {strand.empty() ? Point{} : strand.back(), Point{1, 0}};
}

std::vector<Strand> dashes(const Strand& strand, double on_mm, double off_mm) {
  std::vector<Strand> all;
  const double length = length_of(strand);
  // So many that a dash stands at both ends.
  const int count = std::max(2, static_cast<int>(std::lround((length + off_mm) / (on_mm + off_mm))));
  const double gap = std::max(0.0, (length - count * on_mm) / (count - 1));
  for (int i = 0; i < count; ++i) {
    const double from = i * (on_mm + gap), to = std::min(length, from + on_mm);
    all.push_back({along(strand, from)[0], along(strand, (from + to) / 2)[0], along(strand, to)[0]});
  }
  return all;
}

Strand Link::whole() const {
  Strand strand = over;
  append(strand, beneath);
  append(strand, rest);
  return strand;
}

Linker::Linker(const weave::Lattice& lattice, const StepLayout& layout, const std::vector<ShownBead>& beads,
               bool at_seam)
    : lattice_(lattice), layout_(layout), at_seam_(at_seam) {
  for (const ShownBead& bead : beads)
    barrels_.push_back(layout.barrel(bead.middle, layout.axis_of(bead.cell)));
}

bool Linker::on_bead(Point point) const {
  return std::any_of(barrels_.begin(), barrels_.end(), [&](const Rectangle& barrel) {
    return point.x_mm > barrel.corner.x_mm && point.x_mm < barrel.corner.x_mm + barrel.width_mm &&
           point.y_mm > barrel.corner.y_mm && point.y_mm < barrel.corner.y_mm + barrel.height_mm;
  });
}

double Linker::room_mm(Point middle, Point out, double wanted_mm) const {
  const double between_beads = layout_.gap_mm() / 2;
  for (double mm = between_beads; mm < wanted_mm + 0.6; mm += 0.2)
    if (on_bead(middle + mm * out)) return between_beads;
  return wanted_mm;
}

Strand Linker::round_turn(Point from, Point to, Point out, double bulge_mm) const {
  const double pull = bulge_mm / 0.75;  // a cubic reaches three quarters of the way to its pulls
  return curve(from, from + pull * out, to + pull * out, to);
}

Link Linker::link(const Pass& from, const Pass& to, const Between& between) const {
  const Point p = layout_.mouth(from.middle, from.travel, from.lane_mm);
  const Point q = layout_.mouth(to.middle, weave::opposite(to.travel), to.lane_mm);
  const Point out = direction_of(from.travel), in = direction_of(to.travel);
  if (between.caught) return round_thread(from, to, *between.caught);
  if (between.turn == Turn::outside) return {outside(from, to), {}, {}};
  const double apart_mm = distance(p, q);
  if (between.turn == Turn::warp) return {round_turn(p, q, out, layout_.gap_mm() / 2 + 1.6), {}, {}};
  if (dot(out, in) < -0.5) {
    const double wanted =
        between.turn == Turn::inside ? layout_.gap_mm() / 2 : StepLayout::bulge_mm(apart_mm);
    return {round_turn(p, q, out, room_mm(0.5 * (p + q), out, wanted)), {}, {}};
  }
  const double ahead_mm = dot(q - p, out);
  const double pull = dot(out, in) > 0.5 ? 0.75 * std::max(ahead_mm, 0.4) : 0.5 * apart_mm;
  return {curve(p, p + pull * out, q - pull * in, q), {}, {}};
}

/// Past the outside of the last bead or of the one that comes.
Strand Linker::outside(const Pass& from, const Pass& to) const {
  const Point p = layout_.mouth(from.middle, from.travel, from.lane_mm);
  const Point q = layout_.mouth(to.middle, weave::opposite(to.travel), to.lane_mm);
  const Point out = direction_of(from.travel);
  const double ahead_mm = dot(q - p, out);
  const bool round_next = ahead_mm > 0;
  // The thread lies along the side of the bead it encloses that faces the other bead.
  const Pass& enclosed = round_next ? to : from;
  const Point towards = layout_.middle((round_next ? from : to).middle) - layout_.middle(enclosed.middle);
  Point side{towards.x_mm - dot(towards, out) * out.x_mm, towards.y_mm - dot(towards, out) * out.y_mm};
  const double aside_mm = std::hypot(side.x_mm, side.y_mm);
  side = aside_mm > 1e-6 ? 1 / aside_mm * side : Point{-std::abs(out.y_mm), -std::abs(out.x_mm)};
  const double off_mm = layout_.half_width_mm() + 0.55;
  const Point middle = layout_.middle(enclosed.middle);
  const Point near = middle - layout_.half_length_mm() * out + off_mm * side;
  const Point far = middle + layout_.half_length_mm() * out + off_mm * side;
  const double bulge = 1.6;
  Strand strand;
  if (round_next) {
    append(strand, curve(p, p + 0.6 * distance(p, near) * out, near - 0.6 * distance(p, near) * out, near));
    append(strand, round_turn(far, q, out, bulge));
  } else {
    append(strand, round_turn(p, far, out, bulge));
    append(strand, curve(near, near - 0.6 * distance(near, q) * out, q + 0.6 * distance(near, q) * out, q));
  }
  return strand;
}

/// Out of a bead, round a thread and back into it.
Link Linker::round_thread(const Pass& from, const Pass& to, const EdgeThread& caught) const {
  const Point p = layout_.mouth(from.middle, from.travel, from.lane_mm);
  const Point q = layout_.mouth(to.middle, weave::opposite(to.travel), to.lane_mm);
  const Point out = direction_of(from.travel);
  const weave::Site site = lattice_.site(caught.cell);
  const weave::Spot left_at = weave::exit_of({from.middle, layout_.axis_of(from.cell)}, from.travel);
  const weave::Spot mouth = weave::exit_of(site, caught.out);
  const weave::Spot way = weave::apart(lattice_, left_at, mouth, at_seam_);
  const weave::Spot bead{left_at.across + way.across - mouth.across + site.middle.across,
                         left_at.along + way.along - mouth.along + site.middle.along};
  const double beside_mm = layout_.beside_mm(site.axis);
  const Point on = site.axis == Axis::across ? Point{0, 1} : Point{1, 0};
  const Point at_mouths = layout_.mouth(bead, caught.out) + beside_mm / 2 * on;
  const Point out_there = direction_of(caught.out);
  const double bulge = room_mm(at_mouths, out_there, StepLayout::bulge_mm(beside_mm));
  const Point thread = at_mouths + bulge * out_there;

  if (dot(out, out_there) < 0) {  // it lies ahead of the needle: clasp it
    const Point apex = thread + 1.2 * out;
    const Point turn = q - p;
    const double length = std::max(distance(p, q), 0.2);
    const Point sideways = 1 / length * turn;
    const double pull = std::min(1.2, length / 2);
    return {curve(p, p + 0.8 * distance(p, apex) * out, apex - pull * sideways, apex),
            curve(apex, apex + pull * sideways, q + 0.8 * distance(q, apex) * out, q),
            {}};
  }
  // It lies aside along the edge: up between it and the beads, under it, and back outside.
  const Point up_to = thread - p;
  const Point up = (dot(up_to, on) < 0 ? -1.0 : 1.0) * on;
  const Point inside = thread - std::min(0.6 * bulge, 1.3) * out - 0.4 * up;
  const Point beyond = thread + 1.7 * out - 0.4 * up;
  const double rise = distance(p, inside);
  return {curve(p, p + 1.3 * out, inside - 0.45 * rise * up, inside),
          curve(inside, inside + 2.0 * up, beyond + 2.0 * up, beyond),
          curve(beyond, beyond - 0.5 * distance(beyond, q) * up, q + (bulge + 2.2) * out, q)};
}

}  // namespace evencount::drawing
