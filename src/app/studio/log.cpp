#include "app/studio/log.hpp"

#include <fmt/ostream.h>

#include <algorithm>

#include "base/text.hpp"

namespace evencount::app::studio {
namespace {

/// Of the character that the text begins with; 0 for bytes that are none.
std::size_t character_length(std::string_view text) {
  const auto first = static_cast<unsigned char>(text[0]);
  const std::size_t length = first < 0x80 ? 1 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
  return length <= text.size() && is_utf8(text.substr(0, length)) ? length : 0;
}

/// C0, DEL and C1 (U+0080 to U+009F); what turns the direction of writing (U+202A to U+202E, U+2066 to U+2069).
bool is_control(std::string_view character) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(character[i]); };
  if (character.size() == 1) return byte(0) < 0x20 || byte(0) == 0x7F;
  if (character.size() == 2) return byte(0) == 0xC2 && byte(1) < 0xA0;
  if (character.size() != 3 || byte(0) != 0xE2) return false;
  return (byte(1) == 0x80 && byte(2) >= 0xAA && byte(2) <= 0xAE) || (byte(1) == 0x81 && byte(2) >= 0xA6 && byte(2) <= 0xA9);
}

}  // namespace

std::string without_controls(std::string_view text) {
  std::string safe;
  while (!text.empty()) {
    const std::size_t length = character_length(text);
    if (length == 0 || is_control(text.substr(0, length)))
      safe += '?';
    else
      safe += text.substr(0, length);
    text.remove_prefix(std::max<std::size_t>(1, length));
  }
  return safe;
}

void Log::line(std::string_view text) {
  const std::lock_guard lock(mutex_);
  fmt::print(out_, "evencount: {}\n", without_controls(text));
  out_.flush();
}

}  // namespace evencount::app::studio
