#pragma once
/// The place that a finding speaks of, for a program that wants to lead there: read off its `where` with the project's own names.
///
/// Property (tests/proof/place_test.cpp): every finding of a project of one fault has the place of that fault.

#include <optional>
#include <string>
#include <vector>

#include "proof/proof.hpp"

namespace evencount::proof {

struct Place {
  std::optional<std::size_t> band;  ///< its position
  std::optional<int> row;           ///< as the words number it
  std::optional<chart::Cell> cell;
  std::vector<std::string> letters;  ///< of the legend
  std::string size;                  ///< a wearer's, of the strand
  std::optional<int> piece;          ///< of the strand, from 1
  std::optional<int> line, column;   ///< of the strand's layout, from 1
  bool operator==(const Place&) const = default;
};

/// Of two bands of one name the first is meant, but where the finding is that there are two. A `where` that says nothing more exact gives
/// an empty place.
[[nodiscard]] Place place_of(const project::Project& project, const Finding& finding);

}  // namespace evencount::proof
