/// The stockroom from the command line.

#include <gtest/gtest.h>
#include <stdlib.h>

#include <filesystem>

#include "app/run.hpp"
#include "page/output.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::app {
namespace {

using namespace evencount::testing;
using nlohmann::json;

const std::string samples = std::string(EVENCOUNT_SOURCE_DIR) + "/examples/stock/";
const std::string moon = std::string(EVENCOUNT_SOURCE_DIR) + "/docs/pictures/full-moon.png";

class StockVerb : public ::testing::Test {
 protected:
  Ran stock(std::vector<std::string> arguments) const {
    arguments.insert(arguments.begin(), "stock");
    for (const char* word : {"--stock", file.c_str()}) arguments.emplace_back(word);
    return run(arguments);
  }
  json item(const std::string& code) const {
    const json list = stock({"list", code, "--json"}).json();
    for (const json& each : list["items"])
      if (each["code"] == code) return each;
    return nullptr;
  }
  TemporaryFolder folder;
  std::string file = folder / "stock.sqlite";
};

TEST_F(StockVerb, KeepsWhatIsImportedInTheUsersDataFolder) {
  const char* before = ::getenv("XDG_DATA_HOME");
  const std::string kept = before == nullptr ? "" : before;
  ::setenv("XDG_DATA_HOME", (folder / "data").c_str(), 1);
  const Ran ran = run({"stock", "import", samples + "beads.csv"});
  const bool there = std::filesystem::exists(folder / "data/evencount/stock.sqlite");
  if (before == nullptr)
    ::unsetenv("XDG_DATA_HOME");
  else
    ::setenv("XDG_DATA_HOME", kept.c_str(), 1);
  EXPECT_EQ(ran.status, exit_done) << ran.err;
  EXPECT_EQ(ran.out.substr(0, 7), "beads: ");
  EXPECT_TRUE(there);
}

TEST_F(StockVerb, ADryRunListsAndWritesNothing) {
  spill(folder / "b.csv", "code,name,size,finish,counted_g\nN,night,cylinder-11,matte,12.5\n");
  const Ran dry = stock({"import", folder / "b.csv", "--dry-run"});
  EXPECT_EQ(dry.status, exit_done) << dry.err;
  EXPECT_EQ(
      dry.out,
      "+ N  night, cylinder-11, matte, 12.5 g\nbeads: 1 added, 0 changed, 0 unchanged; nothing is written\n");
  EXPECT_TRUE(item("N").is_null());
  ASSERT_EQ(stock({"import", folder / "b.csv"}).status, exit_done);
  EXPECT_EQ(item("N")["on_hand"], 12500);
  spill(folder / "b.csv", "code,name,size,finish,counted_g\nN,nightfall,cylinder-11,matte,12\n");
  EXPECT_EQ(stock({"import", folder / "b.csv", "--dry-run"}).out,
            "~ N  nightfall, cylinder-11, matte\n    name: night -> nightfall\n    counted_g: 12.5 -> 12\n"
            "beads: 0 added, 1 changed, 0 unchanged; nothing is written\n");
  const json answer = stock({"import", folder / "b.csv", "--dry-run", "--json"}).json();
  EXPECT_EQ(answer["items"][0]["changes"][0],
            json({{"field", "name"}, {"before", "night"}, {"after", "nightfall"}}));
  EXPECT_EQ(answer["items"][0]["movement"], -500);
}

TEST_F(StockVerb, BadLinesAreToldByNumber) {
  spill(folder / "b.csv", "code,name,size\nN,night,cylinder-11\nM,moon,cylinder-12\nT,,round-8\n");
  const Ran ran = stock({"import", folder / "b.csv"});
  EXPECT_EQ(ran.status, exit_bad_input);
  EXPECT_NE(ran.err.find("b.csv: line 3: size: found 'cylinder-12'"), std::string::npos) << ran.err;
  EXPECT_NE(ran.err.find("b.csv: line 4: name: found nothing"), std::string::npos) << ran.err;
  EXPECT_TRUE(item("N").is_null());
  const Ran skipped = stock({"import", folder / "b.csv", "--skip-bad", "--json"});
  EXPECT_EQ(skipped.status, exit_findings);
  EXPECT_EQ(skipped.json()["bad_lines"], 2);
  EXPECT_EQ(skipped.json()["faults"][0]["line"], 3);
  EXPECT_FALSE(item("N").is_null());
  EXPECT_EQ(stock({"import", folder / "none.csv"}).status, exit_failure);
  EXPECT_EQ(stock({"import", folder / "b.csv", "--kind", "pearls"}).status, exit_bad_input);
}

TEST_F(StockVerb, ReadsASuppliersTableByAMap) {
  spill(folder / "price-list.csv", "Art.;Bezeichnung;Stern;Preis\n77;Tau;5;3,40\n");
  spill(folder / "map.txt", "# their names, and ours\nArt. = code\nBezeichnung = name\n\nStern =\n");
  const std::vector<std::string> arguments{
      "import", folder / "price-list.csv", "--map-file", folder / "map.txt", "--map", "Preis=price",
      "--set",  "size=round-15",           "--set",      "pack_g=10"};
  const Ran ran = stock(arguments);
  ASSERT_EQ(ran.status, exit_done) << ran.err;
  const json made = item("77");
  EXPECT_EQ(made["name"], "Tau");
  EXPECT_EQ(made["packs"][0]["amount"], 10'000);
  EXPECT_EQ(made["packs"][0]["price"]["minor"], 340);
  spill(folder / "map.txt", "Art. code\n");
  EXPECT_NE(stock(arguments).err.find("map.txt: line 1: found 'Art. code'"), std::string::npos);
}

TEST_F(StockVerb, CountsInAndOutAndWritesItDown) {
  spill(folder / "b.csv", "code,name,size\nN,night,cylinder-11\n");
  ASSERT_EQ(stock({"import", folder / "b.csv"}).status, exit_done);
  EXPECT_EQ(stock({"count-in", "N", "1.5g", "--at", "2024-03-01", "--note", "the fair"}).out,
            "N night: 1.5 g on hand\n");
  EXPECT_EQ(stock({"use", "N", "195 beads", "--at", "2024-03-02 10:05"}).out, "N night: 0.5 g on hand\n");
  EXPECT_EQ(stock({"correct", "N", "0.75", "--at", "2024-03-03"}).out, "N night: 0.75 g on hand\n");
  EXPECT_EQ(stock({"journal"}).out,
            "2024-03-01 00:00:00  N  counted in   +1.5 g    the fair\n"
            "2024-03-02 10:05:00  N  used           -1 g\n"
            "2024-03-03 00:00:00  N  corrected   +0.25 g\n");
  const Ran more = stock({"use", "N", "1g"});
  EXPECT_EQ(more.status, exit_bad_input);
  EXPECT_NE(more.err.find("found 1 g, expected at most 0.75 g"), std::string::npos) << more.err;
  EXPECT_EQ(stock({"use", "Z", "1g"}).status, exit_bad_input);
  EXPECT_EQ(stock({"use", "N", "a lot"}).status, exit_bad_input);
  EXPECT_EQ(stock({"use", "N", "0.1g", "--at", "yesterday"}).status, exit_bad_input);
  EXPECT_EQ(stock({"check"}).status, exit_done);
}

TEST_F(StockVerb, ReservesForRuns) {
  ASSERT_EQ(stock({"import", samples + "findings.csv"}).status, exit_done);
  const std::string at = "--at";
  const Ran reserved = stock({"reserve", "spring", "X-slide-2=10", "X-crimp-2=40 pieces", at, "2024-03-01",
                              "--note", "ten necklaces"});
  ASSERT_EQ(reserved.status, exit_done) << reserved.err;
  EXPECT_EQ(reserved.out,
            "spring: open since 2024-03-01 00:00:00, ten necklaces\n"
            "  X-crimp-2  crimp tube, 2 mm                           40 pieces\n"
            "  X-slide-2  slide clasp, two strands, silver coloured  10 pieces\n")
      << "amounts end at one place";
  EXPECT_EQ(stock({"reserve", "summer", "X-slide-2=7"}).status, exit_bad_input) << "6 are left";
  EXPECT_EQ(stock({"take", "spring", at, "2024-04-01"}).out.substr(0, 33),
            "spring: taken 2024-04-01 00:00:00");
  EXPECT_EQ(item("X-slide-2")["on_hand"], 6);
  EXPECT_EQ(stock({"journal", "--run", "spring", "--json"}).json()["movements"].size(), 2u);
  EXPECT_EQ(stock({"reserve", "summer", "X-slide-2=6"}).status, exit_done);
  EXPECT_EQ(stock({"release", "summer", "--json"}).json()["state"], "released");
  EXPECT_EQ(stock({"runs", "--json"}).json()["runs"].size(), 2u);
  EXPECT_EQ(stock({"release", "autumn"}).status, exit_bad_input);
}

TEST_F(StockVerb, FindsByWordsAndByColour) {
  ASSERT_EQ(stock({"import", samples + "beads.csv"}).status, exit_done);
  const json found =
      stock({"list", "--near", "#1e2547", "--size", "cylinder-11", "--count", "3", "--json"}).json();
  ASSERT_EQ(found["items"].size(), 3u);
  EXPECT_EQ(found["items"][0]["name"], "inkwell");
  EXPECT_EQ(found["items"][0]["difference"], 0.0);
  const json words = stock({"list", "inkwell", "round-8", "--json"}).json();
  ASSERT_EQ(words["items"].size(), 1u);
  EXPECT_EQ(words["items"][0]["size"], "round-8");
  EXPECT_EQ(stock({"list", "--near", "blue"}).status, exit_bad_input);
  EXPECT_EQ(stock({"list", "--size", "cylinder-12"}).status, exit_bad_input);
}

TEST_F(StockVerb, WhatIsExportedIsImportedAgain) {
  for (const char* kind : {"beads", "forms", "thread", "cord", "findings"}) {
    const std::string sample = samples + kind + ".csv";
    ASSERT_EQ(stock({"import", sample}).status, exit_done);
    EXPECT_EQ(stock({"export", "--kind", kind}).out, slurp(sample)) << kind;
    ASSERT_EQ(stock({"export", "--kind", kind, "--semicolons", "--bom", "-o", folder / "out.csv"}).status,
              exit_done);
    EXPECT_NE(stock({"import", folder / "out.csv"}).out.find("0 added, 0 changed"), std::string::npos)
        << kind;
  }
}

TEST_F(StockVerb, PalettesComeAndGo) {
  spill(folder / "tides.gpl", "GIMP Palette\nName: Tides\n#\n 34  48  79\tnight\n239 227 180\tmoon\n");
  const Ran ran = stock({"import", folder / "tides.gpl", "--size", "round-8"});
  ASSERT_EQ(ran.status, exit_done) << ran.err;
  EXPECT_EQ(item("night")["colour"], "#22304f");
  EXPECT_EQ(item("night")["size"], "round-8");
  EXPECT_EQ(stock({"export", "--palette", "--size", "round-8"}).out,
            "GIMP Palette\nName: round-8 in stock\n#\n239 227 180\tmoon\n 34  48  79\tnight\n");
  spill(folder / "bad.gpl", "GIMP Palette\nName: Tides\n#\n 34  48  790\tnight\n");
  EXPECT_NE(stock({"import", folder / "bad.gpl"}).err.find("line 4"), std::string::npos);
}

TEST_F(StockVerb, PicturesTakeTheirBeadsFromTablesAndStockrooms) {
  ASSERT_EQ(stock({"import", samples + "beads.csv"}).status, exit_done);
  std::vector<json> colours;
  for (const std::string& source : {samples + "beads.csv", file}) {
    const Ran ran = run({"picture", moon, folder / "p.evencount.json", "--stock", source, "--columns", "12",
                         "--edge", "16", "--colours", "4", "--quick", "--json"});
    ASSERT_EQ(ran.status, exit_done) << ran.err;
    colours.push_back(ran.json()["colours"]);
    EXPECT_EQ(colours.back().size(), 4u);
  }
  EXPECT_EQ(colours[0], colours[1]) << "the table and the stockroom hold the same beads";
  const Ran none = run({"picture", moon, folder / "p.evencount.json", "--stock", samples + "forms.csv",
                        "--columns", "12", "--edge", "16"});
  EXPECT_EQ(none.status, exit_bad_input);
  const Ran other = run({"picture", moon, folder / "q.evencount.json", "--stock", file, "--bead", "round-6",
                         "--columns", "12", "--edge", "16", "--colours", "2", "--quick", "--json"});
  EXPECT_EQ(other.json()["colours"].size(), 2u) << other.err;
}

TEST_F(StockVerb, FilesOfOthersAreLeftAlone) {
  spill(file,
        "a letter of more than one hundred bytes, which is certainly no database, and which nobody would "
        "want to lose in this way");
  const std::string before = slurp(file);
  EXPECT_EQ(stock({"list"}).status, exit_failure);
  EXPECT_EQ(stock({"import", samples + "beads.csv"}).status, exit_failure);
  EXPECT_EQ(slurp(file), before);
}

TEST_F(StockVerb, EveryVerbExplainsItself) {
  for (const char* verb : {"import", "list", "export", "journal", "check", "count-in", "use", "correct",
                           "reserve", "take", "release", "runs"}) {
    const Ran ran = run({"stock", verb, "--help"});
    EXPECT_EQ(ran.status, exit_done) << verb;
    EXPECT_NE(ran.out.find("--stock"), std::string::npos) << verb;
  }
  EXPECT_EQ(run({"stock"}).status, exit_bad_input);
}

/// A photograph of a bead beside a white card, both flat: 40 x 20 mm at 5 dots to the millimetre.
std::string photograph(const TemporaryFolder& folder) {
  drawing::Drawing scene{millimetres(40), millimetres(20), {}};
  const auto lay = [&](double left, colour::Rgb fill) {
    scene.marks.push_back(drawing::Rectangle{.corner = {left, 2}, .width_mm = 16, .height_mm = 16, .fill = fill});
  };
  lay(2, {243, 243, 243});  // 0.90 of the light in sRGB, the white card's reflectance
  lay(22, {79, 143, 145});
  const std::string path = folder / "bead.png";
  spill(path, page::to_png(scene, 127).value());
  return path;
}

TEST_F(StockVerb, ABeadsColourIsMeasuredFromAPhotograph) {
  const std::string photo = photograph(folder);
  spill(folder / "b.csv", "code,name,size,finish\nT,tide,cylinder-11,opaque\nK,clasp,cylinder-11,matte\n");
  ASSERT_EQ(stock({"import", folder / "b.csv"}).status, exit_done);
  const auto measure = [&](std::vector<std::string> more) {
    std::vector<std::string> all{"measure", photo, "--json"};
    all.insert(all.end(), more.begin(), more.end());
    return stock(all);
  };
  const Ran ran = measure({"--card", "15,15,70,70", "--bead", "115,15,70,70", "--for", "T"});
  ASSERT_EQ(ran.status, exit_done) << ran.err;
  EXPECT_EQ(ran.json()["colour"], "#4f8f91");
  EXPECT_LT(ran.json()["uncertainty"].get<double>(), 2);
  EXPECT_EQ(item("T")["colour"], "#4f8f91");
  EXPECT_TRUE(item("K")["colour"].is_null());
  EXPECT_EQ(measure({"--card", "15,15,70", "--bead", "115,15,70,70"}).status, exit_bad_input);
  EXPECT_EQ(measure({"--card", "15,15,70,70", "--bead", "115,15,700,70"}).status, exit_bad_input);
  EXPECT_EQ(measure({"--card", "15,15,70,70", "--bead", "115,15,70,70", "--for", "Z"}).status, exit_bad_input);
  EXPECT_EQ(measure({"--card", "15,15,70,70", "--bead", "115,15,70,70", "--card-is", "blue"}).status, exit_bad_input);
}

TEST_F(StockVerb, PicturesAndSuppliesTakeWhatIsFree) {
  ASSERT_EQ(stock({"import", samples + "beads.csv"}).status, exit_done);
  const std::string project = folder / "p.evencount.json";
  const Ran made = run({"picture", moon, project, "--stock", file, "--only-free", "--columns", "12", "--edge", "16", "--colours", "5", "--open", "--name", "Moon"});
  ASSERT_EQ(made.status, exit_done) << made.err;
  const Ran listed = run({"supplies", project, "--stock", file, "--reserve", "Autumn", "--json"});
  ASSERT_EQ(listed.status, exit_done) << listed.err;
  const json answer = listed.json();
  for (const json& bead : answer["beads"]) EXPECT_NE(bead["name"], "") << bead;
  const json runs = stock({"runs", "--json"}).json();
  ASSERT_EQ(runs["runs"].size(), 1u);
  EXPECT_EQ(runs["runs"][0]["run"], "Autumn");
  EXPECT_EQ(runs["runs"][0]["items"].size(), answer["beads"].size());
  EXPECT_EQ(run({"supplies", project, "--reserve", "Autumn"}).status, exit_bad_input);
  // A table offers colours, but has no runs to promise anything to.
  EXPECT_NE(run({"supplies", project, "--stock", samples + "beads.csv", "--reserve", "Winter"}).status, exit_done);
  EXPECT_EQ(run({"proof", project, "--stock", samples + "beads.csv"}).status, exit_done);
}

}  // namespace
}  // namespace evencount::app
