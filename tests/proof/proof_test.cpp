#include "proof/proof.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <set>

#include "base/text.hpp"
#include "project/case_file.hpp"
#include "project/json.hpp"
#include "project/random_project.hpp"

namespace evencount::proof {
namespace {

// The same cases in every run.
const int seeded = setenv("RC_PARAMS", "seed=77 max_success=300", 0);

std::string line_of(const Finding& finding) {
  return fmt::format("{} {} | {}", severity_name(finding.severity), finding.check, finding.where);
}

project::Project clean_project() {
  return *project::parse_project(testing::read_case(EVENCOUNT_CASES_DIR "/proof/clean.case").input);
}

/// What only code can hold: files with broken references are not read.
std::vector<std::string> lines_after(void (*change)(project::Project&)) {
  project::Project project = clean_project();
  change(project);
  std::vector<std::string> lines;
  for (const Finding& finding : proof(project)) lines.push_back(line_of(finding));
  return lines;
}

/// Fonts that lack a moon.
std::string no_moon(std::string_view text, Typeface) {
  constexpr std::string_view moon = "\U0001F319";
  return text.find(moon) == std::string_view::npos ? "" : std::string(moon);
}

TEST(proof_cases, each_gives_exactly_its_findings) {
  std::set<std::string, std::less<>> triggered;
  for (const auto& test : testing::read_cases(EVENCOUNT_CASES_DIR "/proof")) {
    SCOPED_TRACE(test.file + ": " + test.one("name"));
    EXPECT_FALSE(test.one("why").empty());
    const auto project = project::parse_project(test.input);
    if (!project) {
      ADD_FAILURE() << message(project.problem());
      continue;
    }
    std::vector<std::string> lines;
    std::string said;
    bool errors = false;
    for (const Finding& finding : proof(*project, {.first_unshown = no_moon})) {
      lines.push_back(line_of(finding));
      said += finding.message + "\n";
      triggered.insert(finding.check);
      errors = errors || finding.severity == Severity::error;
    }
    EXPECT_EQ(lines, test.all("finding")) << said;
    EXPECT_EQ(has_errors(proof(*project, {.first_unshown = no_moon})), errors);
    for (const std::string& part : test.all("says"))
      EXPECT_NE(said.find(part), std::string::npos) << "not said: " << part << "\n" << said;
  }
  // These two need what no file can hold.
  for (const Check& check : checks())
    if (check.name != "references" && check.name != "words") {
      EXPECT_TRUE(triggered.contains(check.name)) << check.name << " has no case";
    }
}

TEST(proof, names_that_nothing_has_are_errors_and_silence_what_relies_on_them) {
  using Lines = std::vector<std::string>;
  EXPECT_EQ(lines_after([](project::Project& p) { p.bands[0].technique = "knotting"; }),
            (Lines{"error references | band New moon"}));
  EXPECT_EQ(lines_after([](project::Project& p) { p.bands[0].bead = "round-6"; }),
            (Lines{"error references | band New moon"}));
  EXPECT_EQ(lines_after([](project::Project& p) { p.bands[0].form = "moon"; }),
            (Lines{"error references | band New moon"}));
  EXPECT_EQ(lines_after([](project::Project& p) { p.legend[1].bead = "round-6"; }),
            (Lines{"error references | legend B"}));
  EXPECT_EQ(lines_after([](project::Project& p) {
              p.bands[0].chart.set({3, 2}, 2);
            }),
            (Lines{"error references | band New moon, column 3, step 2"}));
}

TEST(proof, words_that_do_not_rebuild_the_chart_are_an_error) {
  using Lines = std::vector<std::string>;
  EXPECT_EQ(lines_after([](project::Project& p) { p.legend[1].letter = "A"; }),
            (Lines{"error words | band New moon"}));
  EXPECT_EQ(lines_after([](project::Project& p) { p.legend[1].letter = "9"; }),
            (Lines{"error words | band New moon"}));
}

TEST(proof, errors_come_first_and_the_order_is_kept_otherwise) {
  project::Project project = clean_project();
  project.title.clear();
  project.bands.push_back(project.bands[0]);
  project.legend.push_back(project.legend[0]);
  project.legend.back().letter = "C";
  std::vector<std::string> checks_found;
  for (const Finding& finding : proof(project)) checks_found.push_back(finding.check);
  EXPECT_EQ(checks_found, (std::vector<std::string>{"bands", "title", "unused"}));
}

TEST(proof, every_check_says_what_it_is_for) {
  std::set<std::string_view> names;
  for (const Check& check : checks()) {
    EXPECT_TRUE(names.insert(check.name).second);
    EXPECT_TRUE(check.purpose.ends_with("."));
  }
}

RC_GTEST_PROP(proof_properties, any_project_gets_findings_that_can_be_read, (std::uint64_t seed)) {
  const project::Project project = testing::random_project(seed);
  const auto findings = proof(project);
  RC_ASSERT(std::is_sorted(findings.begin(), findings.end(),
                           [](const Finding& a, const Finding& b) { return a.severity < b.severity; }));
  for (const Finding& finding : findings) {
    RC_ASSERT(!finding.where.empty());
    RC_ASSERT(finding.message.ends_with("."));
    RC_ASSERT(is_utf8(finding.message));
    RC_ASSERT(finding.message.find("report it") == std::string::npos);
  }
}

}  // namespace
}  // namespace evencount::proof
