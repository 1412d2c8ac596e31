#include "wording/reader_runs.hpp"

#include <algorithm>
#include <utility>

#include "base/text.hpp"

namespace evencount::wording::reader {
namespace {

using enum TokenKind;

bool is_small_x(const std::vector<Token>& tokens, std::size_t i) {
  return is(tokens, i, word) && tokens[i].text == "x";
}

/// A run ends at a blank, a separator, a bracket or the line's end; "2A3B" and "A's" are none.
bool ends_cleanly(const std::vector<Token>& tokens, std::size_t next) {
  if (next >= tokens.size() || tokens[next].gap > 0) return true;
  const TokenKind kind = tokens[next].kind;
  return kind == comma || kind == open || kind == period || kind == box || kind == star;
}

std::optional<WrittenRun> finished(const std::vector<Token>& tokens, WrittenRun run, std::string_view letter,
                                   std::size_t next) {
  const bool latin = std::all_of(letter.begin(), letter.end(), [](char c) { return static_cast<unsigned char>(c) < 0x80; });
  const bool sign = !latin && !run.counted && is_decrease_sign(letter);
  if (letter.empty() || letter.size() > longest_letter || !ends_cleanly(tokens, next)) return std::nullopt;
  if (!latin && !sign) return std::nullopt;
  run.letter = upper_ascii(letter);
  run.next = next;
  return run;
}

/// "(2)A", "2A", "2 A", "2 x A", "2xA", "2×A"; `i` is the token after the count.
std::optional<WrittenRun> letter_after_count(const std::vector<Token>& tokens, std::size_t i,
                                             WrittenRun run) {
  // "(1)x R14:" is a bead of X before a label.
  const bool word_follows = is(tokens, i + 1, word) && !row_word_at(tokens, i + 1) &&
                            !(is(tokens, i + 2, number) && tokens[i + 2].gap == 0);
  if (is(tokens, i, times) || (is_small_x(tokens, i) && word_follows)) {
    run.counted = true;
    ++i;
  }
  // What stands across a wide gap is another column's: "7   Row 49" ends a row with its number of beads.
  if (!is(tokens, i, word) || tokens[i].gap >= wide_gap || row_word_at(tokens, i)) return std::nullopt;
  std::string_view letter = tokens[i].text;
  if (tokens[i].gap == 0) run.counted = true;
  if (letter.size() > 1 && letter.front() == 'x' && tokens[i].gap == 0) letter.remove_prefix(1);
  return finished(tokens, run, letter, i + 1);
}

/// "A2", "A x 2", "Ax2", "A × 2", "A"; `i` is the letter.
std::optional<WrittenRun> letter_first(const std::vector<Token>& tokens, std::size_t i) {
  WrittenRun run;
  std::string_view letter = tokens[i].text;
  std::size_t count = i + 1;
  // "dec   x 3": the end of a list in another column of the page.
  const bool other_list = count < tokens.size() && tokens[count].gap >= wide_gap && is_decrease_sign(letter);
  if (is(tokens, count, number) && tokens[count].gap == 0) {
    run.counted = true;
    if (letter.size() > 1 && letter.back() == 'x') letter.remove_suffix(1);
  } else if (!other_list && (is(tokens, count, times) || is_small_x(tokens, count))) {
    ++count;
    if (is(tokens, count, number)) run.counted = true;
    if (!run.counted && is(tokens, count - 1, times)) return std::nullopt;
  }
  if (!run.counted) return finished(tokens, run, letter, i + 1);
  run.count = tokens[count].value;
  return finished(tokens, run, letter, count + 1);
}

}  // namespace

std::optional<WrittenRun> run_at(const std::vector<Token>& tokens, std::size_t i) {
  WrittenRun run;
  if (is(tokens, i, number)) {
    run.count = tokens[i].value;
    return letter_after_count(tokens, i + 1, run);
  }
  if (is(tokens, i, open) && is(tokens, i + 1, number) && is(tokens, i + 2, close)) {
    run.count = tokens[i + 1].value;
    auto with_letter = letter_after_count(tokens, i + 3, run);
    if (with_letter) with_letter->counted = true;
    return with_letter;
  }
  if (is(tokens, i, word)) return letter_first(tokens, i);
  return std::nullopt;
}

std::optional<WrittenTimes> times_at(const std::vector<Token>& tokens, std::size_t i) {
  constexpr std::pair<std::string_view, int> words[] = {{"once", 1}, {"twice", 2}, {"thrice", 3}};
  for (const auto& [name, times] : words)
    if (is_word(tokens, i, name)) return WrittenTimes{times, i + 1};
  static constexpr std::array<std::string_view, 4> times_words{"times", "mal", "veces", "fois"};
  WrittenTimes written;
  if (is(tokens, i, number) && is_one_of(tokens, i + 1, times_words)) {
    written = {tokens[i].value, i + 2};
  } else if ((is(tokens, i, times) || is_small_x(tokens, i)) && is(tokens, i + 1, number)) {
    written = {tokens[i + 1].value, i + 2};
  } else {
    return std::nullopt;
  }
  if (!ends_cleanly(tokens, written.next)) return std::nullopt;
  return written;
}

bool round_word_at(const std::vector<Token>& tokens, std::size_t i) {
  const auto row = row_word_of(tokens, i);
  return row && row->round;
}

bool row_word_at(const std::vector<Token>& tokens, std::size_t i) {
  return row_word_of(tokens, i).has_value();
}

}  // namespace evencount::wording::reader
