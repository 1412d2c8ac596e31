#include "page/along_markup.hpp"

#include <glib.h>

#include <cassert>
#include <memory>

#include "base/text.hpp"
#include "page/typesetter.hpp"

namespace evencount::page {
namespace {

struct Free {
  void operator()(void* memory) const { g_free(memory); }
};
using OwnedText = std::unique_ptr<gchar, Free>;
using Checksum = std::unique_ptr<GChecksum, decltype(&g_checksum_free)>;

const guchar* bytes_of(std::string_view text) {
  return reinterpret_cast<const guchar*>(text.data());
}

Checksum checksum_of(std::string_view bytes) {
  Checksum checksum(g_checksum_new(G_CHECKSUM_SHA256), &g_checksum_free);
  g_checksum_update(checksum.get(), bytes_of(bytes), static_cast<gssize>(bytes.size()));
  return checksum;
}

/// The length of a sign that turns the direction of writing at the beginning of the text; 0 for none.
std::size_t turning_sign(std::string_view text) {
  if (text.size() < 3 || text[0] != '\xE2') return 0;
  const auto second = static_cast<unsigned char>(text[1]), third = static_cast<unsigned char>(text[2]);
  const bool embeds = second == 0x80 && third >= 0xAA && third <= 0xAE;    // U+202A to U+202E
  const bool isolates = second == 0x81 && third >= 0xA6 && third <= 0xA9;  // U+2066 to U+2069
  return embeds || isolates ? 3 : 0;
}

}  // namespace

std::string shown_text(std::string_view text) {
  std::string sound(text);
  if (!is_utf8(sound))
    for (char& c : sound)
      if (static_cast<unsigned char>(c) >= 0x80) c = '?';
  std::string kept;
  for (std::string_view rest = sound; !rest.empty();) {
    if (const std::size_t skip = turning_sign(rest); skip > 0) {
      rest.remove_prefix(skip);
      continue;
    }
    kept += rest.front();
    rest.remove_prefix(1);
  }
  return one_line(kept);
}

std::string escaped(std::string_view text) {
  std::string result;
  result.reserve(text.size());
  for (const char c : text) switch (c) {
      case '&': result += "&amp;"; break;
      case '<': result += "&lt;"; break;
      case '>': result += "&gt;"; break;
      case '"': result += "&quot;"; break;
      case '\'': result += "&#39;"; break;
      default: result += c;
    }
  return result;
}

std::string shown(std::string_view text) {
  return escaped(shown_text(text));
}

std::string for_script(std::string_view json) {
  std::string result;
  result.reserve(json.size());
  for (const char c : json) switch (c) {
      case '<': result += "\\u003c"; break;
      case '>': result += "\\u003e"; break;
      case '&': result += "\\u0026"; break;
      default: result += c;
    }
  return result;
}

std::string sha256_hex(std::string_view bytes) {
  return g_checksum_get_string(checksum_of(bytes).get());
}

std::string base64(std::string_view bytes) {
  return OwnedText(g_base64_encode(bytes_of(bytes), bytes.size())).get();
}

std::string sha256_base64(std::string_view bytes) {
  const Checksum checksum = checksum_of(bytes);
  guint8 digest[32];
  gsize length = sizeof digest;
  g_checksum_get_digest(checksum.get(), digest, &length);
  assert(length == sizeof digest);
  return base64({reinterpret_cast<const char*>(digest), length});
}

std::string filled(std::string_view text, const std::function<std::string(std::string_view)>& value) {
  std::string result;
  while (true) {
    const std::size_t open = text.find("{{");
    result += text.substr(0, open);
    if (open == std::string_view::npos) return result;
    const std::size_t close = text.find("}}", open);
    assert(close != std::string_view::npos);
    result += value(text.substr(open + 2, close - open - 2));
    text.remove_prefix(close + 2);
  }
}

}  // namespace evencount::page
