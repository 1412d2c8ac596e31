#include "strand/placing.hpp"

#include <algorithm>
#include <cmath>

#include "strand/seats.hpp"

namespace evencount::strand {
namespace {

const Element& element_of(const Strung& strung, const Piece& piece) {
  return strung.elements[static_cast<std::size_t>(piece.element)];
}

/// Things and cords from where the pieces lie.
class Placer {
 public:
  Placer(const Strung& strung, const Counts& counts, Seats seats)
      : strung_(strung), pieces_(pieces_of(strung, counts)), seats_(std::move(seats)) {
    for (const Length apart : apart_in_loop(strung, pieces_, piece_starts_um(strung, counts)))
      apart_.push_back(apart.mm());
  }

  PlacedStrand place(const TwoCords& curve) {
    for (std::size_t i = 0; i < pieces_.size(); ++i) place_piece(i, in_filled_gap(i, curve));
    for (const OuterExtra& extra : curve.extras) fill_gap(extra);
    for (std::size_t i = 0; i < seats_.closing.size(); ++i) {
      const Seat& seat = seats_.closing[i];
      add(strung_.closing, 0, seat.middle, seat, seat.length_mm);
      if (seats_.closing.size() == 2)
        placed_.things.back().half = i == 0 ? ClaspHalf::after : ClaspHalf::before;
    }
    lay_cord(1);
    if (strung_.cords == 2) lay_cord(2);
    placed_.body = seats_.body;
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
    const Seat& seat = seats_.pieces[i];
    const int element = pieces_[i].element;
    if (!one_on_each(i)) return add(element, 0, seat.middle, seat, seat.length_mm);
    add(element, 1, seat.at(0, apart_[i] / 2), seat, seat.length_mm);
    if (!outer_later) add(element, 2, seat.at(0, -apart_[i] / 2), seat, seat.length_mm);
  }

  /// The beads of the outer cord in a gap that takes more of them, evenly along it.
  void fill_gap(const OuterExtra& extra) {
    const auto [first, end] = gap_of(extra);
    if (first == end) return;
    std::vector<std::pair<int, double>> beads;
    for (std::size_t i = first; i < end; ++i)
      if (one_on_each(i)) beads.emplace_back(pieces_[i].element, seats_.pieces[i].length_mm);
    const std::pair more{extra.element, strung_.elements[static_cast<std::size_t>(extra.element)].width.mm()};
    beads.insert(beads.begin() + static_cast<std::ptrdiff_t>(beads.size() / 2),
                 static_cast<std::size_t>(extra.count), more);
    std::vector<Place3> mouths;  // what the outer cord goes through, piece by piece
    for (std::size_t i = first; i < end; ++i) mouths.insert(mouths.end(), {begin_of(i, -1), end_of(i, -1)});
    std::vector<double> until{0};  // along it
    for (std::size_t k = 1; k < mouths.size(); ++k)
      until.push_back(until.back() + norm(mouths[k] - mouths[k - 1]));
    double wide = 0;
    for (const auto& [element, width] : beads) wide += width;
    const double space = (until.back() - wide) / static_cast<double>(beads.size());
    double at = 0;
    for (const auto& [element, width] : beads) {
      const double here = at + (width + space) / 2;
      at += width + space;
      const auto over = std::upper_bound(until.begin() + 1, until.end() - 1, here);
      const auto k = static_cast<std::size_t>(over - until.begin() - 1);
      const double share = (here - until[k]) / std::max(until[k + 1] - until[k], 1e-9);
      add(element, 2, share * mouths[k + 1] + (1 - share) * mouths[k], seats_.pieces[first + k / 2], width);
    }
  }

  /// Where a cord enters and leaves a piece: half way to where it leaves the one before.
  [[nodiscard]] double side_between(std::size_t i, std::size_t other) const {
    const bool goes_on = other < pieces_.size() && pieces_[other].cords == 2;
    return (goes_on ? (apart_[i] + apart_[other]) / 2 : apart_[i]) / 2;
  }
  [[nodiscard]] Place3 begin_of(std::size_t i, double side) const {
    return seats_.pieces[i].at(-seats_.pieces[i].length_mm / 2,
                               side * side_between(i, i == 0 ? pieces_.size() : i - 1));
  }
  [[nodiscard]] Place3 end_of(std::size_t i, double side) const {
    return seats_.pieces[i].at(seats_.pieces[i].length_mm / 2, side * side_between(i, i + 1));
  }

  /// A place in the closing that a cord reaches: the loop or eye at one of its ends.
  [[nodiscard]] Place3 into_closing(const Seat& closing, int end, double side) const {
    constexpr double reach = 0.16;  // of its half length; from memory of eyes and loops
    const Element& element = strung_.elements[static_cast<std::size_t>(strung_.closing)];
    const double half = element.width.mm() / 2;
    return closing.at(end * (closing.length_mm / 2 - reach * half),
                      element.holes == 2 ? side * element.apart.mm() / 2 : 0);
  }
  void lay_cord(int cord) {
    std::vector<Place3> line;
    const double own_side = strung_.cords == 1 ? 0 : cord == 1 ? 1 : -1;
    const auto reaches = [&](std::size_t i) {
      return !pieces_.empty() && (cord == 1 || pieces_[i].cords == 2);
    };
    if (!seats_.closing.empty() && reaches(0) && (seats_.loop || seats_.closing.size() == 2))
      line.push_back(into_closing(seats_.closing.back(), 1, pieces_[0].cords == 1 ? 0 : own_side));
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
      const bool from_piece = i > 0 && !line.empty();
      if (from_piece)
        line.back() = 0.5 * (line.back() + begin);  // pieces of a bent strand meet at an angle
      else
        line.push_back(begin);
      line.push_back(end);
    }
    if (!line.empty() && reaches(pieces_.size() - 1)) {
      if (!seats_.closing.empty())
        line.push_back(into_closing(seats_.closing.front(), -1, pieces_.back().cords == 1 ? 0 : own_side));
      else if (seats_.loop && reaches(0) && line.size() == pieces_.size() + 1)
        line.front() = line.back() = 0.5 * (line.front() + line.back());  // knotted end to end
    }
    finish();
  }

  const Strung& strung_;
  std::vector<Piece> pieces_;
  Seats seats_;
  std::vector<double> apart_;
  PlacedStrand placed_;
};

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
  return Placer(strung, fit.best.counts, seats_in_row(strung, fit.best.counts)).place(curve);
}

Result<PlacedStrand> placed_worn(const Strung& strung, const StrandFit& fit, const TwoCords& curve,
                                 double lean) {
  Seats seats;
  if (fit.wearer.worn == Worn::length) {
    seats = seats_in_ring(strung, fit, lean);
  } else {
    auto round = seats_on_body(strung, fit, lean);
    if (!round) return round.problem();
    seats = std::move(*round);
  }
  if (fit.wearer.worn != Worn::wrist) seats = hung_up(std::move(seats));
  return Placer(strung, fit.best.counts, std::move(seats)).place(curve);
}

PlacedStrand placed_on_table(const Strung& strung, const StrandFit& fit, const TwoCords& curve) {
  return Placer(strung, fit.best.counts, seats_on_table(strung, fit)).place(curve);
}

}  // namespace evencount::strand
