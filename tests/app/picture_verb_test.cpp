/// From a picture's file to a band in beads that can be had.

#include <gtest/gtest.h>

#include <filesystem>

#include "app/run.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::app {
namespace {

using namespace evencount::testing;
using nlohmann::json;

const std::string moon = std::string(EVENCOUNT_SOURCE_DIR) + "/docs/pictures/full-moon.png";

class PictureVerb : public ::testing::Test {
 protected:
  PictureVerb() {
    spill(stock, "#17233f night\n#efe3b4 moon\n#4f8f91 tide\n#ffffff chalk\n#000000 jet\n#c08a3e amber\n");
  }
  std::vector<std::string> arguments(std::vector<std::string> more) const {
    std::vector<std::string> all{"picture", moon, project, "--stock", stock, "--columns", "12", "--edge", "16", "--json"};
    all.insert(all.end(), more.begin(), more.end());
    return all;
  }
  TemporaryFolder folder;
  std::string stock = folder / "stock.txt", project = folder / "p.evencount.json";
};

TEST_F(PictureVerb, MakesABandInTheStocksColours) {
  const Ran ran = run(arguments({"--colours", "3", "--name", "Moon"}));
  ASSERT_EQ(ran.status, exit_done) << ran.err;
  const json made = ran.json();
  EXPECT_LE(made["bound"].get<double>(), made["mean"].get<double>() + 1e-4);
  EXPECT_TRUE(made["optimal"].get<bool>());
  EXPECT_EQ(made["colours"].size(), 3u);
  int cells = 0;
  for (const json& colour : made["colours"]) cells += colour["cells"].get<int>();
  EXPECT_EQ(cells, 12 * 16);
  const json saved = json::parse(slurp(project));
  EXPECT_EQ(saved["bands"][0]["name"], "Moon");
  EXPECT_EQ(saved["bands"][0]["columns"], 12);
  const Ran proof = run({"proof", project});
  EXPECT_NE(proof.status, exit_bad_input) << proof.err;
  EXPECT_EQ(proof.out.find("error"), std::string::npos) << proof.out;
}

TEST_F(PictureVerb, KeepsToWhatIsRequiredAndForbidden) {
  const json made = run(arguments({"--colours", "2", "--require", "amber", "--forbid", "#ffffff"})).json();
  std::vector<std::string> names;
  for (const json& colour : made["colours"]) names.push_back(colour["name"]);
  EXPECT_NE(std::find(names.begin(), names.end(), "amber"), names.end());
  EXPECT_EQ(std::find(names.begin(), names.end(), "chalk"), names.end());
  const Ran unknown = run(arguments({"--require", "plum"}));
  EXPECT_EQ(unknown.status, exit_bad_input);
  EXPECT_NE(unknown.err.find("plum"), std::string::npos);
}

TEST_F(PictureVerb, TheTableNeverGrowsAndSavesNothing) {
  const Ran ran = run(arguments({"--table"}));
  ASSERT_EQ(ran.status, exit_done) << ran.err;
  double last = 1e9;
  const json table = ran.json();
  for (const json& one : table["choices"]) {
    EXPECT_LE(one["mean"].get<double>(), last + 1e-4);
    EXPECT_LE(one["bound"].get<double>(), one["mean"].get<double>() + 1e-4);
    last = one["mean"];
  }
  EXPECT_FALSE(std::filesystem::exists(project));
}

TEST_F(PictureVerb, WhatIsNoPictureIsRefusedAndNothingIsWritten) {
  const auto refused = [&](const std::string& image) {
    const Ran ran = run({"picture", image, project, "--stock", stock, "--columns", "12", "--edge", "16"});
    EXPECT_EQ(ran.status, exit_bad_input) << ran.err;
    EXPECT_NE(ran.err.find(image), std::string::npos) << ran.err;
    EXPECT_FALSE(std::filesystem::exists(project));
  };
  refused(stock);
  const std::string cut = folder / "cut.png";
  spill(cut, slurp(moon).substr(0, 400));
  refused(cut);
  const std::string named = folder / "drawing.png";
  spill(named, "<svg xmlns='http://www.w3.org/2000/svg'><image href='http://example.invalid/a.png'/></svg>");
  refused(named);
}

TEST_F(PictureVerb, ABandIsLettered) {
  const std::vector<std::string> band{"band", project,    "--columns", "11", "--edge", "12", "--colour", "A=#22304f:night",
                                      "--colour", "B=#efe3b4:moon", "--text"};
  const auto with = [&](std::vector<std::string> more) {
    std::vector<std::string> all = band;
    all.insert(all.end(), more.begin(), more.end());
    return run(all);
  };
  const Ran ran = with({"12", "--name", "Twelve"});
  ASSERT_EQ(ran.status, exit_done) << ran.err;
  const json saved = json::parse(slurp(project));
  const json& cells = saved["bands"][0]["cells"];
  EXPECT_EQ(cells.front(), "11A");
  EXPECT_NE(cells.dump().find('B'), std::string::npos);
  const Ran wide = with({"WAXING"});
  EXPECT_EQ(wide.status, exit_bad_input);
  EXPECT_NE(wide.err.find("at most 11 columns"), std::string::npos) << wide.err;
  EXPECT_EQ(with({"1", "--text-letter", "Q"}).status, exit_bad_input);
  EXPECT_EQ(with({"1", "--alphabet", "nine"}).status, exit_bad_input);
}

TEST_F(PictureVerb, ChartsAreDrawnAsColourBlindEyesSeeThem) {
  ASSERT_EQ(run(arguments({"--colours", "4"})).status, exit_done);
  const auto drawn = [&](std::vector<std::string> more) {
    const std::string file = folder / "chart.svg";
    std::vector<std::string> all{"draw", project, "-o", file};
    all.insert(all.end(), more.begin(), more.end());
    const Ran ran = run(all);
    return ran.status == exit_done ? slurp(file) : ran.err;
  };
  const std::string plain = drawn({});
  for (const char* eyes : {"protan", "deutan", "tritan"}) EXPECT_NE(drawn({"--seen", eyes}), plain) << eyes;
  EXPECT_NE(drawn({"--seen", "cat"}).find("protan, deutan or tritan"), std::string::npos);
}

}  // namespace
}  // namespace evencount::app
