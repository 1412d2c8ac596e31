#pragma once
/// The words of a word chart in the languages that the reader knows.
///
/// They are the reader's own: nothing of it comes from the catalogue that the writer prints from, so that a slip there (left for right)
/// is noticed when its words are read. What begins a label is said differently in each language and so tells which one the rest of the
/// label is in; a label without such a word is taken for English.

#include <array>
#include <optional>
#include <span>
#include <string_view>

#include "weave/plan.hpp"
#include "wording/reader_tokens.hpp"

namespace evencount::wording::reader {

using Words = std::span<const std::string_view>;

/// What a label may say of its row after the direction.
enum class Remark : std::uint8_t { increase_begin, decrease_begin, increase_end, decrease_end, on_back };
struct RemarkWords {
  Remark remark;
  std::string_view words;  ///< in small letters, parted by blanks
};

struct TechniqueWords {
  std::string_view id;
  std::string_view name;  ///< as the facts give it, in small letters
};

struct Vocabulary {
  std::string_view heading;   ///< before the colon and the band's name, in small letters
  Words row, round;           ///< before a number
  std::string_view ordinal;   ///< or this before the number …
  std::string_view row_counter, round_counter;  ///< … and one of these behind it
  Words left, right, down, up;
  Words ways;                 ///< what may stand before them: "to the"
  std::span<const RemarkWords> remarks;
  std::span<const TechniqueWords> techniques;
};

/// English first.
[[nodiscard]] std::span<const Vocabulary* const> vocabularies();

/// The beginning of a label: "Row 4", "Runden 1–2", "第3段".
struct RowWord {
  const Vocabulary* vocabulary = nullptr;
  bool round = false;
};
[[nodiscard]] std::optional<RowWord> row_word_of(const std::vector<Token>& tokens, std::size_t i);

/// Whether the token is one of the words.
[[nodiscard]] bool is_one_of(const std::vector<Token>& tokens, std::size_t i, Words words);
/// Whether the token is behind a number what another language has before it.
[[nodiscard]] bool is_counter(const std::vector<Token>& tokens, std::size_t i);

/// Where a round leaves a bead out.
[[nodiscard]] bool is_decrease_sign(std::string_view word);

// The sentence of facts; the languages' words for these things differ, so that one list does for all.
[[nodiscard]] Words column_words();
[[nodiscard]] Words bead_words();
[[nodiscard]] Words row_words();
[[nodiscard]] Words round_words();
[[nodiscard]] Words across_words();
[[nodiscard]] Words along_words();
/// The closure that a word tells; "round" alone does not.
[[nodiscard]] std::optional<weave::Closure> closure_word(const std::vector<Token>& tokens, std::size_t i);

// Rows that are worked again: "work rows 5–12".
[[nodiscard]] Words again_words();
[[nodiscard]] Words articles();

}  // namespace evencount::wording::reader
