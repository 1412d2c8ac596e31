// What a file and a project's name may be at the most; docs/limits.md lists all limits.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

#include "app/files.hpp"
#include "app/run.hpp"
#include "app/studio/library.hpp"
#include "project/json.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::app {
namespace {

using evencount::testing::spill;
using evencount::testing::TemporaryFolder;

TEST(InputLimits, AFileIsReadUpToItsMost) {
  const TemporaryFolder folder;
  const std::string path = folder / "large";
  spill(path, "");
  std::filesystem::resize_file(path, largest_input);
  const auto whole = read_file(path);
  ASSERT_TRUE(whole.ok());
  EXPECT_EQ(whole->size(), largest_input);
  std::filesystem::resize_file(path, largest_input + 1);
  const auto refused = read_file(path);
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(refused.problem().where, path);
}

TEST(InputLimits, OptionsHaveTheirRanges) {
  const std::string project = evencount::testing::example("moonwatch");
  const std::string number = "99999999999999999999";
  for (const std::vector<std::string>& arguments : std::vector<std::vector<std::string>>{
           {"fit", "round:10x10", "--together", "101"},
           {"draw", project, "-o", "x.svg", "--pixels", "20001"},
           {"draw", project, "-o", "x.png", "--dpi", "1201"},
           {"draw", project, "-o", "x.png", "--cell", "101mm"},
           {"labels", project, "-o", "x.pdf", "--first", "201"},
           {"labels", project, "-o", "x.pdf", "--kits", "501"},
           {"render", project, "-o", "x.png", "--samples", "4097"},
           {"render", project, "-o", "x.png", "--threads", "257"},
           {"render", project, "-o", "x.png", "--frames", "1000"},
           {"render", project, "-o", "x.png", "--blur", "10.1"},
           {"render", project, "-o", "x.png", "--exposure", "5.1"},
           {"render", project, "-o", "x.png", "--size", "30001x1"},
           {"studio", "--port", "65536"},
           {"picture", "x.png", "x.evencount.json", "--colours", "1001"},
           {"picture", "x.png", "x.evencount.json", "--columns", "1001"},
           {"picture", "x.png", "x.evencount.json", "--edge", "10001"},
           {"picture", "x.png", "x.evencount.json", "--strength", "101"},
           {"picture", "x.png", "x.evencount.json", "--turn", "361"},
           {"supplies", project, "--kits", "100001"},
           {"supplies", project, "--kits", number},
           {"supplies", project, "--hour", "1e300"},
           {"fit", "round:10x10", "--columns", number},
           {"fit", "round:2001x10"},
           {"band", "x.evencount.json", "--name", "b", "--columns", "1001", "--edge", "4"},
           {"band", "x.evencount.json", "--name", "b", "--columns", "4", "--edge", number},
           {"string", project, "--measure", "1e9mm"},
           {"read", project, "--columns", number}}) {
    const auto ran = evencount::testing::run(arguments);
    std::string line;
    for (const std::string& argument : arguments) line += argument + " ";
    EXPECT_EQ(ran.status, 2) << line << ran.err;
    EXPECT_FALSE(ran.err.empty()) << line;
  }
}

/// A folder of projects, and its library.
struct Shelf {
  TemporaryFolder folder;
  std::unique_ptr<studio::Library> library =
      studio::Library::open({folder.path().string(), ""}, [] { return std::int64_t{0}; }, [](const std::string&, std::int64_t) {}).value();

  void put(const std::string& id) const {
    spill(folder / (id + ".evencount.json"), R"({"format":1,"title":"t","beads":[{"id":"cylinder-11"}],"legend":[],"bands":[]})");
  }
};

TEST(StudioLimits, AnIdHasItsMost) {
  const Shelf shelf;
  const std::string longest(studio::longest_id, 'a');
  shelf.put(longest), shelf.put(longest + "a");
  EXPECT_TRUE(shelf.library->session(longest).ok());
  EXPECT_EQ(shelf.library->session(longest + "a").problem().code, ProblemCode::not_found);
}

TEST(StudioLimits, OpenProjectsMakeRoomForOthers) {
  const Shelf shelf;
  std::vector<std::shared_ptr<studio::Session>> held;
  const auto id = [](std::size_t i) { return "p" + std::to_string(i); };
  for (std::size_t i = 0; i <= studio::most_open; ++i) shelf.put(id(i));
  for (std::size_t i = 0; i < studio::most_open; ++i) held.push_back(shelf.library->session(id(i)).value());
  EXPECT_EQ(shelf.library->session(id(studio::most_open)).problem().code, ProblemCode::too_many) << "all are in use";
  held.clear();
  while (!shelf.library->session(id(studio::most_open)).ok()) {  // the library itself looks after one of them for a moment
  }
  EXPECT_EQ(shelf.library->revisions().size(), studio::most_open);
}

}  // namespace
}  // namespace evencount::app
