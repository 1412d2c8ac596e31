#pragma once
/// A bead's colour measured in a photograph: what it is asked by, and how it is answered.

#include "app/json_text.hpp"
#include "picture/bead_colour.hpp"

namespace evencount::app {

/// "white", "grey", or how much the card sends back, 0.02 to 1. Errors: bad_text.
[[nodiscard]] Result<double> reflectance_argument(const std::string& card);

[[nodiscard]] Json measured_json(const picture::BeadColour& measured);

}  // namespace evencount::app
