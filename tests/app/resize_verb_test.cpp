#include <gtest/gtest.h>

#include <filesystem>

#include "app/project_file.hpp"
#include "app/run.hpp"
#include "project/resize.hpp"
#include "support/temporary_folder.hpp"

namespace evencount {
namespace {

using testing::example;
using testing::run;
using testing::slurp;
using testing::spill;
using testing::TemporaryFolder;

class ResizeVerb : public ::testing::Test {
 protected:
  [[nodiscard]] std::string path(const std::string& name) const { return folder_ / name; }

  TemporaryFolder folder_;
};

TEST_F(ResizeVerb, WritesANewProjectAndLeavesTheOldOne) {
  const std::string before = slurp(example("moonwatch"));
  const auto ran = run({"resize", example("moonwatch"), "-o", path("new.json"), "--bead", "cylinder-15"});
  EXPECT_EQ(ran.status, 0) << ran.err;
  EXPECT_NE(ran.out.find("8 of 8 bands resized"), std::string::npos) << ran.out;
  EXPECT_NE(ran.out.find("takes   28 along the edge"), std::string::npos) << ran.out;
  EXPECT_EQ(slurp(example("moonwatch")), before);
  EXPECT_EQ(run({"proof", path("new.json")}).status, 0);
}

TEST_F(ResizeVerb, RefusesAFileThatIsThereUnlessAsked) {
  spill(path("there.json"), "mine");
  const std::vector<std::string> asked{"resize", example("moonwatch"), "-o", path("there.json"),
                                       "--bead", "cylinder-15"};
  const auto refused = run(asked);
  EXPECT_EQ(refused.status, 3);
  EXPECT_NE(refused.err.find("--overwrite"), std::string::npos);
  EXPECT_EQ(slurp(path("there.json")), "mine");
  auto plainly = asked;
  plainly.push_back("--overwrite");
  EXPECT_EQ(run(plainly).status, 0);
  EXPECT_NE(slurp(path("there.json")), "mine");
}

TEST_F(ResizeVerb, TheChangesInJsonMakeTheNewChartOfThePlainOne) {
  const auto ran =
      run({"resize", example("moonwatch"), "-o", path("new.json"), "--bead", "cylinder-10", "--json"});
  ASSERT_EQ(ran.status, 0) << ran.err;
  const auto report = ran.json();
  const auto old = *app::load_project(example("moonwatch")), fresh = *app::load_project(path("new.json"));
  const auto letters = project::letters_of(fresh);
  ASSERT_EQ(report["bands"].size(), 8u);
  for (std::size_t i = 0; i < 8; ++i) {
    const auto& band = report["bands"][i];
    EXPECT_EQ(band["name"], fresh.bands[i].name);
    EXPECT_EQ(band["after"]["columns"], fresh.bands[i].chart.columns());
    EXPECT_EQ(band["after"]["edge"], fresh.bands[i].chart.edge());
    int taken = 0;
    for (const auto& candidate : band["candidates"]) taken += candidate["taken"].get<bool>();
    EXPECT_EQ(taken, 1);
    const auto& carry = band["carry"];
    EXPECT_EQ(carry["changes"].size(), carry["changed"]["area"].get<std::size_t>() +
                                           carry["changed"]["line"].get<std::size_t>() +
                                           carry["changed"]["fresh"].get<std::size_t>());
    for (const auto& change : carry["changes"])
      EXPECT_EQ(letters[fresh.bands[i].chart.at({change["column"].get<int>(), change["step"].get<int>()})],
                change["after"]);
  }
}

TEST_F(ResizeVerb, OneBandIsCarriedAnotherWay) {
  const auto ran = run({"resize", example("moonwatch"), "-o", path("new.json"), "--bead",
                        "cylinder-11=cylinder-15", "--carry", "repeat", "--carry", "Full moon=centre",
                        "--border", "b", "--edge", "Full moon=29", "--columns", "New moon=6", "--json"});
  ASSERT_EQ(ran.status, 0) << ran.err;
  const auto report = ran.json();
  for (const auto& band : report["bands"])
    EXPECT_EQ(band["carry"]["method"], band["name"] == "Full moon" ? "centre" : "repeat");
  const auto fresh = *app::load_project(path("new.json"));
  EXPECT_EQ(project::find_band(fresh, "Full moon")->chart.edge(), 29);
  EXPECT_EQ(project::find_band(fresh, "Full moon")->chart.at({0, 0}), 1);
  EXPECT_EQ(project::find_band(fresh, "New moon")->chart.columns(), 6);
}

TEST_F(ResizeVerb, BriefCountsWithoutListing) {
  const auto all = run({"resize", example("moonwatch"), "-o", path("a.json"), "--bead", "cylinder-10"});
  const auto brief =
      run({"resize", example("moonwatch"), "-o", path("b.json"), "--bead", "cylinder-10", "--brief"});
  EXPECT_NE(all.out.find("    step "), std::string::npos);
  EXPECT_EQ(brief.out.find("    step "), std::string::npos);
}

TEST_F(ResizeVerb, WhatIsWrongIsNamedAndNothingIsWritten) {
  const std::string out = path("new.json");
  for (const std::vector<std::string>& wrong :
       std::vector<std::vector<std::string>>{{"--bead", "glass-11"},
                                             {"--bead", "seed=round-8"},
                                             {"--bead", "round-8", "--bead", "round-6"},
                                             {"--form", "other=lens:16x5x9"},
                                             {"--form", "lens:16"},
                                             {"--form", "lens:4x1x2"},
                                             {"--carry", "stretch"},
                                             {"--carry", "No band=repeat"},
                                             {"--flat", "both"},
                                             {"--edge", "29"},
                                             {"--edge", "Full moon=0"},
                                             {"--columns", "Full moon=7"},
                                             {"--border", "Q"}}) {
    std::vector<std::string> arguments{"resize", example("moonwatch"), "-o", out};
    arguments.insert(arguments.end(), wrong.begin(), wrong.end());
    const auto ran = run(arguments);
    EXPECT_TRUE(ran.status == 2 || ran.status == 1) << wrong[0] << " " << wrong[1] << ran.status;
    EXPECT_TRUE(ran.err.starts_with("evencount: ")) << ran.err;
    EXPECT_FALSE(std::filesystem::exists(out)) << wrong[1];
  }
}

}  // namespace
}  // namespace evencount
