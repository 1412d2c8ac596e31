#include "strand/band_stops.hpp"

#include <algorithm>
#include <numbers>

namespace evencount::strand {
namespace {

class Side {
 public:
  Side(const Element& held, const StopSizes& sizes)
      : held_(held), sizes_(sizes), band_width_(held.carrier->band_width()) {}

  /// Looks at what lies `gap` from the form. True: it holds.
  [[nodiscard]] bool holds(const Element& element, const Piece& piece, Length gap, BandStop& stop) const {
    if (element.kind == ElementKind::form) return neighbour_holds(element, gap, stop);
    if (element.holes == 2)
      return gap <= band_width_ / 2 && too_large(stadium(element.across, element.thickness));
    const bool on_both = held_.holes == 2 && piece.cords == 2 && piece.both;
    if (held_.holes == 2 && piece.cords == 1)
      return false;  // a single cord between two is no stop for either
    const form::StopBead& asked = on_both ? *sizes_.both : sizes_.each;
    if (element.across > asked.catches && (!stop.catches || element.across > *stop.catches)) {
      stop.catches = element.across;
      stop.catches_name = element.name;
    }
    if (gap > band_width_ / 2) return false;
    const bool straight = gap + asked.holds_straight / 2 <= band_width_ / 2;
    return element.across >= asked.holds_bent || (straight && element.across >= asked.holds_straight);
  }

 private:
  static Length stadium(Length across, Length thick) {
    const Length flat = std::min(across, thick), wide = std::max(across, thick);
    return 2 * (wide - flat) + std::numbers::pi * flat;
  }
  /// Larger round than what the loosest band goes over.
  [[nodiscard]] bool too_large(Length round) const {
    const form::Holes holes{held_.holes, held_.apart, held_.hole};
    return round >= form::hull_perimeter(holes, sizes_.each.holds_bent);
  }
  [[nodiscard]] bool neighbour_holds(const Element& neighbour, Length gap, BandStop& stop) const {
    const auto section = form::section(neighbour.carrier->form);
    if (!section) return false;
    const bool in_band = neighbour.carrier->band.has_value();
    const Length round = section->perimeter() +
                         (in_band ? std::numbers::pi * neighbour.carrier->band->bead.diameter : Length{});
    if (!too_large(round)) return false;
    const Length bare =
        in_band ? std::max(Length{}, (neighbour.width - neighbour.carrier->band_width()) / 2) : Length{};
    const Length nearest = band_width_ / 2 - bare;
    if (gap <= nearest) return true;
    if (nearest >= Length{} && !stop.closer_gap) {
      stop.closer_gap = nearest;
      stop.neighbour_name = neighbour.name;
    }
    return false;
  }

  const Element& held_;
  const StopSizes& sizes_;
  Length band_width_;
};

}  // namespace

Result<StopSizes> stop_sizes(const Element& held) {
  const form::Holes holes{held.holes, held.apart, held.hole};
  const auto each = form::smallest_stop_bead(held.carrier->form, holes, *held.carrier->band);
  if (!each) return each.problem();
  if (held.holes == 1) return StopSizes{*each, std::nullopt};
  const auto both =
      form::smallest_stop_bead(held.carrier->form, {1, Length{}, held.hole}, *held.carrier->band);
  if (!both) return both.problem();
  return StopSizes{*each, *both};
}

BandStop band_stop(const Strung& strung, const std::vector<Piece>& pieces, int of, int direction,
                   const StopSizes& sizes) {
  const auto element_of = [&](const Piece& piece) -> const Element& {
    return strung.elements[static_cast<std::size_t>(piece.element)];
  };
  const Element& held = element_of(pieces[static_cast<std::size_t>(of)]);
  const Side side(held, sizes);
  BandStop stop;
  Length gap;
  const Length furthest = 3 * held.carrier->band_width();  // no neighbour is looked for beyond
  int i = of + direction;
  const auto within = [&] { return i >= 0 && i < static_cast<int>(pieces.size()); };
  for (; within() && gap <= furthest; i += direction) {
    const Piece& piece = pieces[static_cast<std::size_t>(i)];
    const Element& element = element_of(piece);
    stop.holds = side.holds(element, piece, gap, stop);
    if (stop.holds) return stop;
    if (element.kind == ElementKind::form) break;  // nothing beyond a form reaches past it
    gap = gap + element.width;
  }
  if (!within() && strung.closing >= 0) {
    const Element& closing = strung.elements[static_cast<std::size_t>(strung.closing)];
    stop.holds = closing.holes == 2 && side.holds(closing, {strung.closing, strung.cords, false}, gap, stop);
  }
  stop.on_both = held.holes == 2 && sizes.each.smallest > held.apart;
  stop.needed = stop.on_both ? sizes.both->smallest : sizes.each.smallest;
  return stop;
}

}  // namespace evencount::strand
