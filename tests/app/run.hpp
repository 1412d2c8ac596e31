#pragma once
/// Runs the command line inside the test.

#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>
#include <vector>

#include "app/command_line.hpp"

namespace evencount::testing {

struct Ran {
  int status = 0;
  std::string out, err;
  [[nodiscard]] nlohmann::json json() const { return nlohmann::json::parse(out); }
};

inline Ran run(const std::vector<std::string>& arguments) {
  std::ostringstream out, err;
  const int status = app::run_command_line(arguments, {out, err});
  return {status, out.str(), err.str()};
}

inline std::string slurp(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

inline void spill(const std::string& path, const std::string& text) {
  std::ofstream(path, std::ios::binary) << text;
}

inline std::string example(const std::string& name) {
  return std::string(EVENCOUNT_SOURCE_DIR) + "/examples/" + name + ".evencount.json";
}

}  // namespace evencount::testing
