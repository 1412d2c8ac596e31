#include "stockroom/schema.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <gtest/gtest.h>

#include <array>
#include <fstream>

#include "stockroom/random_stock.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::stockroom {
namespace {

class Schema : public ::testing::Test {
 protected:
  void sql(const std::string& text) {
    SQLite::Database(file, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE).exec(text);
  }
  std::string bytes() const {
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
  }
  evencount::testing::TemporaryFolder folder;
  std::string file = folder / "stock.sqlite";
};

TEST_F(Schema, RefusesANewerFormatAndLeavesItAlone) {
  ASSERT_TRUE(Stockroom::open(file));
  sql("PRAGMA user_version = 999");
  const std::string before = bytes();
  const auto opened = Stockroom::open(file);
  ASSERT_FALSE(opened);
  EXPECT_EQ(opened.problem().code, ProblemCode::newer_format);
  EXPECT_EQ(opened.problem().found, "format 999");
  EXPECT_EQ(bytes(), before);
}

TEST_F(Schema, RefusesAnotherProgramsDatabaseAndLeavesItAlone) {
  for (const char* setup :
       {"PRAGMA application_id = 77", "CREATE TABLE recipe (name TEXT)", "PRAGMA user_version = 1"}) {
    std::filesystem::remove(file);
    sql(setup);
    const std::string before = bytes();
    const auto opened = Stockroom::open(file);
    ASSERT_FALSE(opened) << setup;
    EXPECT_EQ(opened.problem().code, ProblemCode::file_unreadable);
    EXPECT_EQ(bytes(), before) << setup;
  }
}

TEST_F(Schema, RefusesWhatIsNoDatabase) {
  std::ofstream(file) << "code,name,size\nN,night,cylinder-11\n and more than a hundred bytes of text, so "
                         "that it could be one "
                         "of SQLite's headers, which it is not by any means\n";
  EXPECT_EQ(Stockroom::open(file).problem().code, ProblemCode::file_unreadable);
  EXPECT_EQ(Stockroom::open(folder.path()).problem().code, ProblemCode::file_unwritable) << "a folder";
  EXPECT_EQ(Stockroom::open(file + "/stock.sqlite").problem().code, ProblemCode::file_unwritable)
      << "no folder";
}

TEST_F(Schema, DamageIsAProblemNotAnException) {
  {
    Stockroom stock = *Stockroom::open(file);
    std::mt19937 random(4);
    const auto items = evencount::testing::random_stock(random, materials::StockKind::beads, 200);
    for (const materials::StockedItem& held : items) ASSERT_TRUE(stock.put(held.item));
  }
  const std::string whole = bytes();
  std::mt19937 random(8);
  int told = 0;
  for (int round = 0; round < 60; ++round) {
    std::string damaged = whole;
    for (int i = 0; i < 400; ++i)
      damaged[100 + random() % (damaged.size() - 100)] = static_cast<char>(random());
    if (round % 3 == 0) damaged.resize(damaged.size() / 2);
    std::ofstream(file, std::ios::binary) << damaged;
    const auto stock = Stockroom::open(file);
    const bool noticed = !stock || !stock->items() || !stock->check() || !stock->check()->empty();
    told += noticed;
  }
  EXPECT_GT(told, 50);
}

TEST_F(Schema, OlderFormatsAreBroughtUpToDateOneByOne) {
  const std::array steps{"CREATE TABLE first (a)",
                         "ALTER TABLE first ADD COLUMN b; INSERT INTO first VALUES (1, 2)",
                         "CREATE TABLE third (c)"};
  for (std::size_t begin = 0; begin <= steps.size(); ++begin) {
    std::filesystem::remove(file);
    SQLite::Database database(file, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    if (begin > 0) {
      ASSERT_TRUE(bring_up_to_date(database, file, std::span(steps).first(begin)));
    }
    ASSERT_TRUE(bring_up_to_date(database, file, steps));
    EXPECT_EQ(database.execAndGet("PRAGMA user_version").getInt(), 3);
    EXPECT_EQ(database.execAndGet("SELECT count(*) FROM first").getInt(), 1) << "each step once";
    EXPECT_TRUE(database.tableExists("third"));
  }
}

TEST_F(Schema, AStepThatFailsLeavesTheOldFormat) {
  const std::array<const char*, 2> good{"CREATE TABLE first (a)", "CREATE TABLE second (b)"},
      bad{"CREATE TABLE first (a)", "CREATE TABLE second (b); CREATE TABLE first (a)"};
  SQLite::Database database(file, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
  ASSERT_TRUE(bring_up_to_date(database, file, std::span(good).first(1)));
  EXPECT_THROW(static_cast<void>(bring_up_to_date(database, file, bad)), SQLite::Exception);
  EXPECT_EQ(database.execAndGet("PRAGMA user_version").getInt(), 1);
  EXPECT_FALSE(database.tableExists("second"));
  EXPECT_TRUE(bring_up_to_date(database, file, good));
}

/// The file defends itself against whoever writes to it.
TEST_F(Schema, TheFileRefusesWhatWouldBreakItsSums) {
  {
    Stockroom stock = *Stockroom::open(file);
    ASSERT_TRUE(stock.put(
        {.code = "A", .name = "a", .what = materials::FindingStock{"clasp"}, .packs = {}, .note = ""}));
    ASSERT_TRUE(stock.count_in("A", 10, evencount::testing::noon));
    ASSERT_TRUE(stock.reserve("spring", {{"A", 4}}, evencount::testing::noon));
    ASSERT_TRUE(stock.reserve("summer", {{"A", 1}}, evencount::testing::noon));
    ASSERT_TRUE(stock.release("summer", evencount::testing::noon));
  }
  for (const char* wrong :
       {"UPDATE item SET on_hand = 11", "UPDATE item SET reserved = 0", "DELETE FROM movement",
        "UPDATE movement SET amount = 9", "DELETE FROM item", "DELETE FROM reservation",
        "UPDATE reservation SET amount = 11 WHERE run = 1",
        "INSERT INTO movement (item, cause, amount, at, note) VALUES (1, 'used', -7, 0, '')",
        "INSERT INTO movement (item, cause, amount, at, note) VALUES (1, 'used', 7, 0, '')",
        "INSERT INTO movement (item, cause, amount, at, note) VALUES (9, 'counted in', 7, 0, '')",
        "INSERT INTO movement (item, cause, amount, at, note) VALUES (1, 'counted in', 0, 0, '')",
        "INSERT INTO item (code, kind, name, what, note, on_hand) VALUES ('B', 'findings', 'b', 'clasp', '', "
        "5)",
        "INSERT INTO item (code, kind, name, what, note) VALUES ('B', 'beads', 'b', 'round-8', '')",
        "INSERT INTO item (code, kind, name, what, note) VALUES ('A', 'findings', 'b', 'clasp', '')",
        "INSERT INTO reservation VALUES (2, 1, 1)", "UPDATE run SET state = 'open' WHERE id = 2",
        "UPDATE run SET state = 'taken'", "UPDATE item SET on_hand = 'ten'"}) {
    SQLite::Database database(file, SQLite::OPEN_READWRITE);
    database.exec("PRAGMA foreign_keys = ON");
    EXPECT_THROW(database.exec(wrong), SQLite::Exception) << wrong;
  }
  EXPECT_TRUE(Stockroom::open(file)->check()->empty());
}

}  // namespace
}  // namespace evencount::stockroom
