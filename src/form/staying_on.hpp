#pragma once
/// What keeps a band on its form: stop beads for one that slides, a fastening for one that doesn't.
///
/// A sliding band leaves its form along the holes. Next to each end of the form a stop bead is strung on
/// every cord, and the band must not pass over them. A zipped band is limp round its holes and straight along
/// them, like a roll-top: three sizes of stop bead follow, each more than the one before. The model, and why
/// a perimeter decides: docs/algorithms/staying_on.md.
///
/// Properties (tests/form/staying_on_test.cpp):
///  (1) catches <= holds_straight <= holds_bent
///  (2) holds_straight and holds_bent grow with the margin, the band's length and its gauge
///  (3) one hole, margin 0: holds_bent == loosest pitch / sin(pi / edge) - loosest diameter (circle)
///  (4) form, holes, band and margin all k times as large: stops k times as large, within 1e-5 relative
///  (5) hull_perimeter is that of the polygon round both circles (slow oracle), within 1e-6 relative
///  (6) margin 0: the loosest band has no ring on the outline of two stops 0.1 mm above holds_bent, and has one
///      0.1 mm below; the same of holds_straight on the outline of form and stops, within 0.02 mm
///  (7) a circular form with one hole: catches is its diameter

#include <span>
#include <string>
#include <vector>

#include "bead/gauge.hpp"
#include "form/fit.hpp"

namespace evencount::form {

/// The holes of a form for cords, all alike, in the middle of its thickness: one in the middle of its width,
/// or two side by side.
struct Holes {
  int count = 1;
  Length spacing;  ///< between the middles of two; 0 for one
  Length diameter;
  bool operator==(const Holes&) const = default;
};

/// Where a carrier bead has its two holes, as a share of its width between them, from memory.
inline constexpr double usual_spacing_share = 0.4;
/// A hole that the published cord of 2 mm ("Carrier bead mania",
/// zinio.com/ch-de/explore/beadbutton/june-2018-i388547/carrier-bead-mania-a9620) passes with `cord_ease` to
/// spare.
inline constexpr Length usual_hole = millimetres(2.25);
/// A cord goes in without a needle when it is a tenth thinner than its room, from memory.
inline constexpr double cord_ease = 0.9;
/// How much longer the way round the stops must be than the loosest band reaches. From memory: the edge
/// column of a band flares by a few tenths of a millimetre.
inline constexpr Length usual_stop_margin = millimetres(0.5);

/// The form's holes as it gives them; else the usual ones: two for a carrier bead (lens), one in the middle
/// for others. Errors: those of check; out_of_range (a form that is not strung: a finger, a wrist, a bangle).
[[nodiscard]] Result<Holes> holes_of(const Form& form);

/// A zipped band that slides.
struct SlidingBand {
  bead::Size bead;
  bead::Gauge gauge;
  int edge = 0;     ///< beads along the edge
  int columns = 0;  ///< across
};

/// The band at its loosest: beads of a large lot (two standard deviations of the ring's mean bead), pulled by
/// what thread gives without a grip (`sliding_limits.closes`).
struct LoosestBand {
  Length pitch;     ///< along the edge
  Length diameter;  ///< of its beads
};
[[nodiscard]] LoosestBand at_its_loosest(const SlidingBand& band);

/// Diameters of the stop bead at each hole.
struct StopBead {
  Length catches;  ///< above: it sticks out of the form's outline. A smaller one the band doesn't touch
  Length holds_straight;  ///< from here the band can't pass while a part of it on the form keeps it straight
  Length holds_bent;      ///< from here it can't pass over the stops alone either, whatever its shape
  Length smallest;        ///< that keeps this band on
  bool operator==(const StopBead&) const = default;
};

/// `smallest` is holds_straight for a band at least as wide as that (half of it or more is on the form when
/// its edge meets the middle of the stop), else holds_bent. One bead strung on both cords together is a stop
/// for one hole: count 1. Errors: those of section; out_of_range (holes other than one or two or outside the
/// section, a spacing below 0, a bead or gauge not above zero, columns below 1, a margin below 0);
/// too_few_beads (an edge below 3).
[[nodiscard]] Result<StopBead> smallest_stop_bead(const Form& form, const Holes& holes,
                                                  const SlidingBand& band, Length margin = usual_stop_margin);

/// Have two stop beads of that diameter room next to each other? One always has.
[[nodiscard]] bool side_by_side(const Holes& holes, Length stop_diameter);

/// What a stop bead does.
enum class Holding { runs_over, catches, while_straight, cannot_pass };
[[nodiscard]] Holding holding(const StopBead& stop, Length diameter);
/// "runs_over", "catches", …: for JSON.
[[nodiscard]] std::string_view holding_name(Holding holding);
/// "the band runs over it": for people.
[[nodiscard]] std::string_view holding_text(Holding holding);

/// The perimeter of the convex hull of a stop bead's circle at each hole: 2 x spacing + pi x diameter.
[[nodiscard]] Length hull_perimeter(const Holes& holes, Length stop_diameter);

/// The inner perimeter of the band at its loosest, drawn round the stops at those holes: the hull that it
/// just passes. None: it doesn't even go round the holes' middles.
[[nodiscard]] std::optional<Length> band_opening(const Holes& holes, const SlidingBand& band);

/// The standard beads that a band can't pass even when they are small for their size (two standard
/// deviations), and that go on a cord. May be empty.
[[nodiscard]] std::vector<bead::Size> stops_that_suffice(const StopBead& stop, Length cord);

/// The thickest cord that goes so many times through a hole: the densest packing of equal circles in a
/// circle, times `cord_ease`. Errors: out_of_range (passes from 1 to 7; a hole not above zero).
[[nodiscard]] Result<Length> widest_cord(Length hole, int passes = 1);

/// How a band that doesn't slide is kept in place.
enum class Fastening { none, stitch_through_hole, stitch_over_end, glue };

/// Does a fixed band with that verdict need one? easy: yes; tight and snug stay by themselves; a band that
/// doesn't close or stay can't be helped by one: no.
[[nodiscard]] constexpr bool needs_fastening(Verdict verdict) {
  return verdict == Verdict::easy;
}

struct WayToFix {
  Fastening fastening = Fastening::none;
  std::string words;  ///< for people
  bool operator==(const WayToFix&) const = default;
};

/// The ways that are open, the ones that can be undone first; glue is always the last. A stitch goes through
/// the hole when two threads have room beside the cord. `band_width` is cut to the form's length. Errors:
/// those of section; out_of_range (a width, cord or thread below 0).
[[nodiscard]] Result<std::vector<WayToFix>> ways_to_fix(const Form& form, const Holes& holes,
                                                        Length band_width, Length cord, Length thread);

/// The part of the form's surface under a band, in square millimetres: perimeter x width.
[[nodiscard]] double covered_square_mm(const ConvexCurve& section, Length band_width);

/// "none", "stitch_through_hole", …: for JSON.
[[nodiscard]] std::string_view fastening_name(Fastening fastening);

}  // namespace evencount::form
