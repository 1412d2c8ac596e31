#pragma once
/// What stands before the beads of a row: "Row 3 (R):", "Rows 1-2 →", "R3.", "3:", "Round 9 (R), on the back:"; and what stands
/// in their place where rows are worked again.

#include <optional>

#include "weave/plan.hpp"
#include "wording/reader_tokens.hpp"

namespace evencount::wording::reader {

struct Label {
  int first_row = 1;
  int last_row = 1;
  std::optional<weave::Travel> travel;
  std::optional<weave::RowEnd> begins, ends;  ///< "increase at the beginning", as far as it is said
  bool on_back = false;
  bool contradicts = false;  ///< it says two things of the same end
  bool named = false;        ///< it begins with "Row", "Rows", "Round", "Rounds" or "R"
  bool spelled = false;      ///< it begins with a whole word
  bool round = false;        ///< that word is "Round" or "Rounds"
  bool colon = false;        ///< it ends with a colon
  bool period = false;       ///< it ends with a period
  bool broken_off = false;   ///< the line ends, or a wide gap stands, where the label must go on
  std::size_t next = 0;      ///< the token after it
};

/// The label at token `i`, wherever it stands and whatever follows it.
[[nodiscard]] std::optional<Label> label_at(const std::vector<Token>& tokens, std::size_t i);

/// "work rows 5–12 twice": rows that are worked again.
struct Again {
  int first_row = 0;  ///< 0 while the rows are not named yet
  int last_row = 0;
  std::optional<int> times;
  bool broken_off = false;  ///< as in Label
  std::size_t next = 0;     ///< the token after it
};

/// What token `i`, right after a label, begins.
[[nodiscard]] std::optional<Again> again_at(const std::vector<Token>& tokens, std::size_t i);

}  // namespace evencount::wording::reader
