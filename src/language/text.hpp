#pragma once
/// The name of a printed text, for whoever passes it on without knowing them all.

#include <string_view>


namespace evencount::language {

struct Texts;  ///< texts.hpp

/// As a table may keep it.
using Text = std::string_view Texts::*;

}  // namespace evencount::language
