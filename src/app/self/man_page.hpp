#pragma once
/// The manual page, in the macros of man(7) and in ASCII alone, other characters as \[uXXXX]: groff and mandoc read it in any locale.

#include <string>

#include "app/self/command_tree.hpp"

namespace evencount::app::self {

/// Section 1. Carries no date, so that the same program gives the same page.
[[nodiscard]] std::string man_page(const Command& program, const std::string& version);

}  // namespace evencount::app::self
