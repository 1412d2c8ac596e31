#include "proof/place.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "project/case_file.hpp"
#include "project/json.hpp"

namespace evencount::proof {
namespace {

project::Project from_case(const std::string& name) {
  return *project::parse_project(testing::read_case(EVENCOUNT_CASES_DIR "/proof/" + name + ".case").input);
}

/// The place of a case's first finding of that check.
Place place_in(const project::Project& project, const std::string& check) {
  const auto findings = proof(project);
  const auto found =
      std::find_if(findings.begin(), findings.end(), [&](const Finding& one) { return one.check == check; });
  EXPECT_NE(found, findings.end()) << check;
  return found == findings.end() ? Place{} : place_of(project, *found);
}

TEST(ProofPlace, EachFaultIsFound) {
  EXPECT_EQ(place_in(from_case("width-wider"), "width").band, 0u);
  EXPECT_EQ(place_in(from_case("difference-low"), "difference").letters.size(), 2u);
  EXPECT_EQ(place_in(from_case("unused"), "unused").letters.size(), 1u);
  EXPECT_EQ(place_in(from_case("bands-no-name"), "bands").band, 0u);
  EXPECT_EQ(place_in(from_case("bands-same-name"), "bands").band, 1u);
  EXPECT_EQ(place_in(from_case("bands-none"), "bands"), Place{});
  EXPECT_EQ(place_in(from_case("thread-tails"), "thread"), Place{});
  EXPECT_TRUE(place_in(from_case("passes-too-many"), "passes").cell);
  const Place broken = place_in(from_case("strand-broken"), "strand");
  EXPECT_EQ(broken.line, 2);
  EXPECT_TRUE(broken.column);
  EXPECT_EQ(place_in(from_case("strand-does-not-close"), "strand").size, "M");
  const Place lost = place_in(from_case("strand-band-not-held"), "strand");
  EXPECT_EQ(lost.band, 0u);
  EXPECT_TRUE(lost.piece);
}

TEST(ProofPlace, NamesMayHoldAnything) {
  project::Project project = from_case("bands-same-name");
  project.bands[0].name = "Moon";
  project.bands[1].name = "Moon, row 7: column 2, step 3 and\nmore";
  const auto at = [&](const std::string& where) {
    return place_of(project, {Severity::error, "plan", where, ""});
  };
  EXPECT_EQ(at("band Moon, row 14").band, 0u);
  EXPECT_EQ(at("band Moon, row 14").row, 14);
  const Place second = at("band Moon, row 7: column 2, step 3 and more, column 1, step 9");
  EXPECT_EQ(second.band, 1u);
  EXPECT_EQ(second.row, std::nullopt);
  EXPECT_EQ(second.cell, (chart::Cell{1, 9}));
  for (const char* where :
       {"", "band", "band ", "band Sun", "band 9999999999999999999 in order", "band 0 in order", "legend",
        "legend Q and ", "strand", "strand, size", "strand, size M", "strand: line x", "project", "thread"})
    EXPECT_EQ(at(where), Place{}) << where;
}

}  // namespace
}  // namespace evencount::proof
