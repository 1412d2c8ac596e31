/// What `check` finds once the file's own defences are taken down.

#include <SQLiteCpp/SQLiteCpp.h>
#include <gtest/gtest.h>

#include "stockroom/random_stock.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::stockroom {
namespace {

using evencount::testing::noon;

class Check : public ::testing::Test {
 protected:
  Check() {
    Stockroom stock = *Stockroom::open(file);
    for (const char* code : {"A", "B"}) {
      EXPECT_TRUE(stock.put(
          {.code = code, .name = "a", .what = materials::FindingStock{"clasp"}, .packs = {}, .note = ""}));
      EXPECT_TRUE(stock.count_in(code, 10, noon));
    }
    EXPECT_TRUE(stock.reserve("spring", {{"A", 4}}, noon));
    EXPECT_TRUE(stock.reserve("summer", {{"A", 1}, {"B", 2}}, noon));
    EXPECT_TRUE(stock.take("summer", noon));
  }
  /// What is found after this was done to the file without its triggers and constraints.
  std::vector<std::string> after(const std::string& sql) {
    SQLite::Database database(file, SQLite::OPEN_READWRITE);
    std::vector<std::string> triggers;
    SQLite::Statement names(database, "SELECT name FROM sqlite_schema WHERE type = 'trigger'");
    while (names.executeStep()) triggers.push_back(names.getColumn(0).getString());
    names.reset();
    for (const std::string& name : triggers) database.exec("DROP TRIGGER " + name);
    database.exec("PRAGMA ignore_check_constraints = ON");
    database.exec(sql);
    return *Stockroom::open(file)->check();
  }
  evencount::testing::TemporaryFolder folder;
  std::string file = folder / "stock.sqlite";
};

using Faults = std::vector<std::string>;

TEST_F(Check, FindsNothingWhenAllIsWell) {
  EXPECT_EQ(after("SELECT 1"), Faults{});
}
TEST_F(Check, FindsAQuantityThatIsNotTheSum) {
  EXPECT_EQ(after("UPDATE item SET on_hand = 8 WHERE code = 'A'"),
            Faults{"A: on hand 8, but its movements come to 9"});
}
TEST_F(Check, FindsAMovementThatWasTakenOut) {
  EXPECT_EQ(after("DELETE FROM movement WHERE item = 2 AND run = 2"),
            (Faults{"B: on hand 8, but its movements come to 10",
                    "summer: was taken, but its movements are not what it had reserved"}));
}
TEST_F(Check, FindsAReservationThatIsNotInTheLevel) {
  EXPECT_EQ(after("UPDATE reservation SET amount = 5 WHERE run = 1"),
            Faults{"A: reserved 4, but its open runs hold 5"});
}
TEST_F(Check, FindsMoreReservedThanThereIs) {
  const Faults faults = after(
      "UPDATE item SET reserved = 40 WHERE code = 'A'; UPDATE reservation SET amount = 40 WHERE run = 1");
  EXPECT_NE(std::find(faults.begin(), faults.end(), "A: reserved 40 of 9"), faults.end());
}
TEST_F(Check, FindsMovementsOfARunThatIsNotTaken) {
  EXPECT_EQ(after("UPDATE run SET state = 'released' WHERE name = 'summer'"),
            Faults{"summer: movements belong to it, but it is released"});
}
TEST_F(Check, FindsWhatBelongsToNothing) {
  EXPECT_EQ(after("INSERT INTO pack VALUES (77, 1, 1, NULL, NULL, '', '', '')"),
            Faults{"an entry of table pack belongs to nothing"});
}

}  // namespace
}  // namespace evencount::stockroom
