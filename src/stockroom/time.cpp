#include "stockroom/time.hpp"

#include <fmt/chrono.h>

#include <ctime>
#include <iomanip>
#include <locale>
#include <sstream>

#include "base/text.hpp"

namespace evencount::stockroom {

std::string time_text(Time time) {
  return fmt::format("{:%Y-%m-%d %H:%M:%S}", fmt::gmtime(time.time_since_epoch().count()));
}

Result<Time> parse_time(std::string_view text) {
  constexpr int first_year = 1900;  // of std::tm
  for (const char* shape : {"%Y-%m-%d %H:%M:%S", "%Y-%m-%d %H:%M", "%Y-%m-%d"}) {
    std::istringstream stream{std::string(text)};
    stream.imbue(std::locale::classic());
    std::tm parts{};
    stream >> std::get_time(&parts, shape);
    if (!stream || stream.peek() != std::istringstream::traits_type::eof()) continue;
    const std::chrono::year_month_day day{std::chrono::year{parts.tm_year + first_year},
                                          std::chrono::month{static_cast<unsigned>(parts.tm_mon + 1)},
                                          std::chrono::day{static_cast<unsigned>(parts.tm_mday)}};
    if (!day.ok()) break;
    if (day.year() < std::chrono::year{1970})
      return Problem{ProblemCode::out_of_range, "", quote(text), "a time from 1970 on"};
    return Time{std::chrono::sys_days{day} + std::chrono::hours{parts.tm_hour} +
                std::chrono::minutes{parts.tm_min} + std::chrono::seconds{parts.tm_sec}};
  }
  return Problem{ProblemCode::bad_text, "", quote(text),
                 "a time such as 2024-03-01 or '2024-03-01 10:05' (UTC)"};
}

}  // namespace evencount::stockroom
