#pragma once
/// Scripts with which a shell completes verbs, options and the names of files.

#include <string>

#include "app/self/command_tree.hpp"

namespace evencount::app::self {

/// For bash 4 or newer, with or without the package bash-completion.
[[nodiscard]] std::string bash_completion(const Command& program);

/// For zsh: a file `_evencount` of its functions' path.
[[nodiscard]] std::string zsh_completion(const Command& program);

/// For fish 3 or newer.
[[nodiscard]] std::string fish_completion(const Command& program);

}  // namespace evencount::app::self
