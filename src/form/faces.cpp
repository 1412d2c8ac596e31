#include "form/faces.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <numbers>

#include "base/text.hpp"
#include "form/closure.hpp"
#include "form/track.hpp"

namespace evencount::form {
namespace {

using std::numbers::pi;
constexpr double same_direction = 1e-9;  // of normals: rounding of makers

// The share of a piece where its normal has turned by `angle`.
double share_turned(const Piece& piece, double angle) {
  if (const auto* arc = std::get_if<Arc>(&piece)) return std::clamp(angle / arc->sweep, 0.0, 1.0);
  double low = 0, high = 1;
  constexpr int halvings = 60;  // to the last bit
  for (int i = 0; i < halvings; ++i) {
    const double middle = (low + high) / 2;
    (turn(part(piece, 0, std::max(middle, 1e-300))) < angle ? low : high) = middle;
  }
  return high;
}

bool flat_facing(const Piece& piece, Point facing) {
  return std::holds_alternative<Segment>(piece) && distance(place(piece, 0).normal, facing) < same_direction;
}

// The middle of the flats that face that way, which lie in one line. None: nothing flat does.
std::optional<Position> middle_of_flats(const ConvexCurve& curve, Point facing) {
  const Point along = quarter_turn(facing);
  double low = 1e300, high = -1e300;
  for (const Piece& piece : curve.pieces()) {
    if (!flat_facing(piece, facing)) continue;
    low = std::min(low, dot(place(piece, 0).at, along));
    high = std::max(high, dot(place(piece, 1).at, along));
  }
  const double middle = (low + high) / 2;
  for (std::size_t i = 0; i < curve.pieces().size(); ++i) {
    const Piece& piece = curve.pieces()[i];
    if (!flat_facing(piece, facing)) continue;
    const double begin = dot(place(piece, 0).at, along), end = dot(place(piece, 1).at, along);
    if (begin <= middle && middle <= end)
      return Position{static_cast<int>(i), (middle - begin) / (end - begin)};
  }
  return std::nullopt;
}

Position place_facing(const ConvexCurve& curve, Point facing) {
  if (const auto flat = middle_of_flats(curve, facing)) return *flat;
  for (std::size_t i = 0; i < curve.pieces().size(); ++i) {
    const Piece& piece = curve.pieces()[i];
    const Point first = place(piece, 0).normal;
    double angle = std::atan2(cross(first, facing), dot(first, facing));
    if (angle < -same_direction) angle += 2 * pi;
    if (angle <= turn(piece) + same_direction && turn(piece) > 0)
      return {static_cast<int>(i), share_turned(piece, std::max(angle, 0.0))};
  }
  return {};  // unreachable: a closed curve faces every way
}

using Beads = std::vector<TrackPlace>;

// A ring of n beads from a start: equal chords, and where no ring closes the last one a little shorter.
Result<Beads> beads_from(const ConvexCurve& round, const Track& track, int n, const TrackPlace& start) {
  const auto chord = closing_chord(round, n, track.position_of(start));
  if (!chord) return chord.problem();
  Beads beads{start};
  while (beads.size() < static_cast<std::size_t>(n)) {
    TrackPlace next = beads.back();
    if (!track.step(next, chord->mm()))
      return Problem{ProblemCode::cannot_close, "ring", fmt::format("{} beads that do not meet", n),
                     "a curve that equal chords lead round"};
    beads.push_back(next);
  }
  return beads;
}

// How much nearer the odd beads are to the even ones ahead than to those behind, summed up.
double lead_mm(const Beads& even, const Beads& odd) {
  double sum = 0;
  for (std::size_t k = 0; k < even.size(); ++k)
    sum += distance(odd[k].at, even[k].at) - distance(odd[k].at, even[(k + 1) % even.size()].at);
  return sum;
}

// The odd columns' ring: it lies so that its beads are half way between the even ones on the whole.
Result<Beads> odd_beads(const ConvexCurve& round, const Track& track, const Beads& even) {
  const int n = static_cast<int>(even.size());
  const double from = track.along_mm(even[0]);
  double to = track.along_mm(even[1]);
  if (to < from) to += track.perimeter_mm();
  double low = from, high = to;
  constexpr int halvings = 45;  // of a bead: to the last few bits
  for (int i = 0; i < halvings; ++i) {
    const double middle = (low + high) / 2;
    const auto odd = beads_from(round, track, n, track.place_at_mm(middle));
    if (!odd) return odd.problem();
    (lead_mm(even, *odd) < 0 ? low : high) = middle;
  }
  return beads_from(round, track, n, track.place_at_mm((low + high) / 2));
}

Seat seat_at(const TrackPlace& place) {
  const Point normal = -1 * quarter_turn(place.tangent);
  const double towards_viewer = normal.y_mm;
  Side side = Side::edge;
  if (towards_viewer >= square_on_from - same_direction) side = Side::front;
  if (towards_viewer <= -square_on_from + same_direction) side = Side::back;
  return {place.at, normal, side, std::min(std::abs(towards_viewer), 1.0)};
}

// The longest run of steps that lie on a side in even and odd columns alike, the first of equal ones.
std::optional<Window> longest_run(const std::vector<Seat>& seats, Side side) {
  const int edge = static_cast<int>(seats.size() / 2);
  Window best{side, 0, 0}, run = best;
  for (int step = 0; step < edge; ++step) {
    const auto even = static_cast<std::size_t>(2 * step);
    const bool wholly = seats[even].side == side && seats[even + 1].side == side;
    if (run.steps == 0) run.first_step = step;
    run.steps = wholly ? run.steps + 1 : 0;
    if (run.steps > best.steps) best = run;
  }
  return best.steps > 0 ? std::optional(best) : std::nullopt;
}

Faces with_windows(std::vector<Seat> seats) {
  Faces result{static_cast<int>(seats.size() / 2), std::move(seats), {}};
  for (const Side side : {Side::front, Side::back})
    if (const auto window = longest_run(result.seats, side)) result.windows.push_back(*window);
  return result;
}

}  // namespace

Position seam_place(const ConvexCurve& section) {
  const Box box = section.box();
  const Point size = box.high - box.low;
  const bool edged = size.x_mm >= edged_from * size.y_mm;
  return place_facing(section, edged ? Point{1, 0} : Point{0, -1});
}

Result<Faces> faces(const ConvexCurve& section, Length bead_diameter, int edge, Position seam) {
  if (!(std::isfinite(bead_diameter.mm()) && bead_diameter > Length{}))
    return Problem{ProblemCode::out_of_range, "diameter of the bead",
                   plain_number(bead_diameter.mm(), 3) + " mm", "above 0"};
  const ConvexCurve round = offset(section, bead_diameter / 2);
  const Track track(round);
  const auto even = beads_from(round, track, edge, track.place_at(seam));
  if (!even) return even.problem();
  const auto odd = odd_beads(round, track, *even);
  if (!odd) return odd.problem();
  std::vector<Seat> seats;
  for (std::size_t k = 0; k < even->size(); ++k) {
    seats.push_back(seat_at((*even)[k]));
    seats.push_back(seat_at((*odd)[k]));
  }
  return with_windows(std::move(seats));
}

Result<Faces> faces(const Form& form, Length bead_diameter, int edge) {
  const auto outline = section(form);
  if (!outline) return outline.problem();
  return faces(*outline, bead_diameter, edge, seam_place(*outline));
}

const Seat& seat_of(const Faces& faces, int column, int step) {
  assert(column >= 0 && step >= 0 && step < faces.edge);
  return faces.seats[static_cast<std::size_t>(2 * step + column % 2)];
}

int beads_on(const Faces& faces, Side side, int columns) {
  int beads = 0;
  for (int column = 0; column < columns; ++column)
    for (int step = 0; step < faces.edge; ++step) beads += seat_of(faces, column, step).side == side;
  return beads;
}

Faces slid_by(const Faces& faces, int k) {
  const int beads = ((k % faces.edge) + faces.edge) % faces.edge;
  std::vector<Seat> seats = faces.seats;
  std::rotate(seats.begin(), seats.begin() + 2 * beads, seats.end());
  return with_windows(std::move(seats));
}

int slide_to_front(const Faces& faces, const Window& window) {
  const auto facing = [&](int k) {
    double sum = 0;
    for (int h = 0; h < 2 * window.steps; ++h) {
      const int at = 2 * (window.first_step + k) + h, all = 2 * faces.edge;
      sum += faces.seats[static_cast<std::size_t>(((at % all) + all) % all)].normal.y_mm;
    }
    return sum;
  };
  int best = 0;
  double most = facing(0);
  constexpr double rounding = 1e-6;  // of a sum of cosines: mirrored slides are alike
  for (int distance = 1; 2 * distance <= faces.edge; ++distance) {
    for (const int k : {distance, -distance}) {
      const double here = facing(k);
      if (here > most + rounding) most = here, best = k;
    }
  }
  return best;
}

std::string_view side_name(Side side) {
  constexpr std::array<std::string_view, 3> names{"front", "edge", "back"};
  return names[static_cast<std::size_t>(side)];
}

}  // namespace evencount::form
