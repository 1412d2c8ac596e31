#include "form/track.hpp"

#include <algorithm>
#include <numbers>

namespace evencount::form {
namespace {

using std::numbers::pi;

// Angles and shares closer than this are the same place: rounding of a few sines and square roots.
constexpr double same_angle = 1e-12;

struct EllipticPlace {
  Point at;
  Point tangent;
  double speed_mm;  // of the point by t
};

EllipticPlace elliptic_place(const EllipticArc& arc, Point axis, double local) {
  const Point unit = direction(arc.from + local);
  const Point steep{arc.y_axis_mm * unit.x_mm, arc.x_axis_mm * unit.y_mm};
  const double steepness = norm(steep);
  const Point normal = (1 / steepness) * steep;
  const Point at = Point{arc.x_axis_mm * unit.x_mm, arc.y_axis_mm * unit.y_mm} + arc.offset_mm * normal;
  const auto turned = [&](Point p) { return p.x_mm * axis + p.y_mm * quarter_turn(axis); };
  const double turning = arc.x_axis_mm * arc.y_axis_mm / (steepness * steepness);
  return {arc.centre + turned(at), turned(quarter_turn(normal)), steepness + arc.offset_mm * turning};
}

bool about_equal(double a, double b) {
  return std::abs(a - b) <= 1e-9 * (1 + std::abs(a) + std::abs(b));
}

// Would one piece, run backwards in a mirror, be the other?
bool mirror_images(const Arc& a, const Arc& b) {
  return about_equal(a.radius_mm, b.radius_mm) && about_equal(a.sweep, b.sweep);
}
bool mirror_images(const Segment& a, const Segment& b) {
  return about_equal(distance(a.from, a.to), distance(b.from, b.to));
}
bool mirror_images(const EllipticArc& a, const EllipticArc& b) {
  return about_equal(a.x_axis_mm, b.x_axis_mm) && about_equal(a.y_axis_mm, b.y_axis_mm) &&
         about_equal(a.offset_mm, b.offset_mm) && about_equal(a.sweep, b.sweep) &&
         std::abs(std::sin(a.from + b.from + b.sweep)) < 1e-9;
}
template <typename A, typename B>
bool mirror_images(const A&, const B&) {
  return false;
}

// Would one piece, after half a turn, be the other, as far as its own shape goes?
bool half_turn_images(const Arc& a, const Arc& b) {
  return mirror_images(a, b);
}
bool half_turn_images(const Segment& a, const Segment& b) {
  return mirror_images(a, b);
}
bool half_turn_images(const EllipticArc& a, const EllipticArc& b) {
  return about_equal(a.x_axis_mm, b.x_axis_mm) && about_equal(a.y_axis_mm, b.y_axis_mm) &&
         about_equal(a.offset_mm, b.offset_mm) && about_equal(a.sweep, b.sweep) &&
         std::abs(std::sin(a.from - b.from)) < 1e-9;
}
template <typename A, typename B>
bool half_turn_images(const A&, const B&) {
  return false;
}

}  // namespace

Track::Track(const ConvexCurve& curve) {
  for (std::size_t i = 0; i < curve.pieces().size(); ++i) {
    const Piece& piece = curve.pieces()[i];
    const double length = length_mm(piece);
    if (length <= 0) continue;
    const double bend = turn(piece);
    const int cuts = bend > pi + same_angle ? 1 + static_cast<int>(bend / pi) : 1;
    for (int k = 0; k < cuts; ++k) {
      Part p;
      p.origin = static_cast<int>(i);
      p.origin_first = 1.0 * k / cuts;
      p.origin_last = 1.0 * (k + 1) / cuts;
      p.piece = cuts == 1 ? piece : part(piece, p.origin_first, p.origin_last);
      p.length_mm = cuts == 1 ? length : form::length_mm(p.piece);
      p.begins_mm = perimeter_mm_;
      perimeter_mm_ += p.length_mm;
      const Placed first = place(p.piece, 0), last = place(p.piece, 1);
      p.begin = first.at;
      p.end = last.at;
      p.axis = first.normal;
      p.last_axis = last.normal;
      if (const auto* arc = std::get_if<Arc>(&p.piece)) p.extent = arc->sweep;
      if (std::holds_alternative<Segment>(p.piece)) {
        p.extent = p.length_mm;
        p.axis = quarter_turn(first.normal);
      }
      if (const auto* arc = std::get_if<EllipticArc>(&p.piece)) {
        p.extent = arc->sweep;
        p.axis = direction(arc->tilt);
      }
      parts_.push_back(p);
    }
  }
  mirrored_ = true;
  for (std::size_t i = 0; mirrored_ && i < parts_.size(); ++i)
    mirrored_ = std::visit([](const auto& a, const auto& b) { return mirror_images(a, b); }, parts_[i].piece,
                           parts_[parts_.size() - 1 - i].piece);
  find_middle();
}

void Track::find_middle() {
  const std::size_t half = parts_.size() / 2;
  if (half == 0 || parts_.size() % 2 != 0) return;
  const Point middle = 0.5 * (parts_[0].begin + parts_[half].begin);
  for (std::size_t i = 0; i < half; ++i) {
    const Part &here = parts_[i], &there = parts_[i + half];
    const bool images = std::visit([](const auto& a, const auto& b) { return half_turn_images(a, b); },
                                   here.piece, there.piece);
    const double off = distance(0.5 * (here.begin + there.begin), middle);
    if (!images || off > 1e-9 * perimeter_mm_) return;
  }
  middle_ = middle;
}

TrackPlace Track::placed(std::size_t piece, double local) const {
  const Part& p = parts_[piece];
  if (const auto* arc = std::get_if<Arc>(&p.piece)) {
    const Point turned = direction(local);
    const Point normal = turned.x_mm * p.axis + turned.y_mm * quarter_turn(p.axis);
    return {piece, local, arc->centre + arc->radius_mm * normal, quarter_turn(normal)};
  }
  if (std::holds_alternative<Segment>(p.piece)) return {piece, local, p.begin + local * p.axis, p.axis};
  const EllipticPlace e = elliptic_place(*std::get_if<EllipticArc>(&p.piece), p.axis, local);
  return {piece, local, e.at, e.tangent};
}

TrackPlace Track::place_at(Position position) const {
  std::size_t i = 0;
  while (i + 1 < parts_.size() &&
         (parts_[i].origin < position.piece ||
          (parts_[i].origin == position.piece && parts_[i].origin_last < position.share)))
    ++i;
  const Part& p = parts_[i];
  if (p.origin != position.piece) return placed(i, p.origin < position.piece ? p.extent : 0);  // on a corner
  const double share = (position.share - p.origin_first) / (p.origin_last - p.origin_first);
  return placed(i, std::clamp(share, 0.0, 1.0) * p.extent);
}

TrackPlace Track::place_at_mm(double along_mm) const {
  double rest = along_mm - perimeter_mm_ * std::floor(along_mm / perimeter_mm_);
  std::size_t i = 0;
  while (i + 1 < parts_.size() && parts_[i + 1].begins_mm <= rest) ++i;
  const Part& p = parts_[i];
  return placed(i, std::clamp((rest - p.begins_mm) / p.length_mm, 0.0, 1.0) * p.extent);
}

double Track::along_mm(const TrackPlace& place) const {
  const Part& p = parts_[place.piece];
  return p.begins_mm + place.local / p.extent * p.length_mm;
}

double Track::stretch(const TrackPlace& place) const {
  const Part& p = parts_[place.piece];
  const auto* arc = std::get_if<EllipticArc>(&p.piece);
  return arc ? elliptic_place(*arc, p.axis, place.local).speed_mm * p.extent / p.length_mm : 1;
}

Position Track::position_of(const TrackPlace& place) const {
  const Part& p = parts_[place.piece];
  return {p.origin, p.origin_first + (p.origin_last - p.origin_first) * (place.local / p.extent)};
}

// The distance to a point running round a whole circle rises once and falls once, so the first place at the chord's
// distance, begun from nearer, is the one on the rising side.
bool Track::cross_arc(const Part& p, const Arc& arc, double chord_mm, TrackPlace& place) const {
  const Point away = arc.centre - place.at;  // the farthest point of the circle lies this way from the centre
  const bool farthest_outside = cross(p.axis, away) < 0 || cross(away, p.last_axis) < 0;
  const Point to_end = p.end - place.at;
  if (farthest_outside && dot(to_end, to_end) < chord_mm * chord_mm) return false;
  const double d = norm(away), r = arc.radius_mm;
  // The law of cosines for the half angle: it keeps its figures when the arc is nearly straight.
  const double sine2 = (chord_mm * chord_mm - (d - r) * (d - r)) / (4 * d * r);
  if (!(sine2 >= 0 && sine2 <= 1)) return false;
  const double from_angle = std::atan2(-cross(p.axis, away), -dot(p.axis, away));
  double angle = from_angle + 2 * std::asin(std::sqrt(sine2));
  if (angle < -same_angle) angle += 2 * pi;
  if (angle > p.extent + same_angle) return false;
  place = placed(static_cast<std::size_t>(&p - parts_.data()), std::clamp(angle, 0.0, p.extent));
  return true;
}

bool Track::cross_segment(const Part& p, double chord_mm, TrackPlace& place) const {
  const Point to_end = p.end - place.at, to_begin = p.begin - place.at;
  if (dot(to_end, to_end) < chord_mm * chord_mm) return false;
  const double ahead = dot(to_begin, p.axis), aside = cross(to_begin, p.axis);
  const double local = std::sqrt(std::max(0.0, chord_mm * chord_mm - aside * aside)) - ahead;
  place = placed(static_cast<std::size_t>(&p - parts_.data()), std::clamp(local, 0.0, p.extent));
  return true;
}

bool Track::cross_elliptic(const Part& p, const EllipticArc& arc, double first, double chord_mm,
                           TrackPlace& place) const {
  const Point from = place.at, to_end = p.end - from;
  if (dot(to_end, to_end) < chord_mm * chord_mm) return false;
  double low = first, high = p.extent, t = first + place.stride + place.stride_growth;
  if (first == 0 || place.stride == 0) {
    const EllipticPlace begin = elliptic_place(arc, p.axis, first);
    t = first + (chord_mm - distance(from, begin.at)) / begin.speed_mm;
  }
  constexpr int most = 60;
  for (int i = 0; i < most; ++i) {
    if (!(t > low && t < high)) t = (low + high) / 2;
    const EllipticPlace here = elliptic_place(arc, p.axis, t);
    const Point chord = here.at - from;
    const double reach = norm(chord), off = reach - chord_mm;
    (off < 0 ? low : high) = t;
    const double rising = dot(chord, here.tangent) / reach * here.speed_mm;
    const double move = rising > 0 ? -off / rising : (low + high) / 2 - t;
    // Newton squares the error, so so small a move is the last that matters, and the curve is straight over it.
    constexpr double last_move = 3e-5;  // of a chord
    if (std::abs(move) * here.speed_mm < last_move * chord_mm || i + 1 == most) {
      const auto piece = static_cast<std::size_t>(&p - parts_.data());
      const double stride = t + move - first;
      place = {piece,        t + move, here.at + (move * here.speed_mm) * here.tangent,
               here.tangent, stride,   place.stride > 0 && first > 0 ? stride - place.stride : 0};
      return true;
    }
    t += move;
  }
  return false;
}

bool Track::cross_piece(std::size_t piece, double chord_mm, TrackPlace& place) const {
  const Part& p = parts_[piece];
  if (const auto* arc = std::get_if<Arc>(&p.piece)) return cross_arc(p, *arc, chord_mm, place);
  if (std::holds_alternative<Segment>(p.piece)) return cross_segment(p, chord_mm, place);
  const double first = place.piece == piece ? place.local : 0;
  return cross_elliptic(p, *std::get_if<EllipticArc>(&p.piece), first, chord_mm, place);
}

bool Track::step(TrackPlace& place, double chord_mm) const {
  const Part& here = parts_[place.piece];
  if (const auto* arc = std::get_if<Arc>(&here.piece)) {
    if (chord_mm <= 2 * arc->radius_mm) {
      const double turned = place.local + 2 * std::asin(chord_mm / (2 * arc->radius_mm));
      if (turned <= here.extent) return place = placed(place.piece, turned), true;
    }
  } else if (std::holds_alternative<Segment>(here.piece)) {
    if (place.local + chord_mm <= here.extent)
      return place = placed(place.piece, place.local + chord_mm), true;
  } else if (cross_piece(place.piece, chord_mm, place)) {
    return true;
  }
  return step_beyond(place, chord_mm);
}

bool Track::step_beyond(TrackPlace& place, double chord_mm) const {
  const std::size_t here = place.piece;
  for (std::size_t k = 1; k < parts_.size(); ++k) {
    const std::size_t piece = here + k < parts_.size() ? here + k : here + k - parts_.size();
    if (cross_piece(piece, chord_mm, place)) return true;
  }
  return false;
}

Walk Track::walk(const TrackPlace& start, int n, double chord_mm, Lap lap) const {
  Walk result;
  result.by_start = 1;
  TrackPlace place = start;
  const bool half = lap == Lap::half && middle_;
  const double target_mm = along_mm(start) + (half ? perimeter_mm_ / 2 : perimeter_mm_);
  double laps_mm = 0;
  for (int left = n; left > 0;) {
    const Part& p = parts_[place.piece];
    // Chords that stay on one arc or segment are all alike, so they are taken at once.
    double stride = 0, share = 1;
    if (const auto* arc = std::get_if<Arc>(&p.piece); arc && chord_mm < 2 * arc->radius_mm) {
      const double sine = chord_mm / (2 * arc->radius_mm);
      stride = 2 * std::asin(sine);
      share = std::sqrt(1 - sine * sine);
    } else if (std::holds_alternative<Segment>(p.piece)) {
      stride = chord_mm;
    }
    if (stride > 0 && place.local + stride <= p.extent) {
      const int strides = static_cast<int>(std::min<double>(left, (p.extent - place.local) / stride));
      place = placed(place.piece, place.local + strides * stride);
      result.by_chord += strides / share;
      left -= strides;
      if (left == 0) break;
    }
    const TrackPlace before = place;
    // No further stride fits on an arc or segment; an elliptic arc may hold the next point still.
    if (!(stride > 0 ? step_beyond(place, chord_mm) : step(place, chord_mm))) return result;
    if (place.piece < before.piece) laps_mm += perimeter_mm_;
    const Point chord = (1 / chord_mm) * (place.at - before.at);
    const double leaving = dot(chord, before.tangent), arriving = dot(chord, place.tangent);
    result.by_chord = (1 + leaving * result.by_chord) / arriving;
    result.by_start *= leaving / arriving;
    --left;
    if (laps_mm > perimeter_mm_) break;  // far past the start: that is answer enough
  }
  result.arrived = true;
  result.overshoot_mm = laps_mm + along_mm(place) - target_mm;
  constexpr double straight = 0.05;  // of a chord: close to the start the way along is the way across
  if (std::abs(result.overshoot_mm) < straight * chord_mm)
    result.overshoot_mm =
        std::copysign(distance(half ? 2 * *middle_ - start.at : start.at, place.at), result.overshoot_mm);
  return result;
}

}  // namespace evencount::form
