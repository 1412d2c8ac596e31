#include "wording/reader_tokens.hpp"

#include <algorithm>
#include <iterator>

#include "base/text.hpp"

namespace evencount::wording::reader {
namespace {

struct Sign {
  std::string_view bytes;
  TokenKind kind;
};

// Longer signs first where one begins another.
constexpr Sign signs[] = {
    {"->", TokenKind::right_arrow},
    {"<-", TokenKind::left_arrow},
    {"(", TokenKind::open},
    {")", TokenKind::close},
    {",", TokenKind::comma},
    {";", TokenKind::comma},
    {":", TokenKind::colon},
    {".", TokenKind::period},
    {"-", TokenKind::dash},
    {"&", TokenKind::ampersand},
    {"+", TokenKind::ampersand},
    {"\u2010", TokenKind::dash},  // hyphen
    {"\u2011", TokenKind::dash},  // non-breaking hyphen
    {"\u2012", TokenKind::dash},  // figure dash
    {"\u2013", TokenKind::dash},  // en dash
    {"\u2014", TokenKind::dash},  // em dash
    {"\u2212", TokenKind::dash},  // minus
    {"\u00D7", TokenKind::times},
    {"\u2190", TokenKind::left_arrow},
    {"\u2192", TokenKind::right_arrow},
    {"\u27F5", TokenKind::left_arrow},
    {"\u27F6", TokenKind::right_arrow},
    {"|", TokenKind::box},
    {"*", TokenKind::star},
    {"_", TokenKind::box},
    {"\u2022", TokenKind::box},  // bullet
    {"\u00B7", TokenKind::box},  // middle dot
    {"\u3001", TokenKind::comma},  // the marks of Japanese: ideographic comma, fullwidth comma and so on
    {"\uFF0C", TokenKind::comma},
    {"\uFF1B", TokenKind::comma},
    {"\u3002", TokenKind::period},
    {"\uFF1A", TokenKind::colon},
    {"\uFF08", TokenKind::open},
    {"\uFF09", TokenKind::close},
    {"\uFF5E", TokenKind::dash},  // fullwidth tilde
    {"\u301C", TokenKind::dash},  // wave dash
    {"\uFFFD", TokenKind::box},  // replacement character: a glyph without a name
};

// Non-breaking, thin and other blanks that typesetting leaves, and the byte order mark.
constexpr std::string_view wide_blanks[] = {"\u00A0", "\u2002", "\u2003", "\u2007", "\u2009",
                                            "\u200A", "\u200B", "\u202F", "\u3000", "\uFEFF"};

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

std::size_t other_length(std::string_view text) {
  std::size_t length = 1;
  while (length < text.size() && (static_cast<unsigned char>(text[length]) & 0xC0) == 0x80) ++length;
  return length;
}

/// The accented letters of Latin-1 and Latin Extended-A: U+00C0 to U+017F but for × and ÷.
std::size_t accented_length(std::string_view text) {
  if (text.size() < 2) return 0;
  const auto lead = static_cast<unsigned char>(text[0]), next = static_cast<unsigned char>(text[1]);
  if ((next & 0xC0) != 0x80) return 0;
  const bool latin_1 = lead == 0xC3 && next != 0x97 && next != 0xB7;
  return latin_1 || lead == 0xC4 || lead == 0xC5 ? 2 : 0;
}

/// Kana and kanji: U+3041 to U+30FF but for the middle dot, U+4E00 to U+9FFF.
std::size_t japanese_length(std::string_view text) {
  if (text.size() < 3 || other_length(text) != 3) return 0;
  const auto at = [&](std::size_t i) { return static_cast<unsigned>(static_cast<unsigned char>(text[i])); };
  const unsigned code = (at(0) & 0x0F) << 12 | (at(1) & 0x3F) << 6 | (at(2) & 0x3F);
  const bool kana = code >= 0x3041 && code <= 0x30FF && code != 0x30FB;
  return (at(0) & 0xF0) == 0xE0 && (kana || (code >= 0x4E00 && code <= 0x9FFF)) ? 3 : 0;
}

/// Geometric shapes and dingbats (U+2580 to U+27BF) and private-use glyphs (U+E000 to U+F8FF).
std::size_t ornament_length(std::string_view text) {
  if (text.size() < 3) return 0;
  const auto lead = static_cast<unsigned char>(text[0]), next = static_cast<unsigned char>(text[1]);
  const bool shape = lead == 0xE2 && next >= 0x96 && next <= 0x9E;
  const bool private_use = lead == 0xEE || (lead == 0xEF && next >= 0x80 && next <= 0xA3);
  return shape || private_use ? 3 : 0;
}

bool is_ascii(char c) {
  return static_cast<unsigned char>(c) < 0x80;
}

std::size_t blank_length(std::string_view text) {
  if (is_ascii(text[0])) return std::string_view(" \t\r\f\v").find(text[0]) == std::string_view::npos ? 0 : 1;
  for (const std::string_view blank : wide_blanks)
    if (text.starts_with(blank)) return blank.size();
  return 0;
}

const Sign* sign_at(std::string_view text) {
  const auto* found = std::find_if(std::begin(signs), std::end(signs),
                                   [&](const Sign& s) { return text.starts_with(s.bytes); });
  return found == std::end(signs) ? nullptr : found;
}

/// How long the word is that `text` begins with.
std::size_t word_length(std::string_view text) {
  std::size_t length = 0;
  while (length < text.size()) {
    const std::size_t accented = accented_length(text.substr(length));
    if (accented == 0 && !is_letter(text[length])) break;
    length += accented == 0 ? 1 : accented;
  }
  if (length > 0) return length;
  while (const std::size_t japanese = japanese_length(text.substr(length))) length += japanese;
  return length;
}

/// The token at the beginning of `rest`, which is not blank; its place is filled in by the caller.
Token cut_token(std::string_view rest) {
  std::size_t length = 0;
  if (is_digit(rest[0])) {
    int value = 0;
    for (; length < rest.size() && is_digit(rest[length]); ++length)
      value = value >= largest_value / 10 ? largest_value : 10 * value + (rest[length] - '0');
    return {TokenKind::number, rest.substr(0, length), value, 0, 0};
  }
  if (const std::size_t letters = word_length(rest); letters > 0)
    return {TokenKind::word, rest.substr(0, letters), 0, 0, 0};
  if (const Sign* sign = sign_at(rest)) return {sign->kind, rest.substr(0, sign->bytes.size()), 0, 0, 0};
  if (const std::size_t ornament = ornament_length(rest); ornament > 0)
    return {TokenKind::box, rest.substr(0, ornament), 0, 0, 0};
  return {TokenKind::other, rest.substr(0, other_length(rest)), 0, 0, 0};
}

int characters_in(std::string_view text) {
  return static_cast<int>(std::count_if(
      text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

}  // namespace

std::vector<Token> tokens_of(std::string_view line) {
  constexpr int tab_width = 8;
  std::vector<Token> tokens;
  int column = 0;
  int gap = wide_gap;
  for (std::size_t i = 0; i < line.size();) {
    const std::string_view rest = line.substr(i);
    if (const std::size_t blank = blank_length(rest); blank > 0) {
      const int width = rest[0] == '\t' ? tab_width : 1;
      // A form feed before a page's first line shifts nothing.
      if (rest[0] != '\f') column += width;
      gap += width;
      i += blank;
      continue;
    }
    Token token = cut_token(rest);
    token.column = column;
    token.gap = gap;
    column += characters_in(token.text);
    gap = 0;
    i += token.text.size();
    tokens.push_back(token);
  }
  return tokens;
}

bool is_word(const std::vector<Token>& tokens, std::size_t i, std::string_view lower_case) {
  return is(tokens, i, TokenKind::word) && tokens[i].text.size() == lower_case.size() &&
         lower_ascii(tokens[i].text) == lower_case;
}

std::string valid_text(std::string_view text) {
  std::string valid(text);
  if (!is_utf8(text))
    std::replace_if(
        valid.begin(), valid.end(), [](char c) { return static_cast<unsigned char>(c) >= 0x80; }, '?');
  return valid;
}

}  // namespace evencount::wording::reader
