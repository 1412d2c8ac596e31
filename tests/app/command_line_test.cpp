#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "app/run.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::app {
namespace {

using namespace evencount::testing;
using nlohmann::json;

TEST(CommandLine, FitOfTheCarrierBead) {
  // "Carrier bead mania", zinio.com/ch-de/explore/beadbutton/june-2018-i388547/carrier-bead-mania-a9620: 6 wide, 48 or 50 rows.
  const Ran ran = run({"fit", "lens:17x5x9", "--bead", "cylinder-11", "--json"});
  ASSERT_EQ(ran.status, exit_done) << ran.err;
  const json fit = ran.json();
  EXPECT_EQ(fit["form"], "lens:17x5x9");
  EXPECT_EQ(fit["bead"], "cylinder-11");
  EXPECT_EQ(fit["columns"], 6);
  EXPECT_EQ(fit["rows"], 2 * fit["edge"].get<int>());
  EXPECT_EQ(fit["beads"], 6 * fit["edge"].get<int>());
  std::vector<int> closing;
  for (const json& candidate : fit["candidates"]) {
    EXPECT_EQ(candidate["rows"], 2 * candidate["edge"].get<int>());
    if (candidate["closes"]) closing.push_back(candidate["edge"]);
  }
  EXPECT_NE(std::find(closing.begin(), closing.end(), 24), closing.end());
  EXPECT_NE(std::find(closing.begin(), closing.end(), 25), closing.end());
  EXPECT_EQ(fit["candidates"][0]["edge"], fit["edge"]) << "best first";
  EXPECT_TRUE(fit["candidates"][0]["closes"]);
  for (const char* field : {"gauge", "width_mm", "reveal_mm", "verdict"})
    EXPECT_TRUE(fit.contains(field)) << field;
  for (const char* field : {"column_mm", "edge_mm", "source"})
    EXPECT_TRUE(fit["gauge"].contains(field)) << field;
  for (const char* field : {"strain", "slack_mm", "chance", "verdict"})
    EXPECT_TRUE(fit["candidates"][0].contains(field)) << field;
}

TEST(CommandLine, FitOfARoundFormIsTheRegularPolygon) {
  const json fit = run({"fit", "round:12x20", "--bead", "cylinder-11", "--json"}).json();
  const double radius = 6 + 0.8, edge_mm = fit["gauge"]["edge_mm"];
  for (const json& candidate : fit["candidates"]) {
    const int n = candidate["edge"];
    const double chord = 2 * radius * std::sin(std::numbers::pi / n);
    EXPECT_NEAR(candidate["strain"].get<double>(), chord / edge_mm - 1, 1e-5) << n;
  }
}

TEST(CommandLine, NothingThatClosesIsAFinding) {
  const Ran ran = run({"fit", "round:4.5x20", "--bead", "cylinder-8", "--use", "sliding", "--json"});
  EXPECT_EQ(ran.status, exit_findings) << ran.out;
  EXPECT_FALSE(ran.json()["candidates"].empty());
}

TEST(CommandLine, FromABlankBandToItsBooklet) {
  const TemporaryFolder folder;
  const std::string project = folder / "p.evencount.json";
  ASSERT_EQ(run({"band", project, "--name", "Tide", "--form", "lens:16x5x9", "--use", "sliding", "--colour",
                 "A=#17233f:night", "--colour", "B=#f3e9cf:moon"})
                .status,
            exit_done);
  const Ran proof = run({"proof", project, "--json"});
  EXPECT_EQ(proof.status, exit_done) << proof.out;
  const Ran words = run({"words", project});
  ASSERT_EQ(words.status, exit_done) << words.err;
  EXPECT_NE(words.out.find("Rows 1–2 (L): (6)A"), std::string::npos) << words.out;
  const Ran booklet = run({"booklet", project, "-o", folder / "p.pdf"});
  ASSERT_EQ(booklet.status, exit_done) << booklet.err;
  EXPECT_EQ(slurp(folder / "p.pdf").substr(0, 5), "%PDF-");
}

TEST(CommandLine, AMotifIsDrawnAndTheWordsMakeItAgain) {
  const TemporaryFolder folder;
  const std::string project = folder / "p.evencount.json";
  spill(folder / "motif.txt", "B..B\n.BB.\n");
  ASSERT_EQ(run({"band", project, "--name", "One", "--columns", "6", "--edge", "5", "--colour", "A=#17233f",
                 "--colour", "B=#f3e9cf", "--motif", folder / "motif.txt", "--at", "2"})
                .status,
            exit_done);
  const json saved = json::parse(slurp(project));
  EXPECT_EQ(saved["bands"][0]["cells"], json({"6A", "6A", "1A 1B 2A 1B 1A", "2A 2B 2A", "6A"}));
  ASSERT_EQ(run({"words", project, "-o", folder / "words.txt"}).status, exit_done);
  const Ran again = run({"band", project, "--name", "Two", "--words", folder / "words.txt"});
  ASSERT_EQ(again.status, exit_done) << again.err;
  const json both = json::parse(slurp(project));
  EXPECT_EQ(both["bands"][1]["cells"], saved["bands"][0]["cells"]);
  EXPECT_EQ(run({"read", folder / "words.txt", "--against", project}).status, exit_findings)
      << "the second band is not in the words";
}

TEST(CommandLine, RowsAreCountedAsTheTechniqueCountsThem) {
  const TemporaryFolder folder;
  const std::string project = folder / "p.evencount.json";
  const auto band = [&](const std::vector<std::string>& more) {
    std::vector<std::string> all{"band", project, "--name", "Band"};
    all.insert(all.end(), more.begin(), more.end());
    return run(all);
  };
  // In peyote two rows make a bead along the edge; in two-drop the last row may be half of the pairs.
  EXPECT_EQ(band({"--open", "--columns", "6", "--rows", "9"}).status, exit_done);
  const Ran pairs = band({"--technique", "two-drop-even-count", "--open", "--columns", "8", "--rows", "11"});
  EXPECT_EQ(pairs.status, exit_done) << pairs.err;
  EXPECT_NE(run({"words", project}).out.find("11 rows"), std::string::npos);
  // Square stitch has a row to each bead along the edge: --rows would not mean what it says.
  const std::string before = slurp(project);
  const Ran square = band({"--technique", "square", "--columns", "4", "--rows", "10"});
  EXPECT_EQ(square.status, exit_bad_input);
  EXPECT_NE(square.err.find("5 rows of 5 beads along the edge"), std::string::npos) << square.err;
  EXPECT_EQ(slurp(project), before);
}

TEST(CommandLine, WhatIsGivenWinsOverWhatFits) {
  const TemporaryFolder folder;
  const std::string project = folder / "p.evencount.json", words = folder / "words.txt";
  // No number of these beads closes well round so thin a form, but whoever gives a size may have it.
  EXPECT_EQ(run({"band", project, "--form", "round:0.5x20", "--bead", "cylinder-8"}).status, exit_findings);
  const Ran given = run({"band", project, "--form", "round:0.5x20", "--bead", "cylinder-8", "--edge", "7", "--name", "Thin"});
  EXPECT_EQ(given.status, exit_done) << given.err;
  EXPECT_NE(given.out.find("7 along the edge"), std::string::npos) << given.out;
  // Words that say "zipped" make an open band when that is asked for.
  ASSERT_EQ(run({"words", example("moonwatch"), "--band", "New moon", "-o", words}).status, exit_done);
  const std::string colours = "--colour";
  std::vector<std::string> open{"band", project, "--words", words, "--name", "Again", "--open"};
  for (const char* letter : {"A", "B", "C", "D", "E", "F", "G", "H", "I", "J"}) {
    open.push_back(colours);
    open.push_back(std::string(letter) + "=#102030");
  }
  const Ran again = run(open);
  ASSERT_EQ(again.status, exit_done) << again.err;
  EXPECT_NE(run({"words", project, "--band", "Again"}).out.find("48 rows, open"), std::string::npos);
}

TEST(CommandLine, SuppliesCountEveryCellOfTheDemo) {
  const json project = json::parse(slurp(example("moonwatch")));
  std::map<std::string, int> cells;
  for (const json& band : project["bands"]) {
    for (const json& step : band["cells"]) {
      std::istringstream runs(step.get<std::string>());
      for (std::string run_text; runs >> run_text;) {
        std::size_t digits = 0;
        const int count = std::stoi(run_text, &digits);
        cells[run_text.substr(digits)] += count;
      }
    }
  }
  for (const int kits : {1, 12}) {
    const Ran ran = run({"supplies", example("moonwatch"), "--kits", std::to_string(kits), "--json"});
    ASSERT_EQ(ran.status, exit_done) << ran.err;
    int total = 0;
    const json supplies = ran.json();
    for (const json& bead : supplies["beads"]) {
      EXPECT_EQ(bead["count"].get<int>(), kits * cells.at(bead["letter"])) << bead;
      EXPECT_GE(bead["grams"].get<double>() * 195, bead["count"].get<int>()) << bead;
      total += bead["count"].get<int>();
    }
    EXPECT_EQ(total, kits * 8 * 6 * 24);
  }
}

TEST(CommandLine, ThreadOfACarrierBandIsUnderAYard) {
  // "Carrier bead mania", as above: 144-150 beads, one yard of thread suffices.
  const Ran ran = run({"thread", example("moonwatch"), "--json"});
  ASSERT_EQ(ran.status, exit_done) << ran.err;
  const json threads = ran.json();
  for (const json& band : threads["bands"]) {
    EXPECT_LT(band["cut_mm"].get<double>(), 914.4) << band;
    EXPECT_GT(band["length_mm"].get<double>(), 24 * 2 * 8.1) << "every row crosses the band: " << band;
    EXPECT_LE(band["max_passes"].get<int>(), band["capacity"].get<int>());
    EXPECT_EQ(band["lengths"].size(), 1u);
  }
}

TEST(CommandLine, DrawingsComeInEachFormat) {
  const TemporaryFolder folder;
  const std::vector<std::pair<std::string, std::string>> kinds{
      {"x.svg", "<?xml"}, {"x.png", "\x89PNG"}, {"x.pdf", "%PDF-"}};
  for (const auto& [name, head] : kinds) {
    for (const char* what : {"chart", "band", "steps"}) {
      const Ran ran =
          run({"draw", example("moonwatch"), "--band", "Full moon", "--what", what, "-o", folder / name});
      ASSERT_EQ(ran.status, exit_done) << ran.err;
      EXPECT_EQ(slurp(folder / name).substr(0, head.size()), head);
    }
  }
}

TEST(CommandLine, EveryVerbExplainsItself) {
  for (const char* verb :
       {"fit", "band", "words", "read", "thread", "supplies", "proof", "draw", "booklet"}) {
    const Ran ran = run({verb, "--help"});
    EXPECT_EQ(ran.status, exit_done) << verb;
    EXPECT_GT(ran.out.size(), 100u) << verb;
  }
}

}  // namespace
}  // namespace evencount::app
