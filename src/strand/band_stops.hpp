#pragma once
/// What keeps one sliding band on its form, on one side. Internal to the room.

#include <optional>
#include <string>
#include <vector>

#include "strand/strung.hpp"

namespace evencount::strand {

/// The three sizes of stop bead for a band: one bead on each cord, and one on both together where its form has
/// two holes.
struct StopSizes {
  form::StopBead each;
  std::optional<form::StopBead> both;
};
/// Errors: those of form::smallest_stop_bead.
[[nodiscard]] Result<StopSizes> stop_sizes(const Element& held);

struct BandStop {
  bool holds = false;
  // Where it doesn't:
  Length needed;         ///< the smallest stop bead next to the form: on each cord, or on both together
  bool on_both = false;  ///< two of them have no room side by side
  std::optional<Length> catches;  ///< the largest thing it is only caught by
  std::string catches_name;
  std::optional<Length> closer_gap;  ///< a neighbour would hold it if it stood as near as that
  std::string neighbour_name;
};

/// Of the band on pieces[of], towards the first piece (-1) or the last (1). The closing lies beyond both.
[[nodiscard]] BandStop band_stop(const Strung& strung, const std::vector<Piece>& pieces, int of,
                                 int direction, const StopSizes& sizes);

}  // namespace evencount::strand
