#pragma once
/// A form as it is named on the command line.

#include <string>

#include "form/outline.hpp"

namespace evencount::app {

/// Any notation of parse_form, where `outline:FILE.csv,length=9` reads the points from the file.
/// Errors: those of parse_form, parse_outline_csv, form_from_outline and read_file.
[[nodiscard]] Result<form::Form> form_argument(const std::string& notation,
                                               form::Dents dents = form::Dents::refuse);

}  // namespace evencount::app
