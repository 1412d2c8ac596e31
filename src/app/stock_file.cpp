#include "app/stock_file.hpp"

#include <fmt/format.h>

#include <optional>

#include "base/text.hpp"
#include "colour/rgb.hpp"

namespace evencount::app {
namespace {

/// The first word of a line, which is cut off it.
std::string_view take_word(std::string_view& line) {
  line = trim(line);
  const std::string_view word = line.substr(0, line.find_first_of(" \t,;"));
  line.remove_prefix(word.size());
  while (!line.empty() && (line.front() == ',' || line.front() == ';')) line.remove_prefix(1);
  line = trim(line);
  return word;
}

std::optional<std::uint8_t> channel(std::string_view word) {
  if (word.empty() || word.size() > 3) return std::nullopt;
  int value = 0;
  for (const char digit : word) {
    if (digit < '0' || digit > '9') return std::nullopt;
    value = 10 * value + (digit - '0');
  }
  if (value > 255) return std::nullopt;
  return static_cast<std::uint8_t>(value);
}

bool is_header(std::string_view line) {
  return line.starts_with("GIMP Palette") || line.starts_with("Name:") || line.starts_with("Columns:");
}

std::optional<NamedColour> colour_in(std::string_view line) {
  std::string_view rest = line;
  const std::string_view first = take_word(rest);
  std::optional<colour::Rgb> colour;
  if (first.starts_with('#')) {
    if (const auto hex = colour::parse_hex(first)) colour = *hex;
  } else {
    const auto red = channel(first), green = channel(take_word(rest)), blue = channel(take_word(rest));
    if (red && green && blue) colour = colour::Rgb{*red, *green, *blue};
  }
  if (!colour) return std::nullopt;
  return NamedColour{rest.empty() ? colour::to_hex(*colour) : std::string(rest), *colour};
}

}  // namespace

Result<std::vector<NamedColour>> parse_stock(std::string_view text) {
  std::vector<NamedColour> stock;
  const auto lines = split(text, '\n');
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const std::string_view line = trim(lines[i]);
    if (line.empty() || is_header(line)) continue;
    if (!is_utf8(line))
      return Problem{ProblemCode::bad_text, fmt::format("line {}", i + 1), "bytes that are no UTF-8", "a name in UTF-8"};
    if (const auto colour = colour_in(line))
      stock.push_back(*colour);
    else if (!line.starts_with('#'))
      return Problem{ProblemCode::bad_text, fmt::format("line {}", i + 1), quoted(line), "#rrggbb NAME, or R G B NAME"};
  }
  if (stock.empty()) return Problem{ProblemCode::missing_field, "", "no colours", "a line for each colour, such as #22304f night"};
  return stock;
}

}  // namespace evencount::app
