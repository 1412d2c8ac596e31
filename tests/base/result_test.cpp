#include "base/result.hpp"

#include <gtest/gtest.h>

#include <memory>
#include <set>
#include <string>

namespace evencount {
namespace {

constexpr int code_count = static_cast<int>(ProblemCode::system_failure) + 1;

TEST(ProblemKind, EveryCodeHasItsRow) {
  std::set<std::string_view> names;
  for (int i = 0; i < code_count; ++i) {
    const auto code = static_cast<ProblemCode>(i);
    const ProblemKind& kind = problem_kind(code);
    EXPECT_EQ(kind.code, code);
    EXPECT_FALSE(kind.name.empty());
    EXPECT_EQ(kind.name.find_first_not_of("abcdefghijklmnopqrstuvwxyz_"), std::string_view::npos)
        << kind.name;
    EXPECT_TRUE(names.insert(kind.name).second) << kind.name;
  }
}

// 1 the work has findings, 2 bad input, 3 a file or system failure; the same in HTTP's terms.
TEST(ProblemKind, StatusesGoTogether) {
  for (int i = 0; i < code_count; ++i) {
    const ProblemKind& kind = problem_kind(static_cast<ProblemCode>(i));
    EXPECT_TRUE(kind.exit_status >= 1 && kind.exit_status <= 3) << kind.name;
    EXPECT_TRUE(kind.http_status >= 400 && kind.http_status < 600) << kind.name;
    EXPECT_TRUE(kind.http_status < 500 || kind.exit_status == 3) << kind.name;
  }
  EXPECT_EQ(problem_kind(ProblemCode::proof_failed).exit_status, 1);
  EXPECT_EQ(problem_kind(ProblemCode::cannot_close).exit_status, 1);
  EXPECT_EQ(problem_kind(ProblemCode::bad_words).exit_status, 2);
  EXPECT_EQ(problem_kind(ProblemCode::file_not_found).exit_status, 3);
  EXPECT_EQ(problem_kind(ProblemCode::file_not_found).http_status, 404);
}

TEST(Problem, MessageLeavesOutWhatIsEmpty) {
  const auto text = [](std::string where, std::string found, std::string expected) {
    return message({ProblemCode::bad_text, std::move(where), std::move(found), std::move(expected)});
  };
  EXPECT_EQ(text("row 3", "5 beads", "3 beads"), "row 3: found 5 beads, expected 3 beads");
  EXPECT_EQ(text("row 3", "5 beads", ""), "row 3: found 5 beads");
  EXPECT_EQ(text("row 3", "", "3 beads"), "row 3: expected 3 beads");
  EXPECT_EQ(text("", "5 beads", "3 beads"), "found 5 beads, expected 3 beads");
  EXPECT_EQ(text("", "5 beads", ""), "found 5 beads");
  EXPECT_EQ(text("", "", "3 beads"), "expected 3 beads");
  EXPECT_EQ(text("row 3", "", ""), "row 3");
}

TEST(Problem, GrowsOutwards) {
  const Problem inner{ProblemCode::bad_words, "row 3", "5 beads", "3 beads"};
  const Problem outer = inner.within("demo.json");
  EXPECT_EQ(outer.where, "demo.json: row 3");
  EXPECT_EQ(outer.code, inner.code);
  EXPECT_EQ(outer.found, inner.found);
  EXPECT_EQ(Problem{ProblemCode::bad_words}.within("demo.json").where, "demo.json");
}

TEST(Result, HoldsAValueOrAProblem) {
  const Result<int> value = 3;
  EXPECT_TRUE(value.ok());
  EXPECT_TRUE(static_cast<bool>(value));
  EXPECT_EQ(*value, 3);
  const Result<int> failed = Problem{ProblemCode::bad_text, "a", "b", "c"};
  EXPECT_FALSE(failed.ok());
  EXPECT_EQ(failed.problem().where, "a");
}

TEST(Result, ValuesAreChangedInPlaceAndMovedOut) {
  Result<std::string> text = std::string("bead");
  text->append("s");
  EXPECT_EQ(text.value(), "beads");
  Result<std::unique_ptr<int>> owner = std::make_unique<int>(7);
  const std::unique_ptr<int> taken = std::move(owner).value();
  EXPECT_EQ(*taken, 7);
}

TEST(ResultDeathTest, AskingAFailureForItsValueIsOurFault) {
#ifndef NDEBUG
  const Result<int> failed = Problem{ProblemCode::bad_text};
  EXPECT_DEATH((void)failed.value(), "");
  const Result<int> value = 3;
  EXPECT_DEATH((void)value.problem(), "");
#endif
}

}  // namespace
}  // namespace evencount
