#pragma once
/// JSON answers of the verbs.

#include <cmath>
#include <nlohmann/json.hpp>
#include <ostream>

namespace evencount::app {

using Json = nlohmann::ordered_json;

/// Rounds for print, so that an answer holds 1.66 and not 1.6600000000000001.
[[nodiscard]] inline double rounded(double value, int decimals) {
  const double scale = std::pow(10.0, decimals);
  const double nearest = std::round(value * scale) / scale;
  return nearest == 0 ? 0 : nearest;
}

inline void print(std::ostream& out, const Json& json) {
  out << json.dump(2) << '\n';
}

}  // namespace evencount::app
