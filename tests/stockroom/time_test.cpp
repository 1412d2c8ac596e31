#include "stockroom/time.hpp"

#include <gtest/gtest.h>

#include <random>

namespace evencount::stockroom {
namespace {

TEST(StockTime, ComesBack) {
  std::mt19937 random(7);
  std::uniform_int_distribution<std::int64_t> any(0, 253'402'300'799);  // the end of 9999
  for (int i = 0; i < 2000; ++i) {
    const Time time{std::chrono::seconds{any(random)}};
    const auto parsed = parse_time(time_text(time));
    ASSERT_TRUE(parsed) << time_text(time);
    EXPECT_EQ(*parsed, time) << time_text(time);
  }
}

TEST(StockTime, MayBeWrittenShort) {
  using namespace std::chrono_literals;
  constexpr Time day = std::chrono::sys_days{std::chrono::year{2024} / 2 / 29};
  EXPECT_EQ(*parse_time("2024-02-29"), day);
  EXPECT_EQ(*parse_time("2024-02-29 10:05"), day + 10h + 5min);
  EXPECT_EQ(*parse_time("2024-02-29 23:59:58"), day + 23h + 59min + 58s);
  for (const char* wrong :
       {"", "2023-02-29", "2024-13-01", "yesterday", "2024-02-29 25:00", "29.2.2024", "2024-02-29 10:05 pm"})
    EXPECT_EQ(parse_time(wrong).problem().code, ProblemCode::bad_text) << wrong;
  EXPECT_EQ(parse_time("1969-12-31").problem().code, ProblemCode::out_of_range);
}

}  // namespace
}  // namespace evencount::stockroom
