#pragma once
/// A line of text cut into the few kinds of token that a word chart is made of. Any bytes will do: what is
/// not understood, broken UTF-8 too, becomes one token of kind `other`.

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace evencount::wording::reader {

enum class TokenKind : std::uint8_t {
  number,  ///< decimal digits
  word,    ///< letters: ASCII with the accented ones of Latin, or Japanese ones
  open,    ///< (
  close,   ///< )
  comma,   ///< a comma or a semicolon
  colon,
  period,
  dash,       ///< hyphen, en dash, em dash, minus
  ampersand,  ///< & or +
  times,      ///< ×
  left_arrow,
  right_arrow,
  star,  ///< *
  box,   ///< a tick box, a bullet or another ornament
  other,
};

struct Token {
  TokenKind kind = TokenKind::other;
  std::string_view text;  ///< within the line
  int value = 0;          ///< of a number; stops at `largest_value`
  int column = 0;         ///< where it stands, in characters from the line's beginning
  int gap = 0;            ///< blanks before it; `wide_gap` and more at the beginning of a line
};

inline constexpr int largest_value = 1'000'000'000;

/// So many blanks part the columns of a page from each other; words are parted by one.
inline constexpr int wide_gap = 2;

[[nodiscard]] std::vector<Token> tokens_of(std::string_view line);

/// Whether there is a token at `i`, and of this kind.
[[nodiscard]] inline bool is(const std::vector<Token>& tokens, std::size_t i, TokenKind kind) {
  return i < tokens.size() && tokens[i].kind == kind;
}

/// A tick box, a bullet, or a star, which may be meant as one.
[[nodiscard]] inline bool is_ornament(const std::vector<Token>& tokens, std::size_t i) {
  return is(tokens, i, TokenKind::box) || is(tokens, i, TokenKind::star);
}

/// Whether the token at `i` is this word, given in lower case, in any case (of the ASCII letters).
[[nodiscard]] bool is_word(const std::vector<Token>& tokens, std::size_t i, std::string_view lower_case);

/// The text itself when it is well-formed UTF-8; else with '?' for every byte beyond ASCII. Whatever the reader
/// hands on of a text goes through this, so that it can be shown and saved.
[[nodiscard]] std::string valid_text(std::string_view text);

}  // namespace evencount::wording::reader
