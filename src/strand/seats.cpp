#include "strand/seats.hpp"

#include <algorithm>
#include <numbers>

#include "strand/chain_round.hpp"
#include "strand/resting.hpp"

namespace evencount::strand {
namespace {

using std::numbers::pi;

const Element& element_at(const Strung& strung, int index) {
  return strung.elements[static_cast<std::size_t>(index)];
}

/// Everything from end to end, the closing as one or as its halves.
template <typename Change>
void for_every_seat(Seats& seats, Change change) {
  for (Seat& seat : seats.pieces) change(seat);
  for (Seat& seat : seats.closing) change(seat);
}

/// The pieces' seats, and after them the closing's.
Seats told_apart(std::vector<Seat> all, const Strung& strung) {
  Seats seats{.loop = true};
  if (strung.closing >= 0) {
    seats.closing = {all.back()};
    all.pop_back();
  }
  seats.pieces = std::move(all);
  return seats;
}

/// Along `way` in the plane z = 0, its outside at right angles to it; the face leans from there towards +z.
Seat leaning(Place3 middle, Place3 way, double length_mm, double lean) {
  const Place3 outside{way.y, -way.x, 0};
  const double angle = lean * pi / 180;
  return {middle, way, std::sin(angle) * outside + std::cos(angle) * Place3{0, 0, 1}, length_mm};
}

/// The middle of what is strung, as a point beyond which as much follows as went before.
Place3 middle_of(const std::vector<Seat>& seats) {
  double whole = 0, before = 0;
  for (const Seat& seat : seats) whole += seat.length_mm;
  for (const Seat& seat : seats) {
    if (before + seat.length_mm >= whole / 2) return seat.at(whole / 2 - before - seat.length_mm / 2, 0);
    before += seat.length_mm;
  }
  return {0, 1, 0};
}

void turn(Seats& seats, const auto& turned) {
  for_every_seat(seats, [&](Seat& seat) {
    seat = {turned(seat.middle), turned(seat.along), turned(seat.outwards), seat.length_mm};
  });
  if (seats.body)
    seats.body =
        Body{turned(seats.body->middle), turned(seats.body->half_width), turned(seats.body->half_depth)};
}

/// Turned about z so that the middle of what is strung comes to lie at +y.
void turn_to_front(Seats& seats) {
  const Place3 front = middle_of(seats.pieces);
  const double angle = pi / 2 - std::atan2(front.y, front.x), c = std::cos(angle), s = std::sin(angle);
  turn(seats, [&](Place3 v) { return Place3{c * v.x - s * v.y, s * v.x + c * v.y, v.z}; });
}

/// The body hangs in the loop by the place that is in front.
Place3 hung_from_front(double loose_width, double loose_depth, Place3 front) {
  const double far = std::max(std::hypot(front.x, front.y), 1e-9);
  return {loose_width * front.x / far, loose_depth * front.y / far, 0};
}

/// Of two cords on a ring the inner one is as long as what is strung: it is that one that lies on the circle.
void let_inner_cord_go_round(Seats& seats, const Strung& strung, const Counts& counts) {
  const auto apart = apart_in_loop(strung, pieces_of(strung, counts), piece_starts_um(strung, counts));
  if (apart.empty()) return;
  for (std::size_t i = 0; i < seats.pieces.size(); ++i)
    seats.pieces[i].middle = seats.pieces[i].at(0, -apart[i].mm() / 2);
  for (Seat& closing : seats.closing)  // between the ends that it holds
    closing.middle = closing.at(0, -(apart.front().mm() + apart.back().mm()) / 4);
}

double middle_mm(const Resting& thing) {
  return (thing.begin_mm + thing.end_mm) / 2;
}

/// Lifts every piece to where it rests; what lies slantwise between two heights leans with the cord.
void let_rest(Seats& seats, const Strung& strung, const std::vector<Piece>& pieces, Place3 up) {
  std::vector<Seat*> all;
  std::vector<Resting> things;
  double so_far = 0;
  const auto take = [&](Seat& seat, const Element& element) {
    const bool rigid = element.kind == ElementKind::form || element.kind == ElementKind::clasp;
    all.push_back(&seat);
    things.push_back({so_far, so_far + seat.length_mm, element.thickness.mm() / 2, rigid});
    so_far += seat.length_mm;
  };
  const bool opened = seats.closing.size() == 2;
  if (opened) take(seats.closing[1], element_at(strung, strung.closing));
  for (std::size_t i = 0; i < pieces.size(); ++i)
    take(seats.pieces[i], element_at(strung, pieces[i].element));
  if (!seats.closing.empty()) take(seats.closing[0], element_at(strung, strung.closing));
  const std::vector<double> heights = resting_heights(things, so_far, seats.loop);
  const std::size_t count = all.size();
  for (std::size_t i = 0; i < count; ++i) {
    Seat& seat = *all[i];
    seat.middle = seat.middle + heights[i] * up;
    if (things[i].rigid) continue;
    const bool from_last = i == 0 && seats.loop, to_first = i + 1 == count && seats.loop;
    const std::size_t before = i > 0 ? i - 1 : from_last ? count - 1 : i;
    const std::size_t after = i + 1 < count ? i + 1 : to_first ? 0 : i;
    const double way = middle_mm(things[after]) - middle_mm(things[before]) + (from_last + to_first) * so_far;
    const double rise = std::atan2(heights[after] - heights[before], way);
    const Place3 along = seat.along;
    seat.along = std::cos(rise) * along + std::sin(rise) * up;
    seat.outwards = std::cos(rise) * up - std::sin(rise) * along;
  }
}

}  // namespace

Seats seats_in_row(const Strung& strung, const Counts& counts) {
  const auto starts = piece_starts_um(strung, counts);
  const double half = static_cast<double>(starts.back()) / 2000;
  const auto between = [&](double from, double to) {
    return Seat{{half - (from + to) / 2, 0, 0}, {-1, 0, 0}, {0, 1, 0}, to - from};
  };
  Seats seats;
  for (std::size_t i = 0; i + 1 < starts.size(); ++i)
    seats.pieces.push_back(
        between(static_cast<double>(starts[i]) / 1000, static_cast<double>(starts[i + 1]) / 1000));
  if (strung.closing >= 0)
    seats.closing = {between(2 * half, 2 * half + element_at(strung, strung.closing).width.mm())};
  return seats;
}

Seats seats_in_ring(const Strung& strung, const StrandFit& fit, double lean) {
  const auto links = links_of(strung, fit.best.counts);
  const double length = fit.best.length.mm(), radius = length / (2 * pi);
  std::vector<Seat> all;
  double at = strung.closing < 0 ? 0 : links.back().mm() / 2;  // from the middle of the closing
  for (const Length link : links) {
    const double angle = 2 * pi * (at + link.mm() / 2) / length;
    at += link.mm();
    all.push_back(leaning({radius * std::cos(angle), radius * std::sin(angle), 0},
                          {-std::sin(angle), std::cos(angle), 0}, link.mm(), lean));
  }
  Seats seats = told_apart(std::move(all), strung);
  let_inner_cord_go_round(seats, strung, fit.best.counts);
  turn_to_front(seats);
  return seats;
}

Result<Seats> seats_on_body(const Strung& strung, const StrandFit& fit, double lean) {
  const auto links = links_of(strung, fit.best.counts);
  const auto chain = chain_round(links, fit.thickness, ratio_of(fit.wearer.worn));
  if (!chain) return chain.problem();
  std::vector<Seat> all;
  for (std::size_t i = 0; i < links.size(); ++i) {
    const form::Point from = chain->joints[i], to = chain->joints[(i + 1) % links.size()];
    const form::Point way = (1 / form::norm(to - from)) * (to - from);
    all.push_back(leaning({(from.x_mm + to.x_mm) / 2, (from.y_mm + to.y_mm) / 2, 0}, {way.x_mm, way.y_mm, 0},
                          links[i].mm(), lean));
  }
  Seats seats = told_apart(std::move(all), strung);
  const double share = std::min(1.0, fit.wearer.measure / chain->girth);  // the rest is ease
  const double half_width = share * chain->half_width.mm(), half_depth = share * chain->half_height.mm();
  seats.body = Body{hung_from_front(chain->half_width.mm() - half_width, chain->half_height.mm() - half_depth,
                                    middle_of(seats.pieces)),
                    {half_width, 0, 0},
                    {0, half_depth, 0}};
  turn_to_front(seats);
  return seats;
}

Seats seats_on_table(const Strung& strung, const StrandFit& fit) {
  const auto pieces = pieces_of(strung, fit.best.counts);
  if (fit.wearer.worn != Worn::wrist) {
    Seats seats = seats_in_ring(strung, fit, 0);
    let_rest(seats, strung, pieces, {0, 0, 1});
    return hung_up(std::move(seats));
  }
  Seats seats = seats_in_row(strung, fit.best.counts);
  if (strung.closing >= 0 && element_at(strung, strung.closing).kind == ElementKind::clasp) {
    Seat after = seats.closing.front(), before = after;
    const double half = after.length_mm / 2;
    after.length_mm = before.length_mm = half;
    after.middle.x += half / 2;  // the row runs along -x
    before.middle.x = -after.middle.x;
    seats.closing = {after, before};
  }
  let_rest(seats, strung, pieces, {0, 1, 0});
  return seats;
}

Seats hung_up(Seats seats) {
  turn(seats, [](Place3 v) { return Place3{v.x, v.z, -v.y}; });
  return seats;
}

}  // namespace evencount::strand
