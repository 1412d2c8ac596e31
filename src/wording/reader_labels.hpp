#pragma once
/// What stands before the beads of a row: "Row 3 (R):", "Rows 1-2 →", "R3.", "3:".

#include <optional>

#include "weave/plan.hpp"
#include "wording/reader_tokens.hpp"

namespace evencount::wording::reader {

struct Label {
  int first_row = 1;
  int last_row = 1;
  std::optional<weave::Travel> travel;
  bool named = false;    ///< it begins with "Row", "Rows" or "R"
  bool spelled = false;  ///< it begins with "Row" or "Rows"
  bool colon = false;    ///< it ends with a colon
  bool period = false;   ///< it ends with a period
  std::size_t next = 0;  ///< the token after it
};

/// The label at token `i`, wherever it stands and whatever follows it.
[[nodiscard]] std::optional<Label> label_at(const std::vector<Token>& tokens, std::size_t i);

}  // namespace evencount::wording::reader
