#pragma once
/// The command line: arguments to verbs.

#include <string>
#include <vector>

#include "app/console.hpp"

namespace evencount::app {

/// Runs `evencount ARGUMENTS…` and returns the exit status: 0 done, 1 the work has findings, 2 bad usage or bad input,
/// 3 a file or system failure.
int run_command_line(const std::vector<std::string>& arguments, const Console& console);

}  // namespace evencount::app
