#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>

namespace evencount {

std::optional<std::int64_t> parse_integer(std::string_view text) {
  std::int64_t value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return value;
}

std::optional<double> parse_number(std::string_view text) {
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(value)) return std::nullopt;
  return value;
}

std::string fixed_number(double value, int decimals) {
  std::string text = fmt::format("{:.{}f}", value, decimals);
  if (text.find_first_not_of("-0.") == std::string::npos && text.front() == '-') text.erase(0, 1);
  return text;
}

std::string plain_number(double value, int decimals) {
  std::string text = fixed_number(value, decimals);
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

std::string_view trim(std::string_view text) {
  constexpr std::string_view blanks = " \t\r\n\f\v";
  const auto first = text.find_first_not_of(blanks);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

std::vector<std::string_view> split(std::string_view text, char separator) {
  std::vector<std::string_view> parts;
  std::size_t start = 0;
  for (std::size_t i = 0; i <= text.size(); ++i) {
    if (i == text.size() || text[i] == separator) {
      parts.push_back(text.substr(start, i - start));
      start = i + 1;
    }
  }
  return parts;
}

std::string lower_ascii(std::string_view text) {
  std::string lower(text);
  for (char& c : lower)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return lower;
}

std::string upper_ascii(std::string_view text) {
  std::string upper(text);
  for (char& c : upper)
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  return upper;
}

namespace {

/// How many bytes the well-formed character at the beginning of a text has; 0 where there is none.
std::size_t character_length(std::string_view text) {
  if (text.empty()) return 0;
  const auto lead = static_cast<unsigned char>(text[0]);
  const int following = lead < 0x80                   ? 0
                        : lead >= 0xC2 && lead < 0xE0 ? 1
                        : (lead & 0xF0) == 0xE0       ? 2
                        : lead >= 0xF0 && lead < 0xF5 ? 3
                                                      : -1;
  if (following < 0 || static_cast<std::size_t>(following) >= text.size()) return 0;
  std::uint32_t code = following == 0 ? lead : lead & (0x3F >> following);
  for (int k = 1; k <= following; ++k) {
    const auto byte = static_cast<unsigned char>(text[k]);
    if ((byte & 0xC0) != 0x80) return 0;
    code = code << 6 | (byte & 0x3F);
  }
  constexpr std::uint32_t least[] = {0, 0x80, 0x800, 0x10000};
  if (code < least[following] || code > 0x10FFFF || (code >= 0xD800 && code <= 0xDFFF)) return 0;
  return following + 1;
}

}  // namespace

std::string quote(std::string_view text) {
  constexpr std::size_t longest = 40;
  const bool cut = text.size() > longest;
  if (cut) {
    std::size_t end = longest - 1;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
    text = text.substr(0, end);
  }
  std::string safe = "'";
  while (!text.empty()) {
    const std::size_t length = character_length(text);
    const bool shown = length > 0 && static_cast<unsigned char>(text[0]) >= 0x20 && text[0] != 0x7F;
    shown ? safe += text.substr(0, length) : safe += '?';
    text.remove_prefix(std::max<std::size_t>(1, length));
  }
  return safe + (cut ? "…'" : "'");
}

std::string code_point_name(std::string_view text) {
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U; };
  const unsigned first = byte(0);
  const unsigned following = first < 0x80 ? 0 : first < 0xE0 ? 1 : first < 0xF0 ? 2 : 3;
  unsigned code = following == 0 ? first : first & (0x3FU >> following);
  for (std::size_t i = 1; i <= following; ++i) code = code << 6 | (byte(i) & 0x3FU);
  return fmt::format("U+{:04X}", code);
}

bool is_utf8(std::string_view text) {
  while (!text.empty()) {
    const std::size_t length = character_length(text);
    if (length == 0) return false;
    text.remove_prefix(length);
  }
  return true;
}

}  // namespace evencount
