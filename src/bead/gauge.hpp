#pragma once
/// How far apart worked beads really lie.

#include <optional>
#include <string>
#include <string_view>

#include "base/units.hpp"
#include "bead/bead_size.hpp"
#include "bead/thread.hpp"

namespace evencount::bead {

/// Millimetres per column (across the band; along the holes where they run across it) and per bead along the edge. In
/// right-angle weave both are the size of one unit of four beads.
struct Gauge {
  Length column;
  Length edge;
  std::string source;  ///< a short phrase for people: "default for an 11/0 cylinder bead on 6 lb braided
                       ///< beading thread"
  /// Standard error of `edge` as a share of it, where it was measured. None for defaults: how far the designer's beads
  /// are from them is the bead's own `lot_shift`.
  std::optional<double> uncertainty = std::nullopt;
  bool operator==(const Gauge&) const = default;
};

/// The default gauge of peyote: the bead's own size plus what the thread holds open.
///
/// Cylinders, whose flat ends and sides meet squarely: column = length + 0.25 t, edge = diameter + 0.30 t.
/// Round beads nest: column = length, edge = diameter + 0.10 t.
/// For 11/0 cylinders on a 0.20 mm thread that is 1.35 x 1.66 mm, inside the published ranges
/// (1.30-1.41 a column, about 1.6-1.72 along the edge); for 11/0 round beads 17 to the inch along the hole
/// (1.494 mm). The shares of t are from memory.
[[nodiscard]] Gauge default_gauge(const Size& size, const Thread& thread);

/// The default gauge of square stitch. Beads stand exactly above and beside each other, so nothing nests: edge = diameter +
/// 0.30 t for every bead. Each bead is sewn to the one under it by loops over its two ends, so threads lie between
/// neighbouring columns: column = length + 0.50 t; the loops sink into the rounded ends of round beads: length + 0.25 t. From
/// memory. For 11/0 cylinders on a 0.20 mm thread 1.40 mm a column; a loom, whose warps lie there, gives 18 to the inch or
/// 1.41 mm (kingsmerecrafts.info/page82.html).
[[nodiscard]] Gauge square_gauge(const Size& size, const Thread& thread);

/// The default gauge of brick stitch, which lies as peyote turned a quarter: half a bead on from row to row, the holes across
/// the rows. Along a row (the edge) beads stand side by side as they do in peyote: edge as default_gauge. Every row stands on
/// the thread bridges of the row before: column = length + 0.50 t; between the rounded ends of round beads length + 0.25 t.
/// From memory.
[[nodiscard]] Gauge brick_gauge(const Size& size, const Thread& thread);

/// The default gauge of loom work. One warp thread lies between two columns: 18 to the inch or 1.41 mm a column for 11/0
/// cylinders (kingsmerecrafts.info/page82.html), which is length + 0.55 t on a 0.20 mm warp; between the rounded ends of round
/// beads it sinks in: length + 0.30 t, from memory. Rows stand exactly above each other, nothing nests: edge = diameter +
/// 0.30 t, from memory.
[[nodiscard]] Gauge loom_gauge(const Size& size, const Thread& thread);

/// The default gauge of flat herringbone, whose holes run along the piece: columns are as wide as a bead, rows as high as one is
/// long. Beads stand side by side and don't nest: column = diameter + 0.30 t. The two beads of a stitch lean together, by about
/// 15 degrees; end upon end, beads that lean so take length / cos(15 degrees) of a row. The thread between the two lies upon
/// flat ends, 0.25 t more, and sinks between rounded ones. From memory.
[[nodiscard]] Gauge herringbone_gauge(const Size& size, const Thread& thread);

/// The default gauge of right-angle weave: column = edge = the size of a unit, from the middle of one side to the middle of
/// the side across from it. That is a bead's length and what the diameter takes at the corners, where a side's end meets the
/// ends of the sides at right angles to it. If the rims were sharp that would be the whole diameter; rims rounded with radius
/// r let the beads come closer by (4 - 2 sqrt(2)) r, from circles that touch at 45 degrees. r is half the length for round
/// beads, whose ends are all rounded (for a ball: diameter x sqrt(2)), and a tenth of the diameter for cylinders, from memory;
/// the thread that turns at a corner holds it open by 0.10 t, from memory.
[[nodiscard]] Gauge right_angle_gauge(const Size& size, const Thread& thread);

/// A column or a bead along the edge of any gauge is no smaller and no larger.
inline constexpr Length smallest_pitch = millimetres(0.2), largest_pitch = millimetres(50);

/// A gauge as written after --gauge: COLUMNxEDGE in millimetres, "1.35x1.66".
/// Errors: bad_text; out_of_range (each must be from 0.2 to 50 mm).
[[nodiscard]] Result<Gauge> parse_gauge(std::string_view text);

/// How far off a length read from a ruler at two ends of beadwork may be, as a standard error: from memory.
inline constexpr Length reading_error = millimetres(0.25);

/// A measured swatch: so many columns over one length, so many beads along the edge over another. Its uncertainty is
/// reading_error over the length along the edge.
/// Errors: out_of_range (counts from 1, pitches from 0.2 to 50 mm).
[[nodiscard]] Result<Gauge> gauge_from_swatch(int columns, Length across, int edge, Length along);

/// A swatch in words: "12 columns = 16.1 mm, 20 along the edge = 33.4 mm", the two in any order, units as parse_length
/// reads them. What gauge_from_swatch gives as `source` reads back, "swatch:" and all.
/// Errors: bad_text, and those of gauge_from_swatch.
[[nodiscard]] Result<Gauge> parse_swatch(std::string_view text);

/// "1.35x1.66".
[[nodiscard]] std::string to_notation(const Gauge& gauge);

/// A gauge kept for later: whose hand, on which thread, with which bead.
struct NamedGauge {
  std::string hand;    ///< the designer's own word for who stitched, or how: "tight hand"
  std::string thread;  ///< Thread::id
  std::string bead;    ///< Size::id
  Gauge gauge;
  bool operator==(const NamedGauge&) const = default;
};

}  // namespace evencount::bead
