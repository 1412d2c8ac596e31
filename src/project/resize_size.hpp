#pragma once
/// The size of a band in other beads or round another form. Internal to the room.

#include "project/band_size.hpp"
#include "project/resize.hpp"

namespace evencount::project {

/// A band among the beads and forms of its project.
struct BandIn {
  const Project& project;
  const Band& band;
};

struct NewSize {
  int columns = 0, edge = 0;  ///< cells
  std::optional<form::Fit> fit;
};

/// `after` has the old band's chart still.
[[nodiscard]] Result<NewSize> new_size(const BandIn& before, const BandIn& after, const BandWish& wish,
                                       FlatKeeps flat);

[[nodiscard]] BandMeasure measure(const BandIn& in);

}  // namespace evencount::project
