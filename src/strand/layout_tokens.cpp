#include "strand/layout_tokens.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/text.hpp"
#include "strand/element.hpp"
#include "strand/layout.hpp"

namespace evencount::strand {
namespace {

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool in_word(char c) {
  return is_letter(c) || is_digit(c) || c == '-' || c == '_';
}
bool in_number(char c) {
  return is_letter(c) || is_digit(c) || c == '.' || c == '/';
}
bool is_blank(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

class Scanner {
 public:
  explicit Scanner(std::string_view text) : text_(text) {}

  Result<std::vector<Token>> scan() {
    std::vector<Token> tokens;
    for (skip(); at_ < text_.size(); skip()) {
      auto token = next();
      if (!token) return token.problem();
      tokens.push_back(std::move(*token));
    }
    tokens.push_back(begin(Token::Kind::end));
    return tokens;
  }

 private:
  [[nodiscard]] char here() const { return text_[at_]; }
  [[nodiscard]] Token begin(Token::Kind kind) const {
    return {kind, {}, line_, static_cast<int>(at_ - line_start_) + 1};
  }

  void skip() {
    while (at_ < text_.size() && (is_blank(here()) || here() == '#')) {
      if (here() == '#')
        while (at_ < text_.size() && here() != '\n') ++at_;
      else
        step();
    }
  }
  void step() {
    if (text_[at_++] != '\n') return;
    ++line_;
    line_start_ = at_;
  }

  template <typename Belongs>
  Token taken(Token::Kind kind, Belongs belongs) {
    Token token = begin(kind);
    while (at_ < text_.size() && belongs(here())) token.text += text_[at_++];
    return token;
  }

  Result<Token> next() {
    if (is_letter(here())) return taken(Token::Kind::word, in_word);
    if (is_digit(here()) || here() == '.') return taken(Token::Kind::number, in_number);
    if (here() == '"') return in_quotes_here();
    Token token = begin(Token::Kind::sign);
    token.text = here();
    if (std::string_view("(),").find(here()) == std::string_view::npos) {
      std::size_t end = at_ + 1;  // of the whole character
      while (end < text_.size() && (static_cast<unsigned char>(text_[end]) & 0xC0) == 0x80) ++end;
      return Problem{ProblemCode::bad_text, place_of(token), quote(text_.substr(at_, end - at_)),
                     "a name, a size, a bracket or a comma"};
    }
    ++at_;
    return token;
  }

  Result<Token> in_quotes_here() {
    Token token = begin(Token::Kind::quoted);
    for (++at_; at_ < text_.size(); ++at_) {
      const char c = here();
      if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) break;
      if (c == '"' && (at_ + 1 == text_.size() || text_[at_ + 1] != '"')) {
        ++at_;
        return token;
      }
      if (c == '"') ++at_;
      token.text += c;
    }
    return Problem{ProblemCode::bad_text, place_of(token), "an opening quote",
                   "a closing one on the same line"};
  }

  std::string_view text_;
  std::size_t at_ = 0, line_start_ = 0;
  int line_ = 1;
};

}  // namespace

std::string place_of(const Token& token) {
  return fmt::format("line {}, column {}", token.line, token.column);
}

std::string shown(const Token& token) {
  return token.kind == Token::Kind::end ? "the end" : quote(token.text);
}

Result<std::vector<Token>> tokens_of(std::string_view text) {
  if (text.size() > longest_layout_text)
    return Problem{ProblemCode::bad_text, "", fmt::format("{} bytes", text.size()),
                   fmt::format("at most {}", longest_layout_text)};
  if (!is_utf8(text)) return Problem{ProblemCode::bad_text, "", "bytes that are not UTF-8", "UTF-8"};
  return Scanner(text).scan();
}

bool is_reserved(std::string_view word) {
  constexpr std::array<std::string_view, 23> words{"cords",  "of",     "close",   "with",  "on",    "hand",
                                                   "string", "fill",   "from",    "to",    "about", "both",
                                                   "across", "thick",  "hole",    "holes", "apart", "nests",
                                                   "chain",  "mirror", "between", "each",  "extra"};
  return find_kind(word) || std::find(words.begin(), words.end(), word) != words.end();
}

std::string in_quotes(std::string_view text) {
  std::string quoted = "\"";
  for (const char c : text) quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
  return quoted + "\"";
}

std::string written_name(std::string_view name) {
  const bool bare =
      !name.empty() && is_letter(name.front()) && std::all_of(name.begin(), name.end(), in_word);
  return bare && !is_reserved(name) ? std::string(name) : in_quotes(name);
}

}  // namespace evencount::strand
