#include "form/closure.hpp"

#include <fmt/format.h>

#include <array>
#include <numbers>
#include <optional>

#include "form/track.hpp"

namespace evencount::form {
namespace {

using std::numbers::pi;

// How precisely a ring must close, as a share of the perimeter: rounding of a lap.
constexpr double closing_tolerance = 1e-13;
// Newton squares the error: a correction this small, as a share of the chord, is the last that matters. A range
// needs no more than the sixth figure.
constexpr double last_correction = 1e-8, last_correction_in_range = 3e-5;

// A ring's end moves by about n times a change of its chord; by more where chords graze the curve as they arrive.
constexpr double steep_from = 5;

struct Solved {
  double chord_mm;
  double slope;  // of the closing chord by the start's true arc length
  bool exact;    // false: the walk jumps past the start at this chord
  bool steep;    // nearly so: a small change of chord moves the end far
};

std::optional<Solved> solve(const Track& track, const TrackPlace& start, int beads, double guess_mm,
                            double last, Lap lap = Lap::whole) {
  const int n = lap == Lap::half ? beads / 2 : beads;
  double low = 0, high = track.perimeter_mm();
  bool passed = false;
  double chord = guess_mm, before = high;
  constexpr int most = 200;
  for (int i = 0; i < most; ++i) {
    const Walk walk = track.walk(start, n, chord, lap);
    if (walk.arrived) {
      const double correction = walk.overshoot_mm / walk.by_chord;
      const bool closed = std::abs(walk.overshoot_mm) <= closing_tolerance * track.perimeter_mm() ||
                          std::abs(correction) <= last * chord;
      if (closed && std::isfinite(correction))
        return Solved{chord - correction, (1 - walk.by_start) / walk.by_chord, true,
                      walk.by_chord > steep_from * n};
      passed = passed || walk.overshoot_mm > 0;
      (walk.overshoot_mm > 0 ? high : low) = chord;
      // Newton must at least halve its corrections, or it may go round in circles.
      chord = std::abs(correction) < before / 2 ? chord - correction : low;
      before = std::abs(correction);
    } else {
      high = chord;
      chord = low;
    }
    if (!(chord > low && chord < high)) chord = (low + high) / 2;
    constexpr double jump_width = 1e-10;  // narrower than this, as a share, the walk jumps rather than rises
    if (high - low <= jump_width * high)
      return passed ? std::optional(Solved{high, 0, false, true}) : std::nullopt;
  }
  return std::nullopt;
}

// The chord of a ring on a circle of the same perimeter: near enough to start from.
double first_guess(const Track& track, int n) {
  return track.perimeter_mm() / pi * std::sin(pi / n);
}

Problem too_few(int n) {
  return {ProblemCode::too_few_beads, "beads along the edge", fmt::format("{}", n), "at least 3"};
}

Problem unclosable(int n) {
  return {ProblemCode::cannot_close, "ring", fmt::format("{} beads that do not meet on this curve", n),
          "a curve that equal chords lead round"};
}

// One start that has been tried: where, the chord and its slope by `along_mm`.
struct Tried {
  double along_mm = 0;
  double chord_mm = 0;
  double slope = 0;
};

struct Extremes {
  Tried smallest;
  Tried largest;
};

// The cubic through two tried starts: where it turns, as shares of the way, and its value there.
struct Turns {
  std::size_t count = 0;
  std::array<double, 2> share{};
  std::array<double, 2> chord_mm{};
};

Turns turns_between(const Tried& a, const Tried& b) {
  const double h = b.along_mm - a.along_mm, rise = b.chord_mm - a.chord_mm;
  const double c1 = h * a.slope, c2 = 3 * rise - h * (2 * a.slope + b.slope),
               c3 = h * (a.slope + b.slope) - 2 * rise;
  Turns turns;
  const auto add = [&](double t) {
    if (!(t > 0 && t < 1)) return;
    turns.share[turns.count] = t;
    turns.chord_mm[turns.count++] = a.chord_mm + t * (c1 + t * (c2 + t * c3));
  };
  const double discriminant = c2 * c2 - 3 * c1 * c3;
  if (discriminant < 0) return turns;
  const double q = -(c2 + std::copysign(std::sqrt(discriminant), c2));
  if (c3 != 0) add(q / (3 * c3));
  if (q != 0) add(c1 / q);
  return turns;
}

// Where the slope leads from the last start, bent as it was bent on the way there.
double predicted_mm(const Tried& earlier, const Tried& last, double along_mm) {
  const double ahead = along_mm - last.along_mm, behind = last.along_mm - earlier.along_mm;
  const double bend = behind > 0 ? (last.slope - earlier.slope) / behind : 0;
  return last.chord_mm + ahead * (last.slope + ahead * bend / 2);
}

// The search for the smallest and the largest closing chord over all starts of one ring.
class Search {
 public:
  Search(const Track& track, int n)
      : track_(track),
        n_(n),
        even_lap_(track.same_after_half_turn() && n % 2 == 0),
        odd_lap_(track.same_after_half_turn() && track.mirrored_about_start() && n % 2 != 0) {}

