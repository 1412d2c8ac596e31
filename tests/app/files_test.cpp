#include "app/files.hpp"

#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

#include "support/temporary_folder.hpp"

namespace evencount::app {
namespace {

using evencount::testing::TemporaryFolder;

std::size_t entries(const std::filesystem::path& folder) {
  return static_cast<std::size_t>(std::distance(std::filesystem::directory_iterator(folder), {}));
}

TEST(Files, WrittenIsRead) {
  const TemporaryFolder folder;
  const std::string bytes("a\0b\nc", 5);
  ASSERT_TRUE(write_file(folder / "x", bytes).ok());
  EXPECT_EQ(read_file(folder / "x").value(), bytes);
  ASSERT_TRUE(write_file(folder / "x", "").ok());
  EXPECT_EQ(read_file(folder / "x").value(), "");
  EXPECT_EQ(entries(folder.path()), 1u) << "a temporary file was left behind";
}

TEST(Files, AMissingFileIsNamed) {
  const auto read = read_file("/nowhere/at/all.json");
  ASSERT_FALSE(read.ok());
  EXPECT_EQ(read.problem().code, ProblemCode::file_not_found);
  EXPECT_EQ(read.problem().where, "/nowhere/at/all.json");
}

TEST(Files, AFolderIsNeitherReadNorReplaced) {
  const TemporaryFolder folder;
  std::filesystem::create_directory(folder / "inner");
  EXPECT_EQ(read_file(folder / "inner").problem().code, ProblemCode::file_unreadable);
  EXPECT_EQ(write_file(folder / "inner", "x").problem().code, ProblemCode::file_unwritable);
  EXPECT_TRUE(std::filesystem::is_directory(folder / "inner"));
}

TEST(Files, AnUnwritableFolderLeavesTheOldFile) {
  const auto written = write_file("/nowhere/at/all.json", "x");
  ASSERT_FALSE(written.ok());
  EXPECT_EQ(written.problem().code, ProblemCode::file_unwritable);
}

TEST(Files, PermissionsAndLinksAreKept) {
  const TemporaryFolder folder;
  ASSERT_TRUE(write_file(folder / "real", "one").ok());
  ASSERT_EQ(::chmod((folder / "real").c_str(), 0640), 0);
  std::filesystem::create_symlink("real", folder / "link");
  ASSERT_TRUE(write_file(folder / "link", "two").ok());
  EXPECT_TRUE(std::filesystem::is_symlink(folder / "link"));
  EXPECT_EQ(read_file(folder / "real").value(), "two");
  struct stat status {};
  ASSERT_EQ(::stat((folder / "real").c_str(), &status), 0);
  EXPECT_EQ(status.st_mode & 07777u, 0640u);
}

TEST(Files, ALinkToNothingYetIsFilled) {
  const TemporaryFolder folder;
  std::filesystem::create_directory(folder / "inner");
  std::filesystem::create_symlink("inner/real", folder / "link");
  ASSERT_TRUE(write_file(folder / "link", "one").ok());
  EXPECT_TRUE(std::filesystem::is_symlink(folder / "link"));
  EXPECT_EQ(read_file(folder / "inner/real").value(), "one");
  EXPECT_EQ(entries(folder / "inner"), 1u);
}

TEST(Files, ARingOfLinksIsRefused) {
  const TemporaryFolder folder;
  std::filesystem::create_symlink("b", folder / "a");
  std::filesystem::create_symlink("a", folder / "b");
  EXPECT_EQ(write_file(folder / "a", "one").problem().code, ProblemCode::file_unwritable);
  EXPECT_TRUE(std::filesystem::is_symlink(folder / "a"));
  EXPECT_EQ(entries(folder.path()), 2u);
}

TEST(Files, TheLongestNamesCanBeWritten) {
  const TemporaryFolder folder;
  const std::string name(255, 'x');  // NAME_MAX
  ASSERT_TRUE(write_file(folder / name, "one").ok());
  ASSERT_TRUE(write_file(folder / name, "two").ok());
  EXPECT_EQ(read_file(folder / name).value(), "two");
  EXPECT_EQ(entries(folder.path()), 1u);
}

TEST(Files, WhatAKilledProcessLeftGoesWithTheNextWriting) {
  const TemporaryFolder folder;
  for (const char* name : {".x.AbC123.part", ".xy.AbC123.part", ".x.AbC123.parts", ".x.AbC12.part", "x.AbC123.part"})
    ASSERT_TRUE(write_file(folder / name, "half").ok());
  ASSERT_TRUE(write_file(folder / "x", "whole").ok());
  EXPECT_FALSE(std::filesystem::exists(folder / ".x.AbC123.part"));
  EXPECT_EQ(entries(folder.path()), 5u) << "nothing else";
}

TEST(Files, WritingReplacesTheFileInsteadOfChangingIt) {
  // Whoever has the old file open goes on reading the old bytes: the new ones are another file, renamed over it.
  const TemporaryFolder folder;
  ASSERT_TRUE(write_file(folder / "x", "old bytes").ok());
  std::ifstream open_before(folder / "x");
  ASSERT_TRUE(write_file(folder / "x", "new").ok());
  EXPECT_EQ(std::string(std::istreambuf_iterator<char>(open_before), {}), "old bytes");
}

}  // namespace
}  // namespace evencount::app
