#include "app/studio/history.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <gtest/gtest.h>

#include <filesystem>

#include "app/run.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::app::studio {
namespace {

using evencount::testing::spill;
using evencount::testing::TemporaryFolder;

project::Patch title(const std::string& before, const std::string& after) {
  return {{}, {}, {{"/title", '"' + before + '"', '"' + after + '"'}}};
}

std::string sentence_of(const std::optional<Revision>& revision) {
  return revision ? revision->sentence : "";
}

TEST(History, WhatWasAddedIsThereWhenItIsOpenedAgain) {
  const TemporaryFolder folder;
  const std::string file = folder / "x.evencount.history";
  {
    auto history = History::open(file, History::Access::write);
    ASSERT_TRUE(history.ok()) << message(history.problem());
    for (int i = 1; i <= 3; ++i) {
      const auto added = history->add({0, 1000 + i, Doing::edit, std::to_string(i), 0},
                                      title(std::to_string(i - 1), std::to_string(i)));
      ASSERT_TRUE(added.ok());
      EXPECT_EQ(added->number, i);
    }
    ASSERT_TRUE(history->add({0, 1004, Doing::undo, "3", 3}, {}).ok());
    EXPECT_EQ(sentence_of(history->undo_target()), "2");
  }
  const auto history = History::open(file, History::Access::write);
  ASSERT_TRUE(history.ok()) << message(history.problem());
  EXPECT_EQ(history->newest(), 4);
  EXPECT_EQ(sentence_of(history->undo_target()), "2");
  EXPECT_EQ(sentence_of(history->redo_target()), "3");
  EXPECT_EQ(history->patch(2).value(), title("1", "2"));
  EXPECT_EQ(history->patch(4).value(), title("3", "2")) << "an undo's patch is its target's, turned";
  EXPECT_EQ(history->patch(5).problem().code, ProblemCode::not_found);
  const auto list = history->list(4, 2);
  ASSERT_TRUE(list.ok());
  ASSERT_EQ(list->size(), 2u);
  EXPECT_EQ(list->front(), (Revision{3, 1003, Doing::edit, "3", 0}));
}

TEST(History, AnEditAfterAnUndoLeavesNothingToRedo) {
  const TemporaryFolder folder;
  auto history = History::open(folder / "x.evencount.history", History::Access::write);
  ASSERT_TRUE(history.ok());
  ASSERT_TRUE(history->add({0, 0, Doing::edit, "one", 0}, title("", "a")).ok());
  ASSERT_TRUE(history->add({0, 0, Doing::undo, "one", 1}, {}).ok());
  EXPECT_FALSE(history->undo_target().has_value());
  ASSERT_TRUE(history->add({0, 0, Doing::redo, "one", 1}, {}).ok());
  EXPECT_EQ(history->patch(3).value(), title("", "a"));
  ASSERT_TRUE(history->add({0, 0, Doing::undo, "one", 1}, {}).ok());
  ASSERT_TRUE(history->add({0, 0, Doing::edit, "two", 0}, title("", "b")).ok());
  EXPECT_FALSE(history->redo_target().has_value());
  EXPECT_EQ(sentence_of(history->undo_target()), "two");
}

TEST(History, ASecondWriterIsRefusedAndReadersAreNot) {
  const TemporaryFolder folder;
  const std::string file = folder / "x.evencount.history";
  auto history = History::open(file, History::Access::write);
  ASSERT_TRUE(history->add({0, 0, Doing::edit, "one", 0}, title("", "a")).ok());
  EXPECT_EQ(History::open(file, History::Access::read)->newest(), 1);
  EXPECT_EQ(History::open(file, History::Access::write).problem().code, ProblemCode::in_use);
}

TEST(History, OtherFilesAreLeftAlone) {
  const TemporaryFolder folder;
  spill(folder / "text",
        "this is no database, and long enough to be looked at by what reads databases: it has no header");
  EXPECT_EQ(History::open(folder / "text", History::Access::write).problem().code,
            ProblemCode::file_unreadable);
  EXPECT_EQ(evencount::testing::slurp(folder / "text").substr(0, 10), "this is no");
  {
    SQLite::Database other(folder / "other", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    other.exec("CREATE TABLE things (x)");
  }
  EXPECT_EQ(History::open(folder / "other", History::Access::write).problem().code,
            ProblemCode::file_unreadable);
  {
    ASSERT_TRUE(History::open(folder / "newer", History::Access::write).ok());
    SQLite::Database newer(folder / "newer", SQLite::OPEN_READWRITE);
    newer.exec("PRAGMA user_version = 99");
  }
  EXPECT_EQ(History::open(folder / "newer", History::Access::write).problem().code,
            ProblemCode::newer_format);
}

TEST(History, ItsNameIsTheProjectsAndLinksAreFollowed) {
  const TemporaryFolder folder;
  EXPECT_EQ(history_file("/a/moonwatch.evencount.json"), "/a/moonwatch.evencount.history");
  spill(folder / "real.evencount.json", "{}");
  std::filesystem::create_symlink("real.evencount.json", folder / "link.evencount.json");
  EXPECT_EQ(std::filesystem::path(history_file(folder / "link.evencount.json")).filename(),
            "real.evencount.history");
}

}  // namespace
}  // namespace evencount::app::studio
