#pragma once
/// When something happened. The room never looks at a clock: every change is told its time.

#include <chrono>
#include <string>
#include <string_view>

#include "base/result.hpp"

namespace evencount::stockroom {

using Time = std::chrono::sys_seconds;

/// "2024-03-01 10:05:00", in UTC.
[[nodiscard]] std::string time_text(Time time);

/// What time_text writes; the seconds, or the time of day (midnight), may be left out. UTC.
/// Property (tests/stockroom/time_test.cpp): parse_time(time_text(t)) == t for the years 1970 to 9999.
/// Errors: bad_text (not of this shape, a day that the month doesn't have), out_of_range (a year before 1970).
[[nodiscard]] Result<Time> parse_time(std::string_view text);

}  // namespace evencount::stockroom
