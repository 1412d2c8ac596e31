#include <gtest/gtest.h>

#include <filesystem>

#include "run.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::testing {
namespace {

namespace fs = std::filesystem;

TEST(AlongVerb, WritesOnePageAProject) {
  const TemporaryFolder folder;
  const Ran ran = run({"along", example("moonwatch"), example("moonwatch-necklace"), "--folder", folder.path().string()});
  EXPECT_EQ(ran.status, 0) << ran.err;
  EXPECT_EQ(ran.err, "");
  for (const char* name : {"moonwatch.html", "moonwatch-necklace.html"}) {
    EXPECT_NE(ran.out.find(std::string(name) + ": "), std::string::npos) << ran.out;
    EXPECT_TRUE(slurp((folder.path() / name).string()).starts_with("<!doctype html>"));
  }
}

TEST(AlongVerb, NamesABandWithoutALeftHandedMode) {
  const TemporaryFolder folder;
  const std::string page = (folder.path() / "page.html").string();
  const Ran ran = run({"along", example("techniques/peyote-bezel"), "-o", page});
  EXPECT_EQ(ran.status, 0);
  EXPECT_NE(ran.err.find("Bezel: no left-handed mode ("), std::string::npos) << ran.err;
  EXPECT_TRUE(fs::exists(page));
}

TEST(AlongVerb, OneFileForSeveralProjectsIsRefused) {
  const TemporaryFolder folder;
  const std::string page = (folder.path() / "page.html").string();
  const Ran ran = run({"along", example("moonwatch"), example("moonwatch-necklace"), "-o", page});
  EXPECT_EQ(ran.status, 2);
  EXPECT_NE(ran.err.find("--folder"), std::string::npos) << ran.err;
  EXPECT_FALSE(fs::exists(page));
}

TEST(AlongVerb, AProjectWithErrorsIsRefused) {
  const TemporaryFolder folder;
  const std::string page = (folder.path() / "page.html").string();
  const std::string project = (folder.path() / "twice.evencount.json").string();
  std::string text = slurp(example("moonwatch"));
  const std::string name = "\"name\": \"Full moon\"";
  ASSERT_NE(text.find(name), std::string::npos);
  text.replace(text.find(name), name.size(), "\"name\": \"New moon\"");  // two bands of one name
  spill(project, text);
  const Ran ran = run({"along", project, "-o", page});
  EXPECT_EQ(ran.status, 1) << ran.err;
  EXPECT_FALSE(fs::exists(page));
}

}  // namespace
}  // namespace evencount::testing
