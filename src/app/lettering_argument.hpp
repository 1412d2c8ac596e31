#pragma once
/// How text is asked for on the command line.

#include <string>

#include "picture/lettering.hpp"

namespace evencount::app {

/// Alphabet "five" or "three", running "across", "down" or "up". Errors: bad_usage.
[[nodiscard]] Result<picture::LetteringStyle> lettering_style(const std::string& alphabet,
                                                              const std::string& running);

/// A backslash and an n become a line feed.
[[nodiscard]] std::string with_line_breaks(std::string text);

}  // namespace evencount::app
