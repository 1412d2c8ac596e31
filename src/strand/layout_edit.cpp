#include "strand/layout_edit.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"
#include "strand/layout_tokens.hpp"

namespace evencount::strand {
namespace {

/// A line of a list that goes on in the next one: as long as is read at a glance, from memory.
constexpr std::size_t longest_line = 90;

/// Where tokens stand in a text.
class Places {
 public:
  explicit Places(std::string_view text) : text_(text) {
    for (std::size_t i = 0; i < text.size(); ++i)
      if (text[i] == '\n') lines_.push_back(i + 1);
  }
  [[nodiscard]] std::size_t begin_of(const Token& token) const {
    return lines_[static_cast<std::size_t>(token.line - 1)] + static_cast<std::size_t>(token.column - 1);
  }
  [[nodiscard]] std::size_t end_of(const Token& token) const {
    std::size_t at = begin_of(token);
    if (token.kind == Token::Kind::quoted) return at + in_quotes(token.text).size();
    while (at < text_.size() && std::string_view(" \t\r\n#,()\"").find(text_[at]) == std::string_view::npos)
      ++at;
    return at;
  }

 private:
  std::string_view text_;
  std::vector<std::size_t> lines_{0};
};

/// Words of the language that begin a statement are quoted anywhere else.
std::vector<Token>::const_iterator find_word(const std::vector<Token>& tokens, std::string_view word) {
  return std::find_if(tokens.begin(), tokens.end(), [&](const Token& token) {
    return token.kind == Token::Kind::word && token.text == word;
  });
}

Result<std::size_t> list_begin(std::string_view text, const std::vector<Token>& tokens) {
  const auto found = find_word(tokens, "string");
  if (found == tokens.end())
    return Problem{ProblemCode::bad_text, place_of(tokens.back()), shown(tokens.back()), quote("string")};
  return Places(text).begin_of(*found);
}

/// The statement that begins with a word and has so many tokens, replaced; put before the list where there is none.
Result<std::string> with_replaced(std::string_view text, std::string_view word, std::ptrdiff_t count,
                                  const std::string& statement) {
  const auto tokens = tokens_of(text);
  if (!tokens) return tokens.problem();
  const auto found = find_word(*tokens, word);
  if (found == tokens->end()) return statement.empty() ? std::string(text) : with_statement(text, statement);
  if (tokens->end() - found <= count)
    return Problem{ProblemCode::bad_text, place_of(*found), "a statement cut off", "all of it"};
  const Places places(text);
  const std::size_t begin = places.begin_of(*found), end = places.end_of(*(found + count - 1));
  std::string after(text.substr(end));
  if (statement.empty() && after.starts_with('\n')) after.erase(0, 1);
  return std::string(text.substr(0, begin)) + statement + after;
}

std::string list_text(const std::vector<Item>& items) {
  std::string text = "string ";
  std::size_t line = text.size();
  for (std::size_t i = 0; i < items.size(); ++i) {
    const std::string item = to_text(items[i]) + (i + 1 < items.size() ? "," : "");
    if (i > 0 && line + item.size() > longest_line) {
      text += "\n  ";
      line = 2;
    } else if (i > 0) {
      text += " ";
      ++line;
    }
    text += item;
    line += item.size();
  }
  return text;
}

bool any_names(const std::vector<Item>& items, std::string_view name) {
  return std::any_of(items.begin(), items.end(), [&](const Item& item) { return names(item, name); });
}

/// The names in the list and in what refers to it, by their tokens: those that the layout's own parts are not.
std::vector<Token> references(const std::vector<Token>& tokens, std::string_view name) {
  std::vector<Token> found;
  bool in_list = false;
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    const Token& token = tokens[i];
    const bool word = token.kind == Token::Kind::word;
    if (word && token.text == "string") in_list = true;
    if ((!word && token.kind != Token::Kind::quoted) || token.text != name || (word && is_reserved(name)))
      continue;
    const auto before = [&](std::string_view text) {
      return i > 0 && tokens[i - 1].kind == Token::Kind::word && tokens[i - 1].text == text;
    };
    const bool names_a_run = before("fill") || before("between");
    if (in_list ? !names_a_run : before("with") || before("hand")) found.push_back(token);
  }
  return found;
}

}  // namespace

Result<std::string> with_items(std::string_view text, const std::vector<Item>& items) {
  const auto tokens = tokens_of(text);
  if (!tokens) return tokens.problem();
  const auto begin = list_begin(text, *tokens);
  if (!begin) return begin.problem();
  return std::string(text.substr(0, *begin)) + list_text(items);
}

Result<std::string> with_statement(std::string_view text, std::string_view statement) {
  const auto tokens = tokens_of(text);
  if (!tokens) return tokens.problem();
  const auto begin = list_begin(text, *tokens);
  if (!begin) return begin.problem();
  return std::string(text.substr(0, *begin)) + std::string(statement) + "\n" +
         std::string(text.substr(*begin));
}

Result<std::string> with_closing(std::string_view text, std::string_view name) {
  return with_replaced(text, "close", 3, name.empty() ? "" : "close with " + written_name(name));
}

Result<std::string> with_cords(std::string_view text, int cords, const Cord& cord) {
  return with_replaced(text, "cords", 5,
                       fmt::format("cords {} of {} {}mm", cords, cord_kind_name(cord.kind),
                                   plain_number(cord.diameter.mm(), 4)));
}

Result<std::string> with_name(std::string_view text, std::span<const Element> catalogue,
                              std::string_view from, std::string_view to) {
  const auto layout = parse_layout(text, catalogue);
  if (!layout) return layout.problem();
  const auto own = [&](const Element& part) { return part.id == from; };
  if (std::any_of(layout->parts.begin(), layout->parts.end(), own)) return std::string(text);
  const auto tokens = tokens_of(text);
  if (!tokens) return tokens.problem();
  const Places places(text);
  std::string changed;
  std::size_t at = 0;
  for (const Token& token : references(*tokens, from)) {
    changed += text.substr(at, places.begin_of(token) - at);
    changed += written_name(to);
    at = places.end_of(token);
  }
  return changed + std::string(text.substr(at));
}

bool names(const Item& item, std::string_view name) {
  return (item.kind == Item::Kind::single && item.name == name) || any_names(item.items, name) ||
         any_names(item.unit, name) || any_names(item.about, name);
}

std::vector<Item> without(const std::vector<Item>& items, std::string_view name) {
  std::vector<Item> left;
  for (const Item& item : items) {
    Item one = item;
    one.items = without(item.items, name), one.unit = without(item.unit, name),
    one.about = without(item.about, name);
    const bool gone = (item.kind == Item::Kind::single && item.name == name) ||
                      (one.items.empty() && !item.items.empty()) || (one.unit.empty() && !item.unit.empty());
    // Without the unit of a run between things the things are still there, and without its halves a mirror's middle.
    if (gone && item.kind == Item::Kind::between && !one.items.empty())
      left.insert(left.end(), one.items.begin(), one.items.end());
    else if (gone && item.kind == Item::Kind::mirror)
      left.insert(left.end(), one.about.begin(), one.about.end());
    else if (!gone)
      left.push_back(std::move(one));
  }
  return left;
}

}  // namespace evencount::strand
