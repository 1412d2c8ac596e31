#include "app/studio/library.hpp"

#include <gtest/gtest.h>

#include <filesystem>

#include "app/run.hpp"
#include "project/json.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::app::studio {
namespace {

namespace fs = std::filesystem;
using evencount::testing::spill;
using evencount::testing::TemporaryFolder;

std::string titled(const std::string& title) {
  return R"({"format": 1, "title": ")" + title + R"(", "beads": [], "legend": [], "bands": []})";
}

std::unique_ptr<Library> open(const TemporaryFolder& folder) {
  auto library = Library::open(
      {folder / "projects", folder / "examples"}, [] { return std::int64_t{7}; },
      [](const std::string&, std::int64_t) {});
  EXPECT_TRUE(library.ok());
  return std::move(*library);
}

TEST(Library, ListsWhatThereIs) {
  const TemporaryFolder folder;
  fs::create_directories(folder / "projects");
  fs::create_directories(folder / "examples");
  spill(folder / "projects/b.evencount.json", titled("Bee"));
  spill(folder / "projects/a.evencount.json", titled("Ay"));
  spill(folder / "projects/broken.evencount.json", "{");
  spill(folder / "projects/other.txt", "x");
  spill(folder / "examples/moon.evencount.json", titled("Moon"));
  const auto library = open(folder);
  const auto list = library->list();
  ASSERT_EQ(list.size(), 3u);
  EXPECT_EQ(list[0].title, "Ay");
  EXPECT_EQ(list[1].title, "Bee");
  EXPECT_NE(list[2].problem, "");
  EXPECT_EQ(library->examples().size(), 1u);
  EXPECT_EQ(library->example("moon")->title, "Moon");
}

TEST(Library, NoIdLeadsOut) {
  const TemporaryFolder folder;
  fs::create_directories(folder / "projects/inner");
  spill(folder / "secret.evencount.json", titled("Secret"));
  spill(folder / "projects/inner/deep.evencount.json", titled("Deep"));
  spill(folder / "projects/.hidden.evencount.json", titled("Hidden"));
  fs::create_symlink("../secret.evencount.json", folder / "projects/link.evencount.json");
  fs::create_symlink("/etc/passwd", folder / "projects/passwd.evencount.json");
  fs::create_directories(folder / "projects/folder.evencount.json");
  const auto library = open(folder);
  for (const std::string& id :
       {std::string("../secret"), std::string("inner/deep"), std::string(".hidden"), std::string("link"),
        std::string("passwd"), std::string(""), std::string("."), std::string(".."), std::string("folder"),
        std::string("a\\b"), std::string("x\0y", 3), std::string(5000, 'a'), std::string("\xff"),
        folder / "secret"}) {
    EXPECT_EQ(library->session(id).problem().code, ProblemCode::not_found) << id;
    EXPECT_EQ(library->remove(id).problem().code, ProblemCode::not_found) << id;
    EXPECT_EQ(library->example(id).problem().code, ProblemCode::not_found) << id;
  }
  EXPECT_TRUE(library->list().empty());
}

TEST(Library, ALinkWithinTheFolderIsTheProjectItself) {
  const TemporaryFolder folder;
  fs::create_directories(folder / "projects");
  spill(folder / "projects/real.evencount.json", titled("Real"));
  fs::create_symlink("real.evencount.json", folder / "projects/link.evencount.json");
  const auto library = open(folder);
  const auto one = library->session("real"), other = library->session("link");
  ASSERT_TRUE(one.ok() && other.ok());
  EXPECT_EQ(*one, *other);
}

TEST(Library, ALinkToAFileOfAnotherKindIsNoProject) {
  const TemporaryFolder folder;
  fs::create_directories(folder / "projects");
  spill(folder / "projects/a.json", titled("Ay"));
  fs::create_symlink("a.json", folder / "projects/a.evencount.json");
  const auto library = open(folder);
  EXPECT_TRUE(library->list().empty());
  EXPECT_EQ(library->session("a").problem().code, ProblemCode::not_found);
  EXPECT_EQ(library->remove("a").problem().code, ProblemCode::not_found);
}

TEST(Library, NewProjectsGetAFreeName) {
  const TemporaryFolder folder;
  const auto library = open(folder);
  const auto project = *project::parse_project(titled("Full  Moon / Ä?"));
  EXPECT_EQ(library->create(project).value(), "full-moon-Ä");
  EXPECT_EQ(library->create(project).value(), "full-moon-Ä-2");
  EXPECT_EQ(library->create(*project::parse_project(titled("../../x"))).value(), "x");
  EXPECT_EQ(library->create(*project::parse_project(titled("???"))).value(), "project");
  EXPECT_EQ(library->create(*project::parse_project(titled(std::string(300, 'm')))).value(),
            std::string(60, 'm'));
  std::string long_title;
  for (int i = 0; i < 100; ++i) long_title += "ä";
  EXPECT_TRUE(library->create(*project::parse_project(titled(long_title))).ok());
}

TEST(Library, WhatIsRemovedIsInTheBinWithItsHistory) {
  const TemporaryFolder folder;
  fs::create_directories(folder / "projects");
  spill(folder / "projects/a.evencount.json", titled("Ay"));
  const auto library = open(folder);
  {
    const auto session = library->session("a");
    ASSERT_TRUE((*session)->operate(0, R"({"do":"change_texts","title":"B"})").ok());
    EXPECT_EQ(library->remove("a").problem().code, ProblemCode::in_use) << "somebody works on it";
  }
  ASSERT_EQ(library->remove("a").value(), "a-7");
  EXPECT_TRUE(library->list().empty());
  EXPECT_FALSE(fs::exists(folder / "projects/a.evencount.history"));
  EXPECT_TRUE(fs::exists(folder / "projects/.bin/a-7/a.evencount.json"));
  EXPECT_TRUE(fs::exists(folder / "projects/.bin/a-7/a.evencount.history"));
}

TEST(Library, WhatIsPutBackIsAsItWas) {
  const TemporaryFolder folder;
  fs::create_directories(folder / "projects");
  spill(folder / "projects/a.evencount.json", titled("Ay"));
  const auto library = open(folder);
  ASSERT_TRUE(library->session("a").value()->operate(0, R"({"do":"change_texts","title":"B"})").ok());
  ASSERT_TRUE(library->remove("a").ok());
  for (const std::string binned : {"a", "b-7", "../a-7", ".bin", "", "a-7/..", "-7"})
    EXPECT_EQ(library->restore(binned).problem().code, ProblemCode::not_found) << binned;
  EXPECT_EQ(library->restore("a-7").value(), "a");
  EXPECT_FALSE(fs::exists(folder / "projects/.bin/a-7"));
  EXPECT_EQ(library->restore("a-7").problem().code, ProblemCode::not_found);
  const auto session = library->session("a");
  ASSERT_TRUE(session.ok());
  EXPECT_EQ((*session)->state().project->title, "B");
  EXPECT_TRUE((*session)->undo((*session)->revision()).ok()) << "its history is there again";
}

TEST(Library, AProjectThatBecameOlderIsReadAgain) {
  const TemporaryFolder folder;
  fs::create_directories(folder / "projects");
  const std::string file = folder / "projects/a.evencount.json";
  spill(file, titled("Ay"));
  const auto library = open(folder);
  EXPECT_EQ(library->list().front().title, "Ay");
  spill(file, titled("Be"));
  fs::last_write_time(file, fs::last_write_time(file) - std::chrono::hours(24));
  EXPECT_EQ(library->list().front().title, "Be");
}

TEST(Library, TwoThatAreRemovedInOneMomentKeepApart) {
  const TemporaryFolder folder;
  fs::create_directories(folder / "projects");
  const auto library = open(folder);  // its clock stands still
  for (const char* title : {"One", "Two"}) {
    spill(folder / "projects/a.evencount.json", titled(title));
    ASSERT_TRUE(library->remove("a").ok());
  }
  EXPECT_EQ(library->restore("a-8").value(), "a");
  EXPECT_EQ(library->list().front().title, "Two");
  ASSERT_TRUE(library->remove("a").ok());
  EXPECT_EQ(library->restore("a-7").value(), "a");
  EXPECT_EQ(library->list().front().title, "One");
}

TEST(Library, AnOpenProjectGoesOnWithoutItsFile) {
  const TemporaryFolder folder;
  fs::create_directories(folder / "projects");
  const std::string file = folder / "projects/a.evencount.json";
  spill(file, titled("Ay"));
  const auto library = open(folder);
  ASSERT_TRUE(library->session("a").ok());
  fs::remove(file);
  const auto session = library->session("a");
  ASSERT_TRUE(session.ok()) << message(session.problem());
  ASSERT_TRUE((*session)->operate(0, R"({"do":"change_texts","title":"Bee"})").ok());
  ASSERT_TRUE((*session)->save().ok());
  EXPECT_EQ(library->list().front().title, "Bee");
  EXPECT_EQ(library->session("b").problem().code, ProblemCode::not_found);
}

TEST(Library, NothingIsPutBackOverAnother) {
  const TemporaryFolder folder;
  fs::create_directories(folder / "projects");
  spill(folder / "projects/a.evencount.json", titled("Ay"));
  const auto library = open(folder);
  ASSERT_TRUE(library->remove("a").ok());
  spill(folder / "projects/a.evencount.json", titled("Other"));
  EXPECT_EQ(library->restore("a-7").problem().code, ProblemCode::in_use);
  EXPECT_EQ(library->list().front().title, "Other");
  EXPECT_TRUE(fs::exists(folder / "projects/.bin/a-7/a.evencount.json"));
}

TEST(Library, IsSavedWhenItGoes) {
  const TemporaryFolder folder;
  fs::create_directories(folder / "projects");
  spill(folder / "projects/a.evencount.json", titled("Ay"));
  ASSERT_TRUE((*open(folder)->session("a"))->operate(0, R"({"do":"change_texts","title":"B"})").ok());
  EXPECT_EQ(project::parse_project(evencount::testing::slurp(folder / "projects/a.evencount.json"))->title,
            "B");
}

}  // namespace
}  // namespace evencount::app::studio
