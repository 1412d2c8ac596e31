#include "wording/reader_facts.hpp"

#include <utility>

#include "base/text.hpp"

namespace evencount::wording::reader {
namespace {

using enum TokenKind;

constexpr int most_lines = 5;  // of the sentence, in a narrow column

/// "Flat peyote, even count:" begins the sentence; its first line holds at least that much.
std::optional<std::size_t> sentence_at(const std::vector<Token>& tokens) {
  for (std::size_t i = 0; i + 5 < tokens.size(); ++i) {
    const bool begins = is_word(tokens, i, "flat") && is_word(tokens, i + 1, "peyote") &&
                        is(tokens, i + 2, comma) && is_word(tokens, i + 4, "count") &&
                        is(tokens, i + 5, colon);
    if (begins && (is_word(tokens, i + 3, "even") || is_word(tokens, i + 3, "odd"))) return i;
  }
  return std::nullopt;
}

}  // namespace

std::optional<std::string> heading_name(std::string_view line) {
  constexpr std::string_view sign = "word chart:";
  // Only the beginning of a line can be a heading, and a heading's first words are short.
  const std::string_view text = trim(line);
  if (lower_ascii(text.substr(0, sign.size())) != sign) return std::nullopt;
  std::string_view name = trim(text.substr(sign.size()));
  if (const auto gap = name.find("  "); gap != std::string_view::npos) name = name.substr(0, gap);
  return valid_text(name);
}

bool FactsReader::take(const std::vector<Token>& tokens, int line) {
  std::size_t i = 0;
  if (const auto begin = sentence_at(tokens)) {
    facts_ = Facts{line, is_word(tokens, *begin + 3, "odd")};
    lines_left_ = most_lines;
    last_number_ = 0;
    i = *begin + 6;
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
  if (is_word(tokens, i, "columns") || is_word(tokens, i, "column")) set_count(facts_->columns);
  if (is_word(tokens, i, "beads") || is_word(tokens, i, "bead")) set_count(facts_->edge);
  if (is_word(tokens, i, "rows") || is_word(tokens, i, "row")) set_count(facts_->rows);
  if (is_word(tokens, i, "zipped")) facts_->closure = weave::Closure::zip;
  if (is_word(tokens, i, "open")) facts_->closure = weave::Closure::open;
}

std::optional<Facts> FactsReader::release() {
  close();
  return std::exchange(facts_, std::nullopt);
}

}  // namespace evencount::wording::reader
