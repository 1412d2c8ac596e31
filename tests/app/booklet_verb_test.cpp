#include <gtest/gtest.h>

#include <filesystem>

#include "app/run.hpp"
#include "support/temporary_folder.hpp"

namespace evencount {
namespace {

using testing::example;
using testing::run;
using testing::slurp;
using testing::spill;

std::size_t files_in(const std::filesystem::path& folder) {
  return static_cast<std::size_t>(std::distance(std::filesystem::directory_iterator(folder), {}));
}

TEST(BookletVerb, RefusesWhatItDoesNotKnow) {
  const testing::TemporaryFolder folder;
  const std::string file = (folder.path() / "out.pdf").string();
  for (const char* option : {"--paper", "--language", "--hand", "--signs"}) {
    const auto ran = run({"booklet", example("moonwatch"), option, "nothing", "-o", file});
    EXPECT_EQ(ran.status, 2) << option;
    EXPECT_NE(ran.err.find("nothing"), std::string::npos) << ran.err;
  }
  EXPECT_EQ(run({"booklet", example("moonwatch"), example("moonwatch-necklace"), "-o", file}).status, 2);
  // Two that would get the same file.
  EXPECT_EQ(run({"booklet", example("moonwatch"), example("moonwatch"), "--folder", folder.path().string()}).status, 2);
  EXPECT_EQ(files_in(folder.path()), 0u);
}

TEST(BookletVerb, KeepsTheFileThatIsThereWhenThereIsNoBooklet) {
  const testing::TemporaryFolder folder;
  const auto file = folder.path() / "out.pdf", project = folder.path() / "p.evencount.json";
  spill(file.string(), "what was there");
  std::string text = slurp(example("moonwatch"));
  const std::string title = "\"title\": \"Moonwatch\"";
  ASSERT_NE(text.find(title), std::string::npos);
  spill(project.string(), text.replace(text.find(title), title.size(), "\"title\": \"\xF0\x9F\x92\x8E\""));  // no font has that gem
  for (const char* verb : {"booklet", "labels"}) {
    const auto ran = run({verb, project.string(), "-o", file.string()});
    EXPECT_EQ(ran.status, 1) << verb << ran.err;
    EXPECT_NE(ran.err.find("U+1F48E"), std::string::npos) << ran.err;
  }
  EXPECT_EQ(slurp(file.string()), "what was there");
  EXPECT_EQ(files_in(folder.path()), 2u);
  EXPECT_EQ(run({"booklet", example("moonwatch"), "-o", file.string()}).status, 0);
  EXPECT_TRUE(slurp(file.string()).starts_with("%PDF"));
}

TEST(BookletVerb, SaysWhereItCannotWrite) {
  const auto ran = run({"booklet", example("moonwatch"), "--folder", "/nonexistent/folder"});
  EXPECT_EQ(ran.status, 3);
  EXPECT_NE(ran.err.find("/nonexistent/folder/moonwatch.pdf"), std::string::npos) << ran.err;
}

}  // namespace
}  // namespace evencount