  // False when some start has no ring.
  bool run(double guess_mm) {
    Tried first;
    lap_ = even_lap_ ? Lap::half : Lap::whole;
    if (!try_start(0, guess_mm, first)) return false;
    const double window = window_mm(first.chord_mm);
    const int parts = track_.mirrored_about_start() ? 4 : 8;
    // A ring of an odd number of beads on such a curve is turned by half a bead when the curve is turned by half, so half
    // of the window stands for it all; a little more, as beads don't move evenly.
    constexpr double half_and_more = 0.6;
    const bool swept = odd_lap_ ? sweep(first, half_and_more * window, 3) : sweep(first, window, parts);
    if (!swept) return false;
    if (!rough_) return true;
    // A ring that jumps, or nearly does, has kinks that neither the cubics nor a single correction follow.
    constexpr int finer = 4;
    last_ = last_correction;
    lap_ = Lap::whole;
    return try_start(0, first.chord_mm, first) && sweep(first, window, finer * parts);
  }

  [[nodiscard]] const Extremes& extremes() const { return extremes_; }

 private:
  bool try_start(double along_mm, double guess_mm, Tried& tried) {
    const TrackPlace place = track_.place_at_mm(along_mm);
    const auto solved = solve(track_, place, n_, guess_mm, last_, lap_);
    if (!solved) return false;
    rough_ = rough_ || solved->steep;
    tried = {along_mm, solved->chord_mm, solved->slope * track_.stretch(place)};
    return true;
  }

  void keep(const Tried& tried) {
    if (tried.chord_mm < extremes_.smallest.chord_mm) extremes_.smallest = tried;
    if (tried.chord_mm > extremes_.largest.chord_mm) extremes_.largest = tried;
  }

  // Starts from the curve's beginning that stand for all others: one bead further is the same ring, and on a curve
  // that is its own mirror image about the beginning, so is the mirrored start.
  [[nodiscard]] double window_mm(double chord_mm) const {
    TrackPlace next = track_.place_at_mm(0);
    if (!track_.step(next, chord_mm)) return track_.perimeter_mm();
    const double whole = track_.along_mm(next);
    if (!track_.mirrored_about_start()) return whole;
    // The farthest mirrored start is that of the ring with two beads evenly to both sides of the beginning.
    double half = whole / 2;
    for (int i = 0; i < 4; ++i) {
      const double apart = distance(track_.place_at_mm(half).at, track_.place_at_mm(-half).at);
      half = std::min(half * chord_mm / apart, whole);
    }
    constexpr double margin = 1.02;  // the chord there is not quite the one at the beginning
    return std::min(margin * half, whole);
  }

  // Tries evenly spread starts over the window, the first of them given, then looks between them.
  bool sweep(const Tried& first, double window, int parts) {
    extremes_ = {first, first};
    std::vector<Tried> tried{first};
    tried.reserve(static_cast<std::size_t>(parts) + 1);
    for (int i = 1; i <= parts; ++i) {
      const double along = window * i / parts;
      const Tried& earlier = tried[tried.size() < 2 ? 0 : tried.size() - 2];
      Tried here;
      if (!try_start(along, predicted_mm(earlier, tried.back(), along), here)) return false;
      keep(here);
      tried.push_back(here);
      // Two starts alike, and no slope between them: on a curve as smooth as this the ring turns freely.
      constexpr double alike = 1e-6, level = 1e-5;  // of a chord; a wave as small as either is far below 5e-5
      const double spread = extremes_.largest.chord_mm - extremes_.smallest.chord_mm;
      const double slope = std::max(std::abs(first.slope), std::abs(here.slope));
      if (i == 1 && spread < alike * here.chord_mm && slope * here.chord_mm < level * here.chord_mm)
        return true;
    }
    for (std::size_t i = 0; i + 1 < tried.size(); ++i)
      if (!look_between(tried[i], tried[i + 1])) return false;
    return true;
  }

