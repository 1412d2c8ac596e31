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

TEST_F(PictureVerb, MixesOrSmooths) {
  const json plain = run(arguments({"--colours", "4"})).json();
  const json mixed = run(arguments({"--colours", "4", "--mix"})).json();
  EXPECT_LT(mixed["mixed"]["viewing_after"].get<double>(), mixed["mixed"]["viewing_before"].get<double>());
  EXPECT_GT(mixed["mixed"]["cells"].get<int>(), 0);
  EXPECT_GT(mixed["mean"].get<double>(), plain["mean"].get<double>());
  EXPECT_EQ(mixed["bound"], plain["bound"]);
  const json smoothed = run(arguments({"--colours", "4", "--smooth", "--strength", "0"})).json();
  EXPECT_LE(smoothed["smoothed"]["alone_after"].get<int>(), smoothed["smoothed"]["alone_before"].get<int>());
  EXPECT_LE(smoothed["mean"].get<double>(), 1.0101 * plain["mean"].get<double>());
  EXPECT_EQ(run(arguments({"--mix", "--smooth"})).status, exit_bad_input);
}

TEST_F(PictureVerb, KeepsToWhatIsOnHand) {
  const auto cells_of = [&](const json& made, const std::string& name) {
    int cells = 0;
    for (const json& colour : made["colours"])
      if (colour["name"] == name) cells = colour["cells"];
    return cells;
  };
  EXPECT_GT(cells_of(run(arguments({})).json(), "night"), 7);
  EXPECT_LE(cells_of(run(arguments({"--on-hand", "night=7"})).json(), "night"), 7);
  for (const char* wrong : {"night", "night=-1", "night=1.5", "night=x", "plum=4"})
    EXPECT_EQ(run(arguments({"--on-hand", wrong})).status, exit_bad_input) << wrong;
  const Ran few = run(arguments({"--colours", "1", "--on-hand", "night=7", "--require", "night"}));
  EXPECT_EQ(few.status, exit_bad_input);
  EXPECT_NE(few.err.find("bead"), std::string::npos) << few.err;
}

TEST_F(PictureVerb, CoversAFaceOfABandAndLeavesTheRest) {
  ASSERT_EQ(run({"band", project, "--name", "Ring", "--form", "lens:17x5x9", "--colour", "A=#8fa3ad:mist"}).status, exit_done);
  const auto with = [&](std::vector<std::string> more) {
    std::vector<std::string> all{"picture", moon, project, "--stock", stock, "--name", "Ring"};
    all.insert(all.end(), more.begin(), more.end());
    return run(all);
  };
  const auto changed = [&](std::size_t from, std::size_t to) {
    const json saved = json::parse(slurp(project));
    int count = 0;
    for (std::size_t step = from; step < to; ++step) count += saved["bands"][0]["cells"][step] != "6A";
    return count;
  };
  ASSERT_EQ(with({"--face", "back"}).status, exit_done);
  EXPECT_EQ(changed(0, 13), 0);
  EXPECT_GT(changed(13, 24), 5);
  ASSERT_EQ(with({"--at", "2", "--steps", "4"}).status, exit_done);
  EXPECT_EQ(changed(0, 2), 0);
  EXPECT_GT(changed(2, 6), 1);
  EXPECT_EQ(changed(6, 13), 0);
  EXPECT_EQ(with({"--face", "side"}).status, exit_bad_input);
  EXPECT_EQ(with({"--face", "back", "--at", "3"}).status, exit_bad_input);
  EXPECT_EQ(with({"--at", "24"}).status, exit_bad_input);
  EXPECT_EQ(with({"--columns", "6"}).status, exit_bad_input);
  EXPECT_EQ(with({"--name", "Bracelet"}).status, exit_bad_input);
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
  const auto lettered = [&](const std::string& columns, const std::string& edge, std::vector<std::string> more) {
    std::vector<std::string> all{"band", project,    "--columns", columns, "--edge", edge, "--colour", "A=#22304f:night",
                                 "--colour", "B=#efe3b4:moon", "--text"};
    all.insert(all.end(), more.begin(), more.end());
    return run(all);
  };
  const auto with = [&](std::vector<std::string> more) { return lettered("11", "12", std::move(more)); };
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
  // Letters that few beads tell apart are named; a font that isn't installed is refused.
  EXPECT_EQ(with({"12"}).err, "");
  const Ran font = lettered("31", "14", {"12", "--font", "Lato", "--bold", "--name", "Lato"});
  ASSERT_EQ(font.status, exit_done) << font.err;
  const Ran coarse = lettered("31", "14", {"ocea", "--font", "Lato", "--capital-height", "6mm"});
  ASSERT_EQ(coarse.status, exit_done) << coarse.err;
  EXPECT_NE(coarse.err.find("can be taken for"), std::string::npos) << coarse.err;
  const Ran unknown = with({"1", "--font", "No Such Font"});
  EXPECT_EQ(unknown.status, exit_bad_input);
  EXPECT_NE(unknown.err.find("No Such Font"), std::string::npos) << unknown.err;
}

TEST_F(PictureVerb, ABandIsStampedOnAnother) {
  const auto band = [&](const std::string& name, std::vector<std::string> more) {
    std::vector<std::string> all{"band", project, "--name", name, "--colour", "A=#22304f:night", "--colour", "B=#efe3b4:moon"};
    all.insert(all.end(), more.begin(), more.end());
    return run(all);
  };
  const auto cells_of = [&](std::size_t which) {
    const json saved = json::parse(slurp(project));
    return saved["bands"].at(which)["cells"];
  };
  const std::string motif = folder / "motif.txt";
  spill(motif, ".BB...\nBBBB..\n");
  ASSERT_EQ(band("First", {"--columns", "6", "--edge", "8", "--motif", motif}).status, exit_done);
  ASSERT_EQ(band("Second", {"--columns", "6", "--edge", "8", "--fill", "B"}).status, exit_done);
  // Stamped on a band that is there: nothing else of it changes.
  const Ran ran = band("Second", {"--stamp", "First", "--stamp-part", "0,0,4,2", "--at", "3", "--at-column", "2"});
  ASSERT_EQ(ran.status, exit_done) << ran.err;
  EXPECT_EQ(cells_of(1), json::parse(R"(["6B","6B","6B","2B 1A 2B 1A","6B","6B","6B","6B"])"));
  ASSERT_EQ(band("Second", {"--stamp", "First", "--stamp-leave", "A", "--at", "7"}).status, exit_done);
  EXPECT_EQ(cells_of(1)[7], "6B");
  EXPECT_EQ(cells_of(0)[0], "1A 2B 3A");
  EXPECT_EQ(band("Second", {"--stamp", "Third"}).status, exit_bad_input);
  EXPECT_EQ(band("Second", {"--stamp", "First", "--stamp-part", "0,0,7,2"}).status, exit_bad_input);
  EXPECT_EQ(band("Second", {"--stamp", "First", "--stamp-part", "0,0"}).status, exit_bad_input);
  // Columns would lose their shift.
  EXPECT_EQ(band("Second", {"--stamp", "First", "--stamp-part", "0,0,4,2", "--at-column", "1"}).status, exit_bad_input);
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
