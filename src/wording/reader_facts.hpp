#pragma once
/// The heading of a word chart and the sentence of facts below it.

#include <optional>
#include <string>
#include <string_view>

#include "weave/plan.hpp"
#include "wording/reader_rows.hpp"
#include "wording/reader_tokens.hpp"

namespace evencount::wording::reader {

/// What the sentence states; what it leaves out is empty.
struct Facts {
  int line = 0;
  const RowRules* rules = nullptr;  ///< of the technique that it names; never null
  std::optional<int> columns;
  std::optional<int> edge;
  std::optional<int> units_across;
  std::optional<int> units_along;
  std::optional<int> rows;  ///< or rounds
  std::optional<weave::Closure> closure;
};

/// The name in a "Word chart: NAME" line; nothing for other lines. A wide gap ends the name.
[[nodiscard]] std::optional<std::string> heading_name(std::string_view line);

/// Collects the facts, whose sentence may run over several lines.
class FactsReader {
 public:
  /// Takes a line's tokens. True when they belong to the sentence.
  bool take(const std::vector<Token>& tokens, int line);

  /// The sentence may no longer go on: a row has begun.
  void close() { lines_left_ = 0; }

  /// What has been read since the last `release`, or null.
  [[nodiscard]] const Facts* facts() const { return facts_ ? &*facts_ : nullptr; }

  /// What has been read since the last call.
  [[nodiscard]] std::optional<Facts> release();

 private:
  /// Where the sentence goes on in a line in which it begins.
  std::optional<std::size_t> begin(const std::vector<Token>& tokens, int line);
  void take_word(const std::vector<Token>& tokens, std::size_t i);

  std::optional<Facts> facts_;
  std::string end_of_line_before_;  ///< in which the technique's name may have begun
  int lines_left_ = 0;
  int last_number_ = 0;
  bool after_the_ = false;
};

}  // namespace evencount::wording::reader
