#include "stockroom/palette.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "base/text.hpp"
#include "colour/rgb.hpp"

namespace evencount::stockroom {
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
  return NamedColour{rest.empty() ? colour::to_hex(*colour) : std::string(rest), *colour, 0};
}

}  // namespace

Result<std::vector<NamedColour>> parse_palette(std::string_view text) {
  std::vector<NamedColour> colours;
  const auto lines = split(text, '\n');
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const std::string_view line = trim(lines[i]);
    if (line.empty() || is_header(line)) continue;
    const auto wrong = [&](std::string found, std::string expected) {
      return Problem{ProblemCode::bad_text, fmt::format("line {}", i + 1), std::move(found),
                     std::move(expected)};
    };
    if (!is_utf8(line)) return wrong("bytes that are no UTF-8", "a name in UTF-8");
    if (const auto colour = colour_in(line)) {
      colours.push_back(*colour);
      colours.back().line = static_cast<int>(i) + 1;
    } else if (!line.starts_with('#')) {
      return wrong(quote(line), "#rrggbb NAME, or R G B NAME");
    }
  }
  if (colours.empty())
    return Problem{ProblemCode::missing_field, "", "no colours",
                   "a line for each colour, such as #22304f night"};
  return colours;
}

std::string write_palette(std::span<const NamedColour> colours, std::string_view title) {
  const auto one_line = [](std::string_view text) {
    std::string line(text);
    std::replace_if(
        line.begin(), line.end(), [](char c) { return c == '\n' || c == '\r' || c == '\t'; }, ' ');
    return line;
  };
  std::string text = fmt::format("GIMP Palette\nName: {}\n#\n", one_line(title));
  for (const NamedColour& named : colours)
    text += fmt::format("{:>3} {:>3} {:>3}\t{}\n", named.colour.red, named.colour.green, named.colour.blue,
                        one_line(named.name));
  return text;
}

}  // namespace evencount::stockroom
