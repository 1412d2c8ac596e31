// Runs tests/cases/wording/*.case: what the reader makes of a text.
//
// A case is "name:" and "why:" lines, perhaps an "options:" line (columns=6 rows=4 legend=A,B technique=loom), a
// line "--- input", the text, a line "--- expect" and either "error CODE" with the whole message on the next line,
// or for each band a line "band NAME" with "columns= rows= first= closure= technique=", perhaps "begin_at=", and a
// line a step, its letters from column 0 on, '.' for no bead.

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "base/text.hpp"
#include "wording/reader.hpp"

namespace evencount::wording {
namespace {

struct Case {
  std::string name, why, input, expected;
  ReadOptions options;
};

ReadOptions parse_options(const std::string& text) {
  ReadOptions options;
  std::istringstream words(text);
  for (std::string word; words >> word;) {
    const auto parts = split(word, '=');
    if (parts.at(0) == "columns") options.columns = static_cast<int>(parse_integer(parts.at(1)).value());
    if (parts.at(0) == "technique") options.technique = parts.at(1);
    if (parts.at(0) == "rows") options.rows = static_cast<int>(parse_integer(parts.at(1)).value());
    if (parts.at(0) == "legend")
      for (const auto letter : split(parts.at(1), ',')) options.legend.emplace_back(letter);
  }
  return options;
}

Case load(const std::string& path) {
  Case loaded;
  std::ifstream file(path, std::ios::binary);
  std::string* section = nullptr;
  for (std::string line; std::getline(file, line);) {
    if (line == "--- input") {
      section = &loaded.input;
    } else if (line == "--- expect") {
      section = &loaded.expected;
    } else if (section != nullptr) {
      *section += line + "\n";
    } else {
      const auto colon = line.find(": ");
      const std::string key = line.substr(0, colon), value = line.substr(std::min(line.size(), colon + 2));
      if (key == "name") loaded.name = value;
      if (key == "why") loaded.why = value;
      if (key == "options") loaded.options = parse_options(value);
    }
  }
  return loaded;
}

std::string_view direction(weave::Travel travel) {
  switch (travel) {
    case weave::Travel::left:
      return "left";
    case weave::Travel::right:
      return "right";
    case weave::Travel::forth:
      return "down";
    case weave::Travel::back:
      return "up";
  }
  return "";
}

std::string show(const ReadBand& band) {
  std::string text = fmt::format(
      "band {}\ncolumns={} rows={} first={} closure={} technique={}", band.name.empty() ? "-" : band.name,
      band.chart.columns(), band.rows, direction(band.first_travel),
      band.closure ? std::string(weave::closure_name(*band.closure)) : "-", band.technique);
  if (band.begin_at > 0) text += fmt::format(" begin_at={}", band.begin_at);
  text += "\n";
  for (int step = 0; step < band.chart.edge(); ++step) {
    std::string line;
    for (const chart::Bead bead : band.chart.step(step))
      line += (line.empty() ? "" : " ") + (bead == chart::no_bead ? "." : band.letters.at(bead));
    text += line + "\n";
  }
  return text;
}

std::string show(const Result<std::vector<ReadBand>>& result) {
  if (!result)
    return fmt::format("error {}\n{}\n", problem_kind(result.problem().code).name, message(result.problem()));
  std::string text;
  for (const ReadBand& band : *result) text += show(band);
  return text;
}

std::vector<std::string> case_files() {
  std::vector<std::string> paths;
  for (const auto& entry : std::filesystem::directory_iterator(EVENCOUNT_CASES_DIR "/wording"))
    if (entry.path().extension() == ".case") paths.push_back(entry.path().string());
  std::sort(paths.begin(), paths.end());
  return paths;
}

class WordingCase : public testing::TestWithParam<std::string> {};

TEST_P(WordingCase, ReadsAsExpected) {
  const Case read = load(GetParam());
  ASSERT_FALSE(read.name.empty());
  ASSERT_FALSE(read.why.empty());
  ASSERT_FALSE(read.expected.empty());
  EXPECT_EQ(show(read_words(read.input, read.options)), read.expected) << read.name << ": " << read.why;
}

INSTANTIATE_TEST_SUITE_P(Cases, WordingCase, testing::ValuesIn(case_files()), [](const auto& parameter) {
  std::string name = std::filesystem::path(parameter.param).stem().string();
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
});

TEST(WordingCases, AreThere) {
  EXPECT_GE(case_files().size(), 40u);
}

}  // namespace
}  // namespace evencount::wording
