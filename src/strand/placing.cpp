#include "strand/placing.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "strand/chain_round.hpp"

namespace evencount::strand {
namespace {

constexpr double pi = std::numbers::pi;

Place3 operator+(Place3 a, Place3 b) {
  return {a.x + b.x, a.y + b.y, a.z + b.z};
}
Place3 operator*(double k, Place3 a) {
  return {k * a.x, k * a.y, k * a.z};
}
Place3 cross(Place3 a, Place3 b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}

/// Where a piece lies: it is so long along the cord.
struct Seat {
  Place3 middle, along, outwards;
  double length = 0;
  /// `by` along the cord, `inner` towards the inner one.
  [[nodiscard]] Place3 at(double by, double inner) const {
    return middle + by * along + inner * cross(outwards, along);
  }
};

const Element& element_of(const Strung& strung, const Piece& piece) {
  return strung.elements[static_cast<std::size_t>(piece.element)];
}

/// Things and cords from where the pieces lie; the closing, where there is one, is the last seat.
class Placer {
 public:
  Placer(const Strung& strung, std::vector<Piece> pieces, std::vector<Seat> seats, std::vector<double> apart)
      : strung_(strung), pieces_(std::move(pieces)), seats_(std::move(seats)), apart_(std::move(apart)) {}

  PlacedStrand place(const TwoCords& curve) {
    for (std::size_t i = 0; i < pieces_.size(); ++i) place_piece(i, in_filled_gap(i, curve));
    for (const OuterExtra& extra : curve.extras) fill_gap(extra);
    if (seats_.size() > pieces_.size()) {
      const Seat& seat = seats_.back();
      placed_.things.push_back(
          {strung_.closing, 0, seat.middle, seat.along, seat.outwards, millimetres(seat.length)});
    }
    lay_cord(1);
    if (strung_.cords == 2) lay_cord(2);
    return std::move(placed_);
  }

 private:
  [[nodiscard]] bool two_holes(std::size_t i) const { return element_of(strung_, pieces_[i]).holes == 2; }
  [[nodiscard]] bool one_on_each(std::size_t i) const { return beads_of(strung_, pieces_[i]) == 2; }
  [[nodiscard]] std::pair<std::size_t, std::size_t> gap_of(const OuterExtra& extra) const {
    const auto first = static_cast<std::size_t>(extra.after + 1);
    std::size_t end = first;
    while (end < pieces_.size() && !two_holes(end)) ++end;
    return {first, end};
  }
  [[nodiscard]] bool in_filled_gap(std::size_t i, const TwoCords& curve) const {
    return std::any_of(curve.extras.begin(), curve.extras.end(), [&](const OuterExtra& extra) {
      const auto [first, end] = gap_of(extra);
      return first <= i && i < end;
    });
  }

  void add(int element, int cord, Place3 middle, const Seat& seat, double length) {
    placed_.things.push_back({element, cord, middle, seat.along, seat.outwards, millimetres(length)});
  }
  void place_piece(std::size_t i, bool outer_later) {
    const Seat& seat = seats_[i];
    const int element = pieces_[i].element;
    if (!one_on_each(i)) return add(element, 0, seat.middle, seat, seat.length);
    add(element, 1, seat.at(0, apart_[i] / 2), seat, seat.length);
    if (!outer_later) add(element, 2, seat.at(0, -apart_[i] / 2), seat, seat.length);
  }

  /// The beads of the outer cord in a gap that takes more of them, evenly along it.
  void fill_gap(const OuterExtra& extra) {
    const auto [first, end] = gap_of(extra);
    if (first == end) return;
    std::vector<std::pair<int, double>> beads;
    for (std::size_t i = first; i < end; ++i)
      if (one_on_each(i)) beads.emplace_back(pieces_[i].element, seats_[i].length);
    const std::pair more{extra.element, strung_.elements[static_cast<std::size_t>(extra.element)].width.mm()};
    beads.insert(beads.begin() + static_cast<std::ptrdiff_t>(beads.size() / 2),
                 static_cast<std::size_t>(extra.count), more);
    std::vector<double> until{0};  // along the outer cord, after each piece of the gap
    for (std::size_t i = first; i < end; ++i) until.push_back(until.back() + outer_length(i));
    double wide = 0;
    for (const auto& [element, width] : beads) wide += width;
    const double space = (until.back() - wide) / static_cast<double>(beads.size());
    double at = 0;
    for (const auto& [element, width] : beads) {
      const double here = at + (width + space) / 2;
      at += width + space;
      const auto over = std::upper_bound(until.begin() + 1, until.end() - 1, here);
      const auto part = static_cast<std::size_t>(over - until.begin() - 1);
      const std::size_t i = first + part;
      const double share = (here - until[part]) / std::max(until[part + 1] - until[part], 1e-9);
      add(element, 2, share * end_of(i, -1) + (1 - share) * begin_of(i, -1), seats_[i], width);
    }
  }
  [[nodiscard]] double outer_length(std::size_t i) const {
    const Place3 way = end_of(i, -1) + -1.0 * begin_of(i, -1);
    return std::sqrt(way.x * way.x + way.y * way.y + way.z * way.z);
  }

