/// Bad input: a clear message with its place, exit status 2 (or a finding), and no file touched.

#include <gtest/gtest.h>

#include <filesystem>

#include "app/run.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::app {
namespace {

using namespace evencount::testing;
using nlohmann::json;

struct Fault {
  const char* name;
  std::string text;          ///< the project file
  std::string must_mention;  ///< the place
};

std::string with(const std::function<void(json&)>& change) {
  json project = json::parse(slurp(example("moonwatch")));
  change(project);
  return project.dump(2);
}

std::vector<Fault> broken_projects() {
  const std::string whole = slurp(example("moonwatch"));
  return {
      {"truncated", whole.substr(0, whole.size() / 2), "line "},
      {"empty", "", "line 1"},
      {"wrong type", with([](json& p) { p["bands"][0]["columns"] = "six"; }), "/bands/0/columns"},
      {"a billion columns", with([](json& p) { p["bands"][0]["columns"] = 1'000'000'000; }),
       "/bands/0/columns"},
      {"not a number",
       [&] {
         auto t = whole;
         t.replace(t.find("\"diameter_mm\": 1.6"), 18, "\"diameter_mm\": NaN");
         return t;
       }(),
       "line "},
      {"missing bead", with([](json& p) { p["beads"].clear(); }), "bead"},
      {"unknown bead", with([](json& p) { p["bands"][2]["bead"] = "cube-3"; }), "/bands/2/bead"},
      {"unknown technique", with([](json& p) { p["bands"][1]["technique"] = "macrame"; }),
       "/bands/1/technique"},
      {"unknown letter", with([](json& p) { p["bands"][0]["cells"][3] = "6Q"; }), "/bands/0/cells/3"},
      {"short step", with([](json& p) { p["bands"][0]["cells"][3] = "5A"; }), "/bands/0/cells/3"},
      {"a later format", with([](json& p) { p["format"] = 99; }), "/format"},
      {"deep nesting", std::string(1'000'000, '['), "64 levels"},
  };
}

TEST(BadInput, BrokenProjectsAreRefusedByEveryVerb) {
  for (const Fault& fault : broken_projects()) {
    const TemporaryFolder folder;
    const std::string path = folder / "p.evencount.json";
    spill(path, fault.text);
    for (const std::vector<std::string>& command :
         std::vector<std::vector<std::string>>{{"words", path},
                                               {"thread", path},
                                               {"supplies", path},
                                               {"proof", path},
                                               {"band", path, "--columns", "6", "--edge", "9"},
                                               {"draw", path, "-o", folder / "x.svg"},
                                               {"booklet", path, "-o", folder / "x.pdf"}}) {
      const Ran ran = run(command);
      EXPECT_EQ(ran.status, exit_bad_input) << fault.name << ", " << command[0] << ": " << ran.err;
      EXPECT_NE(ran.err.find(path), std::string::npos) << "names the file: " << ran.err;
      EXPECT_NE(ran.err.find(fault.must_mention), std::string::npos) << fault.name << ": " << ran.err;
    }
    EXPECT_EQ(slurp(path), fault.text) << fault.name << ": the file was touched";
    EXPECT_EQ(std::distance(std::filesystem::directory_iterator(folder.path()), {}), 1)
        << fault.name << ": a file was written";
  }
}

TEST(BadInput, AnOddNumberOfRowsAskedToZip) {
  const TemporaryFolder folder;
  const std::string path = folder / "p.evencount.json";
  const Ran ran = run({"band", path, "--columns", "6", "--rows", "47"});
  EXPECT_EQ(ran.status, exit_bad_input);
  EXPECT_NE(ran.err.find("even number of rows"), std::string::npos) << ran.err;
  EXPECT_FALSE(std::filesystem::exists(path));

  ASSERT_EQ(run({"band", path, "--columns", "6", "--rows", "47", "--open"}).status, exit_done);
  json project = json::parse(slurp(path));
  project["bands"][0]["closure"] = "zip";
  spill(path, project.dump());
  const Ran proof = run({"proof", path, "--json"});
  EXPECT_EQ(proof.status, exit_findings);
  EXPECT_NE(proof.out.find("even number of rows"), std::string::npos) << proof.out;
  EXPECT_EQ(run({"booklet", path, "-o", folder / "p.pdf"}).status, exit_findings);
  EXPECT_FALSE(std::filesystem::exists(folder / "p.pdf"));
}

TEST(BadInput, FormsBeadsAndGauges) {
  for (const char* form : {"lens:17x5", "lens:0x5x9", "lens:-17x5x9", "lens:nanx5x9", "lens:infx5x9",
                           "lens:5x17x9", "cube:3", "lens:17ellx5x9", "", "lens:"}) {
    const Ran ran = run({"fit", form, "--bead", "cylinder-11"});
    EXPECT_EQ(ran.status, exit_bad_input) << form;
    EXPECT_NE(ran.err.find("expected"), std::string::npos) << form << ": " << ran.err;
    EXPECT_TRUE(ran.out.empty()) << form;
  }
  EXPECT_EQ(run({"fit", "lens:17x5x9", "--bead", "cube-3"}).status, exit_bad_input);
  EXPECT_EQ(run({"fit", "lens:17x5x9", "--bead", "cylinder-11", "--gauge", "nanx1"}).status, exit_bad_input);
  EXPECT_EQ(run({"fit", "lens:17x5x9", "--bead", "cylinder-11", "--gauge", "1.35"}).status, exit_bad_input);
  EXPECT_EQ(run({"fit", "lens:17x5x9", "--bead", "cylinder-11", "--use", "glued"}).status, exit_bad_input);
  EXPECT_EQ(run({"fit", "lens:17x5x9", "--bead", "cylinder-11", "--columns", "0"}).status, exit_bad_input);
}

TEST(BadInput, UsageAndFiles) {
  EXPECT_EQ(run({}).status, exit_bad_input);
  EXPECT_EQ(run({"unpick"}).status, exit_bad_input);
  EXPECT_EQ(run({"fit"}).status, exit_bad_input);
  EXPECT_EQ(run({"words", "/nowhere/p.evencount.json"}).status, exit_failure);
  EXPECT_EQ(run({"draw", example("moonwatch"), "-o", "/nowhere/x.svg"}).status, exit_failure);
  EXPECT_EQ(run({"draw", example("moonwatch"), "-o", "x.gif"}).status, exit_bad_input);
  EXPECT_EQ(run({"words", example("moonwatch"), "--band", "Blue moon"}).status, exit_bad_input);
}

TEST(BadInput, AMistakeInTheWordsIsNamed) {
  const TemporaryFolder folder;
  spill(folder / "w.txt", "Rows 1-2 (L): (6)A\nRow 3 (R): (2)A, (3)B\n");
  const Ran ran = run({"read", folder / "w.txt"});
  EXPECT_EQ(ran.status, exit_bad_input);
  for (const char* part : {"row 3", "after 2A", "5 beads", "3"})
    EXPECT_NE(ran.err.find(part), std::string::npos) << part << ": " << ran.err;
}

}  // namespace
}  // namespace evencount::app
