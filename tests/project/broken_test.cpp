#include <fmt/format.h>
#include <gtest/gtest.h>

#include <random>

#include "base/text.hpp"
#include "project/case_file.hpp"
#include "project/json.hpp"
#include "project/json_tree.hpp"
#include "project/random_project.hpp"

namespace evencount::project {
namespace {

namespace fs = std::filesystem;

std::string small_text() {
  return testing::read_file(EVENCOUNT_SOURCE_DIR "/tests/project/data/small.evencount.json");
}

/// What every problem owes its reader.
void expect_readable(const Problem& problem) {
  EXPECT_FALSE(problem.expected.empty()) << message(problem);
  EXPECT_FALSE(problem.found.empty()) << message(problem);
  EXPECT_TRUE(is_utf8(message(problem)));
}

TEST(project_cases, each_gives_its_problem) {
  const auto cases = testing::read_cases(EVENCOUNT_CASES_DIR "/project");
  EXPECT_GE(cases.size(), 30u);
  for (const auto& test : cases) {
    SCOPED_TRACE(test.file + ": " + test.one("name"));
    EXPECT_FALSE(test.one("why").empty());
    const auto project = parse_project(test.input);
    if (test.one("code") == "none") {
      EXPECT_TRUE(project.ok()) << message(project.problem());
      continue;
    }
    if (project.ok()) {
      ADD_FAILURE() << "was read";
      continue;
    }
    const Problem& problem = project.problem();
    expect_readable(problem);
    EXPECT_EQ(problem_kind(problem.code).name, test.one("code")) << message(problem);
    EXPECT_EQ(problem.where, test.one("where")) << message(problem);
    if (test.has("found")) {
      EXPECT_EQ(problem.found, test.one("found"));
    }
    if (test.has("expected")) {
      // Long lists of names grow: " …" stands for whatever follows.
      std::string expected = test.one("expected"), seen = problem.expected;
      if (expected.ends_with(" …")) {
        expected.resize(expected.size() - std::string_view(" …").size());
        seen.resize(std::min(seen.size(), expected.size()));
      }
      EXPECT_EQ(seen, expected);
    }
  }
}

TEST(project_broken, a_text_cut_off_anywhere_is_a_problem) {
  const std::string text(trim(to_json(*parse_project(small_text()))));
  ASSERT_TRUE(parse_project(text).ok());
  for (std::size_t length = 0; length < text.size(); ++length) {
    const auto project = parse_project(std::string_view(text).substr(0, length));
    ASSERT_FALSE(project.ok()) << "the first " << length << " bytes were read";
    ASSERT_EQ(project.problem().code, ProblemCode::bad_json);
    expect_readable(project.problem());
  }
}

TEST(project_broken, changed_bytes_give_a_project_or_a_problem) {
  std::mt19937_64 random(42);
  const std::vector<std::string> originals{small_text(), to_json(testing::random_project(5)),
                                           to_json(testing::random_project(11))};
  int read_whole = 0;
  for (int round = 0; round < 2'000; ++round) {
    std::string text = originals[round % originals.size()];
    for (std::uint64_t changes = 1 + random() % 4; changes > 0; --changes) {
      const std::size_t at = random() % text.size();
      switch (random() % 4) {
        case 0:
          text[at] = static_cast<char>(random() % 256);
          break;
        case 1:
          text.erase(at, 1 + random() % 8);
          break;
        case 2:
          text.insert(at, 1, "{}[]\",:0123456789eE-+."[random() % 22]);
          break;
        default:
          text.insert(at, text.substr(random() % text.size(), random() % 16));
      }
      if (text.empty()) text = " ";
    }
    const auto project = parse_project(text);
    if (!project) {
      expect_readable(project.problem());
      continue;
    }
    ++read_whole;
    const auto again = parse_project(to_json(*project));
    ASSERT_TRUE(again.ok()) << message(again.problem());
    ASSERT_EQ(*again, *project);
  }
  EXPECT_GT(read_whole, 20);
  EXPECT_LT(read_whole, 1'900);
}

TEST(project_broken, nesting_is_capped_for_lists_and_objects) {
  const auto nested = [](int levels, const std::string& open, const std::string& close) {
    std::string text;
    for (int i = 0; i < levels; ++i) text += open;
    text += "1";
    for (int i = 0; i < levels; ++i) text += close;
    return json::parse(text);
  };
  EXPECT_TRUE(nested(json::deepest_nesting, "[", "]").ok());
  EXPECT_FALSE(nested(json::deepest_nesting + 1, "[", "]").ok());
  EXPECT_TRUE(nested(json::deepest_nesting, "{\"a\":", "}").ok());
  EXPECT_FALSE(nested(json::deepest_nesting + 1, "{\"a\":", "}").ok());
  const auto million = nested(1'000'000, "[", "]");
  ASSERT_FALSE(million.ok());
  EXPECT_EQ(million.problem().code, ProblemCode::bad_json);
}

TEST(project_broken, a_text_beyond_the_limit_is_refused_unread) {
  const std::string text(json::longest_document + 1, ' ');
  const auto project = parse_project(text);
  ASSERT_FALSE(project.ok());
  EXPECT_EQ(project.problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(project.problem().expected, "at most 67108864");
}

TEST(project_broken, an_object_of_very_many_names_takes_linear_time) {
  std::string text = "{\"format\": 1";
  for (int i = 0; i < 200'000; ++i) text += fmt::format(", \"n{}\": {}", i, i);
  const auto project = parse_project(text + "}");
  ASSERT_FALSE(project.ok());
  EXPECT_EQ(project.problem().where, "/title");
}

TEST(project_broken, the_crashers_of_fuzzing_stay_fixed) {
  const fs::path folder = EVENCOUNT_SOURCE_DIR "/fuzz/crashers/project";
  int count = 0;
  for (const auto& entry : fs::directory_iterator(folder)) {
    SCOPED_TRACE(entry.path());
    const auto project = parse_project(testing::read_file(entry.path()));
    if (project) {
      const auto again = parse_project(to_json(*project));
      ASSERT_TRUE(again.ok()) << message(again.problem());
      EXPECT_EQ(*again, *project);
    }
    ++count;
  }
  EXPECT_GT(count, 0);
}

}  // namespace
}  // namespace evencount::project
