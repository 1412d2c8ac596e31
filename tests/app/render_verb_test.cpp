#include <gtest/gtest.h>

#include <filesystem>

#include "run.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::testing {
namespace {

namespace fs = std::filesystem;

std::vector<std::string> small(const std::string& project, const fs::path& output) {
  return {"render", example(project), "-o", output.string(), "--size", "64x48", "--samples", "2"};
}

Ran run_with(std::vector<std::string> arguments, const std::vector<std::string>& more) {
  arguments.insert(arguments.end(), more.begin(), more.end());
  return run(arguments);
}

TEST(RenderVerb, TheSamePictureForAnyNumberOfThreads) {
  const TemporaryFolder folder;
  const fs::path one = folder.path() / "one.png", two = folder.path() / "two.png";
  const Ran ran = run_with(small("moonwatch", one), {"--threads", "1"});
  EXPECT_EQ(ran.status, 0) << ran.err;
  EXPECT_NE(ran.err.find("(64 x 48)"), std::string::npos) << ran.err;
  EXPECT_EQ(run_with(small("moonwatch", two), {"--threads", "2"}).status, 0);
  EXPECT_EQ(slurp(one.string()), slurp(two.string()));
  EXPECT_TRUE(slurp(one.string()).starts_with("\x89PNG"));
  const fs::path other = folder.path() / "other.png";
  EXPECT_EQ(run_with(small("moonwatch", other), {"--view", "worn", "--light", "window", "--ground", "linen"})
                .status,
            0);
  EXPECT_NE(slurp(one.string()), slurp(other.string()));
}

TEST(RenderVerb, TurntablesAreNumbered) {
  const TemporaryFolder folder;
  const Ran ran =
      run_with(small("techniques/brick", folder.path() / "turn.png"), {"--frames", "3", "--preview"});
  EXPECT_EQ(ran.status, 0) << ran.err;
  for (const char* name : {"turn-001.png", "turn-002.png", "turn-003.png"})
    EXPECT_TRUE(fs::exists(folder.path() / name)) << name;
  EXPECT_NE(slurp((folder.path() / "turn-001.png").string()),
            slurp((folder.path() / "turn-002.png").string()));
}

TEST(RenderVerb, SaysWhatItCannotShow) {
  const TemporaryFolder folder;
  const fs::path picture = folder.path() / "picture.png";
  struct Case {
    std::vector<std::string> more;
    const char* says;
  };
  for (const Case& one :
       {Case{{"--view", "above"}, "table, flat or worn"}, Case{{"--light", "candle"}, "tent or window"},
        Case{{"--ground", "sand"}, "paper, linen or none"}, Case{{"--band", "Nowhere"}, "Nowhere"},
        Case{{"--wearer", "XXS"}, "XXS"}, Case{{"--form-colour", "red"}, "form colour"},
        Case{{"--stone", "stone:14"}, "dome"}, Case{{"--stone-colour", "blue"}, "stone colour"},
        Case{{"--band", "Full moon", "--view", "worn"}, "a band alone"}}) {
    const Ran ran = run_with(small("moonwatch", picture), one.more);
    EXPECT_EQ(ran.status, 2) << one.says;
    EXPECT_NE(ran.err.find(one.says), std::string::npos) << ran.err;
  }
  for (const char* size : {"0x4", "12", "axb", "99999x3", "20000x20000"}) {
    const Ran ran = run({"render", example("moonwatch"), "-o", picture.string(), "--size", size});
    EXPECT_EQ(ran.status, 2) << size;
  }
  EXPECT_EQ(run({"render", example("moonwatch"), "-o", (folder.path() / "picture.jpg").string()}).status, 2);
  EXPECT_FALSE(fs::exists(picture));
}

}  // namespace
}  // namespace evencount::testing
