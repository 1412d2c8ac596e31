#include "wording/reader_facts.hpp"

#include <algorithm>
#include <utility>

#include "base/text.hpp"
#include "wording/reader_vocabulary.hpp"

namespace evencount::wording::reader {
namespace {

using enum TokenKind;

constexpr int most_lines = 5;  // of the sentence, in a narrow column

/// Bytes in which a heading's colon stands: a blank, which may be a no-break space, and the colon.
constexpr std::size_t most_before_colon = 6;

/// Tokens of the longest technique's name, with room for the colon.
constexpr std::size_t most_name_tokens = 12;

struct Name {
  const RowRules* rules;
  std::vector<Token> tokens;
  bool unmistakable;  ///< "Loom work:" may stand anywhere in a booklet; a name with a comma can't
};

const std::vector<Name>& names() {
  static const std::vector<Name> all = [] {
    std::vector<Name> made;
    for (const Vocabulary* words : vocabularies())
      for (const TechniqueWords& technique : words->techniques) {
        const auto rules = find_rules(technique.id);
        if (!rules) continue;
        auto tokens = tokens_of(technique.name);
        const bool comma_inside =
            std::any_of(tokens.begin(), tokens.end(), [](const Token& t) { return t.kind == comma; });
        made.push_back({*rules, std::move(tokens), comma_inside});
      }
    return made;
  }();
  return all;
}

/// Dashes and commas are what they are however they are typed.
bool same(const Token& written, const Token& wanted) {
  if (written.kind != wanted.kind) return false;
  return (wanted.kind != word && wanted.kind != number) ||
         (written.text.size() == wanted.text.size() && lower_ascii(written.text) == wanted.text);
}

struct Beginning {
  const RowRules* rules;
  std::size_t next;  ///< the token after the colon
};

/// "Flat peyote, even count:" begins the sentence. A name that prose may hold too begins it only where a number follows.
std::optional<Beginning> sentence_at(const std::vector<Token>& tokens, std::size_t i) {
  if (!is(tokens, i, word)) return std::nullopt;
  for (const Name& name : names()) {
    const std::size_t end = i + name.tokens.size();
    if (!is(tokens, end, colon)) continue;
    if (!std::equal(name.tokens.begin(), name.tokens.end(), tokens.begin() + static_cast<std::ptrdiff_t>(i),
                    [](const Token& wanted, const Token& written) { return same(written, wanted); }))
      continue;
    if (name.unmistakable || end + 1 == tokens.size() || is(tokens, end + 1, number))
      return Beginning{name.rules, end + 1};
  }
  return std::nullopt;
}

/// Whether a line may begin with the rest of a name: its first colon stands after a name's last word.
bool may_end_a_name(const std::vector<Token>& tokens) {
  for (std::size_t i = 1; i < std::min(tokens.size(), most_name_tokens); ++i)
    if (is(tokens, i, colon))
      return std::any_of(names().begin(), names().end(),
                         [&](const Name& name) { return same(tokens[i - 1], name.tokens.back()); });
  return false;
}

/// The text of the tokens from `first` on, before `end`; empty when it is longer than names are.
std::string text_of(const std::vector<Token>& tokens, std::size_t first, std::size_t end) {
  constexpr std::ptrdiff_t most_bytes = 200;
  if (first >= end) return {};
  const char* begin = tokens[first].text.data();
  const std::ptrdiff_t size = tokens[end - 1].text.data() + tokens[end - 1].text.size() - begin;
  return size > most_bytes ? std::string() : std::string(begin, static_cast<std::size_t>(size));
}

}  // namespace

std::optional<std::string> heading_name(std::string_view line) {
  // Only the beginning of a line can be a heading, and a heading's first words are short.
  const std::string_view text = trim(line);
  for (const Vocabulary* words : vocabularies()) {
    const std::size_t size = words->heading.size();
    if (text.size() <= size || lower_ascii(text.substr(0, size)) != words->heading) continue;
    const auto rest = tokens_of(text.substr(size, most_before_colon));
    if (!is(rest, 0, colon)) continue;
    const std::size_t after = static_cast<std::size_t>(rest[0].text.data() - text.data()) + rest[0].text.size();
    std::string_view name = trim(text.substr(after));
    if (const auto gap = name.find("  "); gap != std::string_view::npos) name = name.substr(0, gap);
    return valid_text(name);
  }
  return std::nullopt;
}

std::optional<std::size_t> FactsReader::begin(const std::vector<Token>& tokens, int line) {
  const std::string before = std::exchange(
      end_of_line_before_,
      text_of(tokens, tokens.size() - std::min(tokens.size(), most_name_tokens), tokens.size()));
  const auto begun = [&](const RowRules* rules, std::size_t next) {
    facts_ = Facts{.line = line, .rules = rules};
    lines_left_ = most_lines;
    last_number_ = 0;
    return next;
  };
  for (std::size_t i = 0; i < tokens.size(); ++i)
    if (const auto sentence = sentence_at(tokens, i)) return begun(sentence->rules, sentence->next);
  if (before.empty() || !may_end_a_name(tokens)) return std::nullopt;
  // The name may have begun in the line before.
  const std::string joined = before + " " + text_of(tokens, 0, std::min(tokens.size(), most_name_tokens));
  const auto joined_tokens = tokens_of(joined);
  const std::size_t own = tokens_of(before).size();
  for (std::size_t i = 0; i < own; ++i)
    if (const auto sentence = sentence_at(joined_tokens, i); sentence && sentence->next > own)
      return begun(sentence->rules, sentence->next - own);
  return std::nullopt;
}

bool FactsReader::take(const std::vector<Token>& tokens, int line) {
  std::size_t i = 0;
  if (const auto next = begin(tokens, line)) {
    i = *next;
  } else if (lines_left_ == 0) {
    return false;
  }
  --lines_left_;
  for (; i < tokens.size() && facts_; ++i) {
    if (is(tokens, i, number)) last_number_ = tokens[i].value;
    if (is(tokens, i, word)) take_word(tokens, i);
    if (is(tokens, i, period)) {
      lines_left_ = 0;
      break;
    }
  }
  return true;
}

void FactsReader::take_word(const std::vector<Token>& tokens, std::size_t i) {
  const auto set_count = [&](std::optional<int>& fact) {
    if (last_number_ > 0 && !fact) fact = std::exchange(last_number_, 0);
  };
  if (is_one_of(tokens, i, column_words())) set_count(facts_->columns);
  if (is_one_of(tokens, i, bead_words())) set_count(facts_->edge);
  if (is_one_of(tokens, i, across_words())) set_count(facts_->units_across);
  if (is_one_of(tokens, i, along_words())) set_count(facts_->units_along);
  if (is_one_of(tokens, i, row_words())) set_count(facts_->rows);
  if (is_one_of(tokens, i, round_words())) set_count(facts_->rows);
  if (const auto closure = closure_word(tokens, i)) facts_->closure = closure;
  if (is_word(tokens, i, "round") && after_the_) facts_->closure = weave::Closure::round;
  after_the_ = is_word(tokens, i, "the");
}

std::optional<Facts> FactsReader::release() {
  close();
  return std::exchange(facts_, std::nullopt);
}

}  // namespace evencount::wording::reader
