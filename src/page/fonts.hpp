#pragma once
/// What the fonts of a booklet can show.

#include "base/result.hpp"
#include "proof/proof.hpp"

namespace evencount::page {

/// For proof::Beside. It holds fonts of its own and may be called from one thread at a time. Errors: missing_font.
[[nodiscard]] Result<proof::FirstUnshown> first_unshown();

}  // namespace evencount::page
