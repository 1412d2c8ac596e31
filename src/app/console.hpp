#pragma once
/// Where a verb prints: results on one stream, messages on the other.

#include <ostream>
#include <string_view>

#include "base/result.hpp"

namespace evencount::app {

/// Exit statuses of the command line.
inline constexpr int exit_done = 0, exit_findings = 1, exit_bad_input = 2, exit_failure = 3;

struct Console {
  std::ostream& out;  ///< the result
  std::ostream& err;  ///< progress and messages

  /// Prints "evencount: MESSAGE" on err and returns the problem's exit status.
  int fail(const Problem& problem) const;
};

}  // namespace evencount::app