  // Looks between two tried starts for a chord outside what is known, following the cubic a few times.
  bool look_between(Tried a, Tried b) {
    constexpr double worth_a_look = 1e-7;  // of a chord: far below any bead
    constexpr double far_off = 1e-3;       // of a chord: the cubic misleads
    constexpr int most = 4;
    for (int i = 0; i < most; ++i) {
      const Turns turns = turns_between(a, b);
      double best_gain = worth_a_look * a.chord_mm;
      std::optional<std::size_t> best;
      for (std::size_t k = 0; k < turns.count; ++k) {
        const double gain = std::max(extremes_.smallest.chord_mm - turns.chord_mm[k],
                                     turns.chord_mm[k] - extremes_.largest.chord_mm);
        if (gain > best_gain) best_gain = gain, best = k;
      }
      if (!best) return true;
      const double along = a.along_mm + turns.share[*best] * (b.along_mm - a.along_mm);
      const double expected = turns.chord_mm[*best];
      Tried here;
      if (!try_start(along, expected, here)) return false;
      rough_ = rough_ || std::abs(here.chord_mm - expected) > far_off * expected;
      const bool smaller = expected < extremes_.smallest.chord_mm;
      keep(here);
      ((here.slope > 0) == smaller ? b : a) = here;
    }
    return true;
  }

  const Track& track_;
  int n_;
  bool even_lap_;  // half of the chords lead half round
  bool odd_lap_;
  Lap lap_ = Lap::whole;
  double last_ = last_correction_in_range;
  bool rough_ = false;
  Extremes extremes_;
};

}  // namespace

Result<Length> closing_chord(const ConvexCurve& curve, int n, Position start) {
  if (n < 3) return too_few(n);
  const Track track(curve);
  const auto solved = solve(track, track.place_at(start), n, first_guess(track, n), last_correction);
  if (!solved) return unclosable(n);
  return millimetres(solved->chord_mm);
}

Result<ClosingRange> closing_range(const ConvexCurve& curve, int n) {
  return closing_range(Track(curve), n);
}

Result<ClosingRange> closing_range(const Track& track, int n, std::optional<Length> near) {
  if (n < 3) return too_few(n);
  Search search(track, n);
  const bool usable = near && *near > Length{} && near->mm() < track.perimeter_mm();
  if (!search.run(usable ? near->mm() : first_guess(track, n))) return unclosable(n);
  const auto& [smallest, largest] = search.extremes();
  const auto position = [&](const Tried& tried) {
    return track.position_of(track.place_at_mm(tried.along_mm));
  };
  return ClosingRange{millimetres(smallest.chord_mm), millimetres(largest.chord_mm), position(smallest),
                      position(largest)};
}

Length likely_chord(Length perimeter, int m, Length chord_of_m, int n) {
  const Length left_out = perimeter - m * chord_of_m;
  const double shrunk = 1.0 * m / n;
  return (perimeter - shrunk * shrunk * left_out) / n;
}

Result<Ring> close_ring(const ConvexCurve& curve, int n, Position start) {
  if (n < 3) return too_few(n);
  const Track track(curve);
  TrackPlace place = track.place_at(start);
  const auto solved = solve(track, place, n, first_guess(track, n), last_correction);
  if (!solved || !solved->exact) return unclosable(n);
  Ring ring{millimetres(solved->chord_mm), {}};
  for (int i = 0; i < n; ++i) {
    ring.beads.push_back({place.at, -1.0 * quarter_turn(place.tangent)});
    if (i + 1 < n && !track.step(place, solved->chord_mm)) return unclosable(n);
  }
  return ring;
}

}  // namespace evencount::form
