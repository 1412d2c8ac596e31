#pragma once
/// How far apart worked beads really lie.

#include <string>
#include <string_view>

#include "base/units.hpp"
#include "bead/bead_size.hpp"
#include "bead/thread.hpp"

namespace evencount::bead {

/// Millimetres per column (across the band, along the holes) and per bead along the edge, for peyote.
struct Gauge {
  Length column;
  Length edge;
  std::string source;  ///< a short phrase for people: "default for an 11/0 cylinder bead on 6 lb braided
                       ///< beading thread"
  bool operator==(const Gauge&) const = default;
};

/// The default gauge: the bead's own size plus what the thread holds open.
///
/// Cylinders, whose flat ends and sides meet squarely: column = length + 0.25 t, edge = diameter + 0.30 t.
/// Round beads nest: column = length, edge = diameter + 0.10 t.
/// For 11/0 cylinders on a 0.20 mm thread that is 1.35 x 1.66 mm, inside the published ranges
/// (1.30-1.41 a column, about 1.6-1.72 along the edge); for 11/0 round beads 17 to the inch along the hole
/// (1.494 mm). The shares of t are from memory.
[[nodiscard]] Gauge default_gauge(const Size& size, const Thread& thread);

/// A gauge as written after --gauge: COLUMNxEDGE in millimetres, "1.35x1.66".
/// Errors: bad_text; out_of_range (each must be from 0.2 to 50 mm).
[[nodiscard]] Result<Gauge> parse_gauge(std::string_view text);

/// A measured swatch: so many columns over one length, so many beads along the edge over another.
/// Errors: out_of_range (counts from 1, pitches from 0.2 to 50 mm).
[[nodiscard]] Result<Gauge> gauge_from_swatch(int columns, Length across, int edge, Length along);

/// "1.35x1.66".
[[nodiscard]] std::string to_notation(const Gauge& gauge);

}  // namespace evencount::bead
