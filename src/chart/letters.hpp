#pragma once
/// The letters that stand for the beads of a legend: A to Z, then AA, AB … AZ, BA ….

#include <optional>
#include <string>
#include <string_view>

#include "chart/chart.hpp"

namespace evencount::chart {

/// 0 -> "A", 25 -> "Z", 26 -> "AA", 27 -> "AB", 701 -> "ZZ", 702 -> "AAA".
/// letter_position(letter_name(i)) == i for every i.
[[nodiscard]] std::string letter_name(int position);

/// The inverse, for capital letters only; nothing for other text or beyond three letters.
[[nodiscard]] std::optional<int> letter_position(std::string_view name);

}  // namespace evencount::chart
