#include "stockroom/check.hpp"

#include <array>

namespace evencount::stockroom {
namespace {

/// Each gives a row of one text for every fault.
constexpr std::array queries{
    "SELECT 'SQLite: ' || integrity_check FROM pragma_integrity_check WHERE integrity_check <> 'ok'",
    R"(SELECT 'an entry of table ' || "table" || ' belongs to nothing' FROM pragma_foreign_key_check)",
    "SELECT code || ': on hand ' || on_hand || ', but its movements come to ' || total FROM "
    "(SELECT code, on_hand, coalesce((SELECT sum(amount) FROM movement WHERE item = item.id), 0) AS total "
    "FROM item ORDER BY code) "
    "WHERE on_hand <> total",
    "SELECT code || ': reserved ' || reserved || ', but its open runs hold ' || total FROM "
    "(SELECT code, reserved, coalesce((SELECT sum(amount) FROM reservation JOIN run ON run.id = run WHERE "
    "item = item.id AND "
    "state = 'open'), 0) AS total FROM item ORDER BY code) WHERE reserved <> total",
    "SELECT code || ': reserved ' || reserved || ' of ' || on_hand FROM item WHERE reserved > on_hand OR "
    "on_hand < 0 ORDER BY code",
    "SELECT name || ': was taken, but its movements are not what it had reserved' FROM run WHERE state = "
    "'taken' AND EXISTS "
    "(SELECT item, -amount FROM reservation WHERE run = run.id EXCEPT SELECT item, amount FROM movement "
    "WHERE run = run.id) OR "
    "state = 'taken' AND (SELECT count(*) FROM reservation WHERE run = run.id) <> (SELECT count(*) FROM "
    "movement WHERE run = run.id) "
    "ORDER BY name",
    "SELECT name || ': movements belong to it, but it is ' || state FROM run WHERE state <> 'taken' AND "
    "EXISTS "
    "(SELECT 1 FROM movement WHERE run = run.id) ORDER BY name",
    "SELECT name || ': nothing is in it' FROM run WHERE NOT EXISTS (SELECT 1 FROM reservation WHERE run = "
    "run.id) ORDER BY name",
};

}  // namespace

std::vector<std::string> look_over(SQLite::Database& database) {
  std::vector<std::string> faults;
  for (const char* query : queries) {
    SQLite::Statement rows(database, query);
    while (rows.executeStep()) faults.push_back(rows.getColumn(0).getString());
  }
  return faults;
}

}  // namespace evencount::stockroom
