#pragma once
/// The date that documents carry.

#include <cstdint>
#include <optional>

#include "base/result.hpp"

namespace evencount::app {

/// Only when SOURCE_DATE_EPOCH asks for one, so that the same project gives the same bytes. Errors: bad_text.
[[nodiscard]] Result<std::optional<std::int64_t>> document_date();

}  // namespace evencount::app
