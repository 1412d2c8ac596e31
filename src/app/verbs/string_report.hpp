#pragma once
/// What `string` says: a strand in its sizes.

#include <string>

#include "app/console.hpp"
#include "app/json_text.hpp"
#include "app/verbs.hpp"
#include "project/strung_sizes.hpp"

namespace evencount::app {

/// The wearers that are asked for: a named size, a measure, or all sizes; of the arguments only these are looked at.
/// Errors: bad_text, unknown_name.
[[nodiscard]] Result<std::vector<strand::Wearer>> wearers_asked(const project::SavedStrand& saved,
                                                                const StringArguments& arguments);

/// `string --json`.
[[nodiscard]] Json string_json(const std::string& title, const project::StrungSizes& sizes);
void print_string(const std::string& title, const project::StrungSizes& sizes, bool json, const Console& console);

}  // namespace evencount::app
