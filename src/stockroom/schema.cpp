#include "stockroom/schema.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include <array>

namespace evencount::stockroom {
namespace {

/// Quantities are kept beside the movements they come from; the triggers carry them along and refuse everything else.
constexpr const char* version_1 = R"sql(
CREATE TABLE item (
  id INTEGER PRIMARY KEY,
  code TEXT NOT NULL UNIQUE CHECK (code <> ''),
  kind TEXT NOT NULL CHECK (kind IN ('beads', 'forms', 'thread', 'cord', 'findings')),
  name TEXT NOT NULL CHECK (name <> ''),
  what TEXT NOT NULL CHECK (what <> ''),  -- a bead's size, a form's notation, a thread's id, what a cord or finding is
  finish TEXT CHECK ((finish IS NOT NULL) = (kind = 'beads')),
  colour TEXT CHECK (colour IS NULL OR (kind <> 'findings' AND length(colour) = 7)),
  beads_per_gram REAL CHECK (beads_per_gram IS NULL OR (kind = 'beads' AND beads_per_gram > 0)),
  diameter_mm REAL CHECK ((diameter_mm IS NOT NULL) = (kind = 'cord')),
  note TEXT NOT NULL,
  on_hand INTEGER NOT NULL DEFAULT 0 CHECK (on_hand BETWEEN 0 AND 1000000000000),
  reserved INTEGER NOT NULL DEFAULT 0 CHECK (reserved BETWEEN 0 AND on_hand)
) STRICT;

CREATE TABLE pack (
  item INTEGER NOT NULL REFERENCES item ON DELETE RESTRICT,
  position INTEGER NOT NULL,
  amount INTEGER NOT NULL CHECK (amount > 0),
  price_minor INTEGER CHECK (price_minor >= 0),
  currency TEXT CHECK ((currency IS NULL) = (price_minor IS NULL)),
  supplier TEXT NOT NULL,
  order_code TEXT NOT NULL,
  address TEXT NOT NULL,
  PRIMARY KEY (item, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE run (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE CHECK (name <> ''),
  state TEXT NOT NULL DEFAULT 'open' CHECK (state IN ('open', 'taken', 'released')),
  opened INTEGER NOT NULL,
  closed INTEGER CHECK ((closed IS NULL) = (state = 'open')),
  note TEXT NOT NULL
) STRICT;

CREATE TABLE reservation (
  run INTEGER NOT NULL REFERENCES run ON DELETE RESTRICT,
  item INTEGER NOT NULL REFERENCES item ON DELETE RESTRICT,
  amount INTEGER NOT NULL CHECK (amount > 0),
  PRIMARY KEY (run, item)
) STRICT, WITHOUT ROWID;
CREATE INDEX reservation_of_item ON reservation (item, amount);

CREATE TABLE movement (
  id INTEGER PRIMARY KEY,
  item INTEGER NOT NULL REFERENCES item ON DELETE RESTRICT,
  cause TEXT NOT NULL CHECK (cause IN ('counted in', 'used', 'corrected')),
  amount INTEGER NOT NULL CHECK (amount <> 0),
  at INTEGER NOT NULL,
  run INTEGER REFERENCES run ON DELETE RESTRICT,
  note TEXT NOT NULL,
  CHECK (cause <> 'counted in' OR amount > 0),
  CHECK (cause <> 'used' OR amount < 0),
  CHECK (run IS NULL OR cause = 'used')
) STRICT;
CREATE INDEX movement_of_item ON movement (item, amount);
CREATE INDEX movement_of_run ON movement (run) WHERE run IS NOT NULL;

CREATE TRIGGER item_begins_empty BEFORE INSERT ON item WHEN NEW.on_hand <> 0 OR NEW.reserved <> 0
BEGIN SELECT RAISE(ABORT, 'quantities come from movements'); END;

CREATE TRIGGER movement_counts AFTER INSERT ON movement
BEGIN UPDATE item SET on_hand = on_hand + NEW.amount WHERE id = NEW.item; END;

CREATE TRIGGER on_hand_is_the_sum BEFORE UPDATE OF on_hand ON item
WHEN NEW.on_hand <> (SELECT coalesce(sum(amount), 0) FROM movement WHERE item = NEW.id)
BEGIN SELECT RAISE(ABORT, 'quantities come from movements'); END;

CREATE TRIGGER movement_stays BEFORE UPDATE ON movement
BEGIN SELECT RAISE(ABORT, 'the journal is only added to'); END;
CREATE TRIGGER movement_is_kept BEFORE DELETE ON movement
BEGIN SELECT RAISE(ABORT, 'the journal is only added to'); END;

CREATE TRIGGER reserved_is_the_sum BEFORE UPDATE OF reserved ON item
WHEN NEW.reserved <> (SELECT coalesce(sum(amount), 0) FROM reservation JOIN run ON run.id = reservation.run
                      WHERE reservation.item = NEW.id AND run.state = 'open')
BEGIN SELECT RAISE(ABORT, 'what is reserved comes from runs'); END;

CREATE TRIGGER reservation_counts AFTER INSERT ON reservation
BEGIN UPDATE item SET reserved = reserved + NEW.amount WHERE id = NEW.item; END;
CREATE TRIGGER reservation_grows AFTER UPDATE OF amount ON reservation
BEGIN UPDATE item SET reserved = reserved + NEW.amount - OLD.amount WHERE id = NEW.item; END;
CREATE TRIGGER reservation_of_open_run BEFORE INSERT ON reservation
WHEN (SELECT state FROM run WHERE id = NEW.run) <> 'open'
BEGIN SELECT RAISE(ABORT, 'the run is closed'); END;
CREATE TRIGGER reservation_stays BEFORE UPDATE ON reservation
WHEN NEW.run <> OLD.run OR NEW.item <> OLD.item OR (SELECT state FROM run WHERE id = NEW.run) <> 'open'
BEGIN SELECT RAISE(ABORT, 'the run is closed'); END;
CREATE TRIGGER reservation_is_kept BEFORE DELETE ON reservation
BEGIN SELECT RAISE(ABORT, 'a run is released as a whole'); END;

CREATE TRIGGER run_closes AFTER UPDATE OF state ON run WHEN OLD.state = 'open' AND NEW.state <> 'open'
BEGIN
  UPDATE item SET reserved = reserved - (SELECT amount FROM reservation WHERE run = NEW.id AND item = item.id)
  WHERE id IN (SELECT item FROM reservation WHERE run = NEW.id);
END;
CREATE TRIGGER run_stays_closed BEFORE UPDATE OF state ON run WHEN OLD.state <> 'open'
BEGIN SELECT RAISE(ABORT, 'the run is closed'); END;
)sql";

constexpr std::array scripts{version_1};

std::int64_t pragma(SQLite::Database& database, const char* name) {
  return database.execAndGet(fmt::format("PRAGMA {}", name)).getInt64();
}

/// The version, after a look at whose database it is.
Result<std::int64_t> version_of(SQLite::Database& database, const std::string& file, std::size_t newest) {
  const std::int64_t id = pragma(database, "application_id"), version = pragma(database, "user_version");
  const bool empty = database.execAndGet("SELECT count(*) FROM sqlite_schema").getInt64() == 0;
  const bool ours = id == application_id && version >= 1, blank = id == 0 && version == 0 && empty;
  if (!ours && !blank)
    return Problem{ProblemCode::file_unreadable, file, "another program's database",
                   "a stockroom; this file is left as it is"};
  if (version > static_cast<std::int64_t>(newest))
    return Problem{ProblemCode::newer_format, file, fmt::format("format {}", version),
                   fmt::format("at most {}; a newer evencount wrote it, and it is left as it is", newest)};
  return version;
}

}  // namespace

std::span<const char* const> migrations() {
  return scripts;
}

Result<Done> bring_up_to_date(SQLite::Database& database, const std::string& file,
                              std::span<const char* const> steps) {
  const auto seen = [&] {
    // In one transaction: another process may be making the file between two looks at it.
    const SQLite::Transaction look(database, SQLite::TransactionBehavior::DEFERRED);
    return version_of(database, file, steps.size());
  }();
  if (!seen) return seen.problem();
  if (*seen == static_cast<std::int64_t>(steps.size())) return Done{};
  SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
  const auto version = version_of(database, file, steps.size());  // another process may have been faster
  if (!version) return version.problem();
  for (auto step = static_cast<std::size_t>(*version); step < steps.size(); ++step)
    database.exec(steps[step]);
  database.exec(fmt::format("PRAGMA application_id = {}", application_id));
  database.exec(fmt::format("PRAGMA user_version = {}", steps.size()));
  transaction.commit();
  return Done{};
}

}  // namespace evencount::stockroom
