#pragma once
/// The hand that something is made for, as the command line names it.

#include <string_view>

#include "base/result.hpp"
#include "base/text.hpp"

namespace evencount::app {

/// Whether it is the left hand: "right" or "left". Errors: unknown_name.
[[nodiscard]] inline Result<bool> parse_left_handed(std::string_view hand) {
  if (hand == "right") return false;
  if (hand == "left") return true;
  return Problem{ProblemCode::unknown_name, "hand", quote(hand), "right or left"};
}

}  // namespace evencount::app