  /// Where a cord enters and leaves a piece: half way to where it leaves the one before.
  [[nodiscard]] double side_between(std::size_t i, std::size_t other) const {
    const bool goes_on = other < pieces_.size() && pieces_[other].cords == 2;
    return (goes_on ? (apart_[i] + apart_[other]) / 2 : apart_[i]) / 2;
  }
  [[nodiscard]] Place3 begin_of(std::size_t i, double side) const {
    return seats_[i].at(-seats_[i].length / 2, side * side_between(i, i == 0 ? pieces_.size() : i - 1));
  }
  [[nodiscard]] Place3 end_of(std::size_t i, double side) const {
    return seats_[i].at(seats_[i].length / 2, side * side_between(i, i + 1));
  }
  void lay_cord(int cord) {
    std::vector<Place3> line;
    const auto finish = [&] {
      if (line.size() > 1) placed_.cords.push_back(line);
      line.clear();
    };
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
      const bool alone = pieces_[i].cords == 1;
      if (alone && cord == 2) {
        finish();
        continue;
      }
      const double side = alone ? 0 : cord == 1 ? 1 : -1;
      const Place3 begin = begin_of(i, side), end = end_of(i, side);
      if (line.empty())
        line.push_back(begin);
      else
        line.back() = 0.5 * (line.back() + begin);  // pieces of a bent strand meet at an angle
      line.push_back(end);
    }
    finish();
  }

  const Strung& strung_;
  std::vector<Piece> pieces_;
  std::vector<Seat> seats_;
  std::vector<double> apart_;
  PlacedStrand placed_;
};

std::vector<double> in_mm(const std::vector<Length>& lengths) {
  std::vector<double> all;
  for (const Length length : lengths) all.push_back(length.mm());
  return all;
}

/// Along `way` in the plane z = 0, its outside at right angles to it; the face leans from there towards +z.
Seat leaning(Place3 middle, Place3 way, double length, double lean) {
  const Place3 outside{way.y, -way.x, 0};
  const double angle = lean * pi / 180;
  return {middle, way, std::sin(angle) * outside + std::cos(angle) * Place3{0, 0, 1}, length};
}

/// Turned about z so that `front` comes to lie at +y.
void turn_to_front(std::vector<Seat>& seats, Place3 front) {
  const double angle = pi / 2 - std::atan2(front.y, front.x), c = std::cos(angle), s = std::sin(angle);
  for (Seat& seat : seats)
    for (Place3* vector : {&seat.middle, &seat.along, &seat.outwards})
      *vector = {c * vector->x - s * vector->y, s * vector->x + c * vector->y, vector->z};
}

/// The loop's plane turned to the viewer, what was in front below.
void hang_up(std::vector<Seat>& seats) {
  for (Seat& seat : seats)
    for (Place3* vector : {&seat.middle, &seat.along, &seat.outwards})
      *vector = {vector->x, vector->z, -vector->y};
}

Result<std::vector<Seat>> on_body(const Strung& strung, const StrandFit& fit, double lean) {
  const auto links = links_of(strung, fit.best.counts);
  const auto chain = chain_round(links, fit.thickness, ratio_of(fit.wearer.worn));
  if (!chain) return chain.problem();
  std::vector<Seat> seats;
  for (std::size_t i = 0; i < links.size(); ++i) {
    const form::Point from = chain->joints[i], to = chain->joints[(i + 1) % links.size()];
    const form::Point way = (1 / form::norm(to - from)) * (to - from);
    seats.push_back(leaning({(from.x_mm + to.x_mm) / 2, (from.y_mm + to.y_mm) / 2, 0},
                            {way.x_mm, way.y_mm, 0}, links[i].mm(), lean));
  }
  return seats;
}

std::vector<Seat> in_ring(const Strung& strung, const StrandFit& fit, double lean) {
  const auto links = links_of(strung, fit.best.counts);
  const double length = fit.best.length.mm(), radius = length / (2 * pi);
  std::vector<Seat> seats;
  double at = strung.closing < 0 ? 0 : links.back().mm() / 2;  // from the middle of the closing
  for (const Length link : links) {
    const double angle = 2 * pi * (at + link.mm() / 2) / length;
    at += link.mm();
    seats.push_back(leaning({radius * std::cos(angle), radius * std::sin(angle), 0},
                            {-std::sin(angle), std::cos(angle), 0}, link.mm(), lean));
  }
  return seats;
}

/// The middle of what is strung, as a point beyond which as much follows as went before.
Place3 middle_of(const std::vector<Seat>& seats, std::size_t count) {
  double whole = 0, half = 0;
  for (std::size_t i = 0; i < count; ++i) whole += seats[i].length;
  for (std::size_t i = 0; i < count; ++i) {
    if (half + seats[i].length >= whole / 2) return seats[i].at(whole / 2 - half - seats[i].length / 2, 0);
    half += seats[i].length;
  }
  return {0, 1, 0};
}

}  // namespace

