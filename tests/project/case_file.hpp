#pragma once
/// A test case kept as text: lines of "key: value" (a key may come again), a line "---", and the input.

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace evencount::testing {

struct CaseFile {
  std::string file;
  std::vector<std::pair<std::string, std::string>> lines;
  std::string input;

  [[nodiscard]] std::vector<std::string> all(std::string_view key) const {
    std::vector<std::string> values;
    for (const auto& [name, value] : lines)
      if (name == key) values.push_back(value);
    return values;
  }
  [[nodiscard]] bool has(std::string_view key) const { return !all(key).empty(); }
  [[nodiscard]] std::string one(std::string_view key) const {
    const auto values = all(key);
    EXPECT_EQ(values.size(), 1u) << file << ": needs one line '" << key << "'";
    return values.empty() ? "" : values.front();
  }
};

inline std::string read_file(const std::filesystem::path& path) {
  std::ifstream stream(path, std::ios::binary);
  EXPECT_TRUE(stream.good()) << path;
  return {std::istreambuf_iterator<char>(stream), {}};
}

inline CaseFile read_case(const std::filesystem::path& path) {
  CaseFile result{path.filename().string(), {}, {}};
  const std::string text = read_file(path);
  std::size_t at = 0;
  while (at < text.size()) {
    const auto end = std::min(text.find('\n', at), text.size());
    const std::string line = text.substr(at, end - at);
    at = end + 1;
    if (line == "---") {
      result.input = text.substr(std::min(at, text.size()));
      return result;
    }
    const auto colon = line.find(": ");
    EXPECT_NE(colon, std::string::npos) << path << ": " << line;
    if (colon != std::string::npos) result.lines.emplace_back(line.substr(0, colon), line.substr(colon + 2));
  }
  ADD_FAILURE() << path << ": no line ---";
  return result;
}

/// Every case of a folder, by file name.
inline std::vector<CaseFile> read_cases(const std::filesystem::path& folder) {
  std::vector<std::filesystem::path> paths;
  for (const auto& entry : std::filesystem::directory_iterator(folder))
    if (entry.path().extension() == ".case") paths.push_back(entry.path());
  std::sort(paths.begin(), paths.end());
  std::vector<CaseFile> cases;
  for (const auto& path : paths) cases.push_back(read_case(path));
  return cases;
}

}  // namespace evencount::testing
