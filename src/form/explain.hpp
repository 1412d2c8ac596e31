#pragma once
/// Why a band fits or doesn't, in plain sentences that a customer can be sent.

#include <string>

#include "form/fit.hpp"

namespace evencount::form {

/// Four short paragraphs: the way round, the beads along the edge, the columns, and the other lengths that come near.
/// Every figure in them stands in the fit or follows from its form, bead and gauge.
/// Errors: those of section.
[[nodiscard]] Result<std::string> explain(const Fit& fit, const bead::Size& bead);

}  // namespace evencount::form
