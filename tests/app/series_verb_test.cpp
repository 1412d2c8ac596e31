#include <gtest/gtest.h>

#include <filesystem>

#include "app/project_file.hpp"
#include "app/run.hpp"
#include "support/temporary_folder.hpp"

namespace evencount {
namespace {

using testing::run;
using testing::slurp;
using testing::spill;
using testing::TemporaryFolder;

const std::string examples = EVENCOUNT_SOURCE_DIR "/examples/series/";

class SeriesVerb : public ::testing::Test {
 protected:
  [[nodiscard]] std::string path(const std::string& name) const { return folder_ / name; }
  [[nodiscard]] std::vector<std::string> with(const std::string& table,
                                              const std::vector<std::string>& more) const {
    std::vector<std::string> arguments{
        "series",   table, "--template", examples + "moon-template.evencount.json",
        "--letter", "D",   "--running",  "down"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    return arguments;
  }

  TemporaryFolder folder_;
};

TEST_F(SeriesVerb, ThirtyMoonsPassTheProof) {
  const auto ran = run(with(examples + "moon.csv", {"-o", path("moons.json")}));
  EXPECT_EQ(ran.status, 0) << ran.err;
  EXPECT_NE(ran.out.find("30 made"), std::string::npos);
  EXPECT_EQ(app::load_project(path("moons.json"))->bands.size(), 30u);
  EXPECT_EQ(run({"proof", path("moons.json")}).status, 0);
  // A file that is there is only written over when that is asked for.
  EXPECT_EQ(run(with(examples + "moon.csv", {"-o", path("moons.json")})).status, 3);
  EXPECT_EQ(run(with(examples + "moon.csv", {"-o", path("moons.json"), "--overwrite"})).status, 0);
}

TEST_F(SeriesVerb, ABadLineWritesNothingOrIsLeftOut) {
  spill(path("set.csv"),
        "name,front,back motif\nOne,1,\nTwo,2,no-such-file.txt\nThree,1234567890,\nFour,4,\n");
  const auto refused = run(with(path("set.csv"), {"-o", path("set.json")}));
  EXPECT_EQ(refused.status, 2);
  EXPECT_NE(refused.err.find("line 3, column back motif"), std::string::npos) << refused.err;
  EXPECT_NE(refused.err.find("line 4, column front"), std::string::npos) << refused.err;
  EXPECT_NE(refused.err.find("nothing was written"), std::string::npos);
  EXPECT_FALSE(std::filesystem::exists(path("set.json")));
  const auto made = run(with(path("set.csv"), {"-o", path("set.json"), "--skip-bad", "--json"}));
  EXPECT_EQ(made.status, 1);
  const auto report = made.json();
  EXPECT_EQ(report["written"], true);
  EXPECT_EQ(report["bands"].size(), 2u);
  EXPECT_EQ(report["problems"].size(), 2u);
  EXPECT_EQ(report["problems"][0]["code"], "file_not_found");
  // The good bands are what they are without the bad lines.
  spill(path("good.csv"), "name,front,back motif\nOne,1,\nFour,4,\n");
  EXPECT_EQ(run(with(path("good.csv"), {"-o", path("good.json")})).status, 0);
  EXPECT_EQ(slurp(path("good.json")), slurp(path("set.json")));
}

TEST_F(SeriesVerb, OntoAProjectKeepsWhatWasEdited) {
  spill(path("set.csv"), "name,front\nOne,1\nTwo,2\n");
  ASSERT_EQ(run(with(path("set.csv"), {"-o", path("set.json")})).status, 0);
  auto project = *app::load_project(path("set.json"));
  project.bands[0].chart.set({0, 3}, 1);
  ASSERT_TRUE(app::save_project(path("set.json"), project).ok());
  spill(path("set.csv"), "name,front\nOne,7\nTwo,8\nThree,9\n");
  const auto ran = run(with(path("set.csv"), {"--onto", path("set.json")}));
  EXPECT_EQ(ran.status, 1);
  EXPECT_NE(ran.out.find("1 made, 1 replaced, 0 as they were, 1 kept"), std::string::npos) << ran.out;
  const auto after = *app::load_project(path("set.json"));
  EXPECT_EQ(after.bands[0], project.bands[0]);
  EXPECT_NE(after.bands[1].chart, project.bands[1].chart);
  EXPECT_EQ(after.bands[2].name, "Three");
  // Into another file, the project stays.
  const std::string before = slurp(path("set.json"));
  EXPECT_EQ(
      run(with(path("set.csv"), {"--onto", path("set.json"), "-o", path("other.json"), "--replace-edited"}))
          .status,
      0);
  EXPECT_EQ(slurp(path("set.json")), before);
  EXPECT_NE(app::load_project(path("other.json"))->bands[0].chart, project.bands[0].chart);
}

TEST_F(SeriesVerb, WhatIsWrongIsNamed) {
  spill(path("set.csv"), "name,front\nOne,1\n");
  for (const std::vector<std::string>& wrong :
       std::vector<std::vector<std::string>>{{},
                                             {"-o", path("x.json"), "--front", "3"},
                                             {"-o", path("x.json"), "--back", "9-3"},
                                             {"-o", path("x.json"), "--front", "3-99"},
                                             {"-o", path("x.json"), "--alphabet", "six"},
                                             {"-o", path("x.json"), "--band", "Dusk"}}) {
    const auto ran = run(with(path("set.csv"), wrong));
    EXPECT_EQ(ran.status, 2) << ran.err;
    EXPECT_FALSE(std::filesystem::exists(path("x.json")));
  }
  spill(path("bad.csv"), "title\nOne\n");
  const auto ran = run(with(path("bad.csv"), {"-o", path("x.json")}));
  EXPECT_EQ(ran.status, 2);
  EXPECT_NE(ran.err.find("bad.csv: line 1"), std::string::npos) << ran.err;
}

TEST_F(SeriesVerb, PaletteComparesLetters) {
  EXPECT_EQ(run({"palette", testing::example("moonwatch"), testing::example("moonwatch-necklace")}).status,
            0);
  auto project = *app::load_project(testing::example("moonwatch"));
  project.legend[2].colour = {1, 2, 3};
  ASSERT_TRUE(app::save_project(path("other.json"), project).ok());
  const auto ran = run({"palette", testing::example("moonwatch"), path("other.json")});
  EXPECT_EQ(ran.status, 1);
  EXPECT_NE(ran.out.find("C  " + path("other.json") + ": another colour"), std::string::npos) << ran.out;
  EXPECT_EQ(run({"palette", testing::example("moonwatch"), path("other.json"), "--json"})
                .json()["conflicts"]
                .size(),
            1u);
  EXPECT_EQ(run({"palette", testing::example("moonwatch")}).status, 2);
}

}  // namespace
}  // namespace evencount
