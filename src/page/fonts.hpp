#pragma once
/// What the fonts of a booklet can show.

#include <span>
#include <vector>

#include "base/result.hpp"
#include "proof/proof.hpp"

namespace evencount::page {

/// For proof::Beside. It holds fonts of its own and may be called from one thread at a time. Errors: missing_font.
[[nodiscard]] Result<proof::FirstUnshown> first_unshown();

/// The proof of a project that is to be printed. On a machine without the fonts it is made all the same, with a warning that no characters were
/// looked for.
[[nodiscard]] std::vector<proof::Finding> proof_for_print(const project::Project& project, std::span<const materials::StockedItem> stock = {});

}  // namespace evencount::page
