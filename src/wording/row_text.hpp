#pragma once
/// The beads of one row in writing. Internal to the room.

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "weave/plan.hpp"

namespace evencount::wording {

/// A run of a row as it is written, "(2)A" or "dec", and what parts it from the one before.
struct RunText {
  std::string text;
  bool begins_unit = false;  ///< of right-angle weave, but for the first
  bool operator==(const RunText&) const = default;
};

/// The runs of a row, decreases of rounds among them.
[[nodiscard]] std::vector<RunText> runs_of(const weave::Plan& plan, std::size_t row, std::span<const std::string> letters,
                                           std::string_view decrease_sign);

/// One after another, parted by commas and semicolons.
[[nodiscard]] std::string joined(std::span<const RunText> runs);

/// The same with the stretch folded that saves the most: "(1)B, *(2)A, (1)B* × 6".
[[nodiscard]] std::string folded(std::span<const RunText> runs);

}  // namespace evencount::wording