Length apart_at(const Strung& strung, const std::vector<Piece>& pieces, std::size_t at) {
  if (pieces[at].cords == 1) return {};
  for (std::size_t off = 0; off < pieces.size(); ++off)
    for (const std::size_t i : {at - std::min(at, off), std::min(at + off, pieces.size() - 1)})
      if (const Element& element = element_of(strung, pieces[i]); element.holes == 2) return element.apart;
  return element_of(strung, pieces[at]).across;
}

std::vector<Length> apart_in_loop(const Strung& strung, const std::vector<Piece>& pieces,
                                  const std::vector<std::int64_t>& starts) {
  std::vector<Length> apart;
  for (std::size_t i = 0; i < pieces.size(); ++i) apart.push_back(apart_at(strung, pieces, i));
  const bool comes_together =
      strung.closing >= 0 && strung.elements[static_cast<std::size_t>(strung.closing)].holes == 1;
  const auto holds = [&](const Piece& piece) {
    return piece.cords == 2 && element_of(strung, piece).holes == 2;
  };
  const auto first = std::find_if(pieces.begin(), pieces.end(), holds) - pieces.begin();
  const auto last = pieces.rend() - std::find_if(pieces.rbegin(), pieces.rend(), holds);  // one beyond it
  if (!comes_together || last == 0) return apart;
  const auto middle = [&](std::size_t i) { return static_cast<double>(starts[i] + starts[i + 1]) / 2; };
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const auto at = static_cast<std::ptrdiff_t>(i);
    double share = 1;
    if (at < first) share = middle(i) / static_cast<double>(starts[static_cast<std::size_t>(first)]);
    const double end = static_cast<double>(starts.back()),
                 from = static_cast<double>(starts[static_cast<std::size_t>(last)]);
    if (at >= last) share = (end - middle(i)) / (end - from);
    if (share < 1) apart[i] = std::max(share * apart[i], element_of(strung, pieces[i]).across);
  }
  return apart;
}

PlacedStrand placed_flat(const Strung& strung, const StrandFit& fit, const TwoCords& curve) {
  auto pieces = pieces_of(strung, fit.best.counts);
  const auto starts = piece_starts_um(strung, fit.best.counts);
  const auto apart = in_mm(apart_in_loop(strung, pieces, starts));
  const double half = static_cast<double>(starts.back()) / 2000;
  std::vector<Seat> seats;
  const auto put = [&](double from, double to) {
    seats.push_back({{half - (from + to) / 2, 0, 0}, {-1, 0, 0}, {0, 1, 0}, to - from});
  };
  for (std::size_t i = 0; i < pieces.size(); ++i)
    put(static_cast<double>(starts[i]) / 1000, static_cast<double>(starts[i + 1]) / 1000);
  if (strung.closing >= 0)
    put(2 * half, 2 * half + strung.elements[static_cast<std::size_t>(strung.closing)].width.mm());
  return Placer(strung, std::move(pieces), std::move(seats), apart).place(curve);
}

Result<PlacedStrand> placed_worn(const Strung& strung, const StrandFit& fit, const TwoCords& curve,
                                 double lean) {
  auto pieces = pieces_of(strung, fit.best.counts);
  const auto starts = piece_starts_um(strung, fit.best.counts);
  const auto apart = in_mm(apart_in_loop(strung, pieces, starts));
  std::vector<Seat> seats;
  if (fit.wearer.worn == Worn::length) {
    seats = in_ring(strung, fit, lean);
  } else {
    auto round = on_body(strung, fit, lean);
    if (!round) return round.problem();
    seats = std::move(*round);
  }
  turn_to_front(seats, middle_of(seats, pieces.size()));
  if (fit.wearer.worn != Worn::wrist) hang_up(seats);
  return Placer(strung, std::move(pieces), std::move(seats), apart).place(curve);
}

}  // namespace evencount::strand
