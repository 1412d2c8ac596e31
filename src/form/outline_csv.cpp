#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"
#include "form/outline.hpp"

namespace evencount::form {
namespace {

constexpr std::string_view line_pattern = "x,y in millimetres, such as 8.5,-0.25 or 8,5;-0,25";

// A number with a decimal point, or with a decimal comma where commas don't separate.
std::optional<double> read_number(std::string_view text, char separator) {
  std::string number(trim(text));
  if (separator != ',' && number.find('.') == std::string::npos &&
      std::count(number.begin(), number.end(), ',') == 1)
    number[number.find(',')] = '.';
  return parse_number(number);
}

char separator_of(std::string_view line) {
  for (const char separator : {';', '\t'})
    if (line.find(separator) != std::string_view::npos) return separator;
  return ',';
}

std::optional<Point> read_point(std::string_view line) {
  const char separator = separator_of(line);
  const auto cells = split(line, separator);
  if (cells.size() != 2) return std::nullopt;
  const auto x = read_number(cells[0], separator), y = read_number(cells[1], separator);
  if (!x || !y) return std::nullopt;
  return Point{*x, *y};
}

// Words, not numbers that went wrong: a heading holds no digit.
bool is_heading(std::string_view line) {
  return std::none_of(line.begin(), line.end(), [](char c) { return c >= '0' && c <= '9'; });
}

}  // namespace

Result<std::vector<Point>> parse_outline_csv(std::string_view text) {
  constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
  if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
  std::vector<Point> points;
  bool heading_allowed = true;
  int number = 0;
  for (const std::string_view raw : split(text, '\n')) {
    ++number;
    const std::string_view line = trim(raw.substr(0, raw.find('#')));
    if (line.empty()) continue;
    const auto point = read_point(line);
    if (!point && !(heading_allowed && is_heading(line)))
      return Problem{ProblemCode::bad_text, fmt::format("line {} of the outline", number), quote(line),
                     std::string(line_pattern)};
    heading_allowed = false;
    if (!point) continue;
    points.push_back(*point);
    if (points.size() > most_outline_points)
      return Problem{ProblemCode::out_of_range, fmt::format("line {} of the outline", number),
                     "one more point", fmt::format("at most {} points", most_outline_points)};
  }
  return points;
}

}  // namespace evencount::form
