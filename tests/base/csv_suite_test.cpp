// csv-spectrum (npm, BSD-2-Clause): files of every kind RFC 4180 allows, each beside what it holds, as JSON.

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>

#include "base/csv.hpp"

namespace evencount {
namespace {

namespace fs = std::filesystem;

const fs::path suite = EVENCOUNT_SOURCE_DIR "/studio/node_modules/csv-spectrum";

std::string text_of(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  EXPECT_TRUE(file.is_open()) << path;
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

TEST(CsvSuite, EveryFileHoldsWhatItSays) {
  if (!fs::exists(suite)) GTEST_SKIP() << "the studio's npm packages are not there";
  int files = 0;
  for (const auto& entry : fs::directory_iterator(suite / "csvs")) {
    const CsvRows read = read_csv_rows(text_of(entry.path()), 10'000);
    if (entry.path().stem() == "location_coordinates") {  // minutes and seconds as bare quotes within a field: RFC 4180 forbids that
      ASSERT_EQ(read.problems.size(), 1U);
      EXPECT_EQ(read.problems.front().where, "line 2");
      continue;
    }
    EXPECT_TRUE(read.problems.empty()) << entry.path();
    const auto expected = nlohmann::json::parse(text_of(suite / "json" / entry.path().stem().concat(".json")));
    ASSERT_EQ(read.rows.size(), expected.size() + 1) << entry.path();
    const std::vector<std::string>& names = read.rows.front().fields;
    for (std::size_t i = 0; i < expected.size(); ++i) {
      const std::vector<std::string>& fields = read.rows[i + 1].fields;
      ASSERT_EQ(fields.size(), names.size()) << entry.path();
      ASSERT_EQ(expected[i].size(), names.size()) << entry.path();
      for (std::size_t k = 0; k < names.size(); ++k) EXPECT_EQ(expected[i].at(names[k]).get<std::string>(), fields[k]) << entry.path();
    }
    ++files;
  }
  EXPECT_EQ(files, 11);
}

}  // namespace
}  // namespace evencount
