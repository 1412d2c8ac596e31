#pragma once
/// One run of a row, in any of the ways a maker writes it, and how often a list of them is worked.

#include <optional>
#include <string>

#include "wording/reader_vocabulary.hpp"

namespace evencount::wording::reader {

struct WrittenRun {
  int count = 1;
  std::string letter;    ///< in capitals, one to three; or the sign of a decrease
  bool counted = false;  ///< the count was written, and tied to the letter: "(2)A", "2A", "A2", "2 x A"
  std::size_t next = 0;  ///< the token after it
  [[nodiscard]] bool is_dec() const { return !counted && is_decrease_sign(letter); }
};

inline constexpr std::size_t longest_letter = 3;

/// The run at token `i`, or nothing when there is none or its meaning is in doubt ("A2B").
/// The count may be anything from 0 to `largest_value`.
[[nodiscard]] std::optional<WrittenRun> run_at(const std::vector<Token>& tokens, std::size_t i);

/// How often something is worked.
struct WrittenTimes {
  int times = 1;         ///< 0 to `largest_value`
  std::size_t next = 0;  ///< the token after it
};

/// "× 6", "x 6", "6 times", "once", "twice" at token `i`.
[[nodiscard]] std::optional<WrittenTimes> times_at(const std::vector<Token>& tokens, std::size_t i);

/// Whether a row's label may begin at token `i` ("Row 4", "Round 4"), which ends any run list.
[[nodiscard]] bool row_word_at(const std::vector<Token>& tokens, std::size_t i);

/// The same for "Round 4" alone.
[[nodiscard]] bool round_word_at(const std::vector<Token>& tokens, std::size_t i);

}  // namespace evencount::wording::reader
