#pragma once
/// JSON answers of the verbs.

#include <cmath>
#include <nlohmann/json.hpp>
#include <ostream>
#include <string>

// Compiled once, in json_text.cpp, and not in every file that makes an answer.
extern template class nlohmann::basic_json<nlohmann::ordered_map>;

namespace evencount::app {

using Json = nlohmann::ordered_json;

/// Rounds for print, so that an answer holds 1.66 and not 1.6600000000000001.
[[nodiscard]] inline double rounded(double value, int decimals) {
  const double scale = std::pow(10.0, decimals);
  const double nearest = std::round(value * scale) / scale;
  return nearest == 0 ? 0 : nearest;
}

/// On one line. What is no UTF-8 (a file's name can be anything) is replaced rather than thrown on.
[[nodiscard]] inline std::string json_line(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

inline void print(std::ostream& out, const Json& json) {
  out << json.dump(2) << '\n';
}

}  // namespace evencount::app
