#include "chart/letters.hpp"

#include <algorithm>

namespace evencount::chart {

std::string letter_name(int position) {
  std::string name;
  for (int rest = position + 1; rest > 0; rest = (rest - 1) / 26)
    name += static_cast<char>('A' + (rest - 1) % 26);
  std::reverse(name.begin(), name.end());
  return name;
}

std::optional<int> letter_position(std::string_view name) {
  if (name.empty() || name.size() > 3) return std::nullopt;
  int position = 0;
  for (const char c : name) {
    if (c < 'A' || c > 'Z') return std::nullopt;
    position = 26 * position + (c - 'A' + 1);
  }
  return position - 1;
}

}  // namespace evencount::chart
