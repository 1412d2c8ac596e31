#pragma once
/// A band whose chart got another size. Internal to the room.

#include "project/carry.hpp"
#include "project/project.hpp"

namespace evencount::project {

/// The band with this chart; flat peyote becomes even or odd count as its columns have it.
/// Errors: wrong_size (the technique can't make this size).
[[nodiscard]] Result<Band> with_size_of(Band band, chart::Chart chart);

/// The band in another size, its drawing carried over (carry.hpp). Sizes are cells of the chart.
/// Errors: those of with_size_of and carry.
[[nodiscard]] Result<Band> resized_to(const Band& band, int columns, int edge, const CarryOptions& options);

}  // namespace evencount::project
