#include "stockroom/run_table.hpp"

#include <array>

#include "base/text.hpp"
#include "stockroom/amounts.hpp"
#include "stockroom/item_check.hpp"
#include "stockroom/item_table.hpp"
#include "stockroom/journal_table.hpp"

namespace evencount::stockroom {
namespace {

constexpr std::array states{RunState::open, RunState::taken, RunState::released};
constexpr const char* run_columns = "SELECT id, name, state, opened, closed, note FROM run ";

std::optional<RunState> state_of(std::string_view name) {
  for (const RunState state : states)
    if (name == state_name(state)) return state;
  return std::nullopt;
}

Result<KeptRun> run_of(SQLite::Database& database, SQLite::Statement& row) {
  KeptRun kept{row.getColumn(0).getInt64(), {}};
  const auto state = state_of(row.getColumn(2).getString());
  if (!state)
    return Problem{ProblemCode::file_unreadable, "", "a run in a state that this version doesn't know",
                   "a stockroom"};
  kept.run.name = row.getColumn(1).getString();
  kept.run.state = *state;
  kept.run.opened = time_of(row.getColumn(3));
  if (!row.getColumn(4).isNull()) kept.run.closed = time_of(row.getColumn(4));
  kept.run.note = row.getColumn(5).getString();
  SQLite::Statement items(database,
                          "SELECT code, amount FROM reservation JOIN item ON item.id = reservation.item "
                          "WHERE run = ? ORDER BY code");
  items.bind(1, kept.id);
  while (items.executeStep())
    kept.run.items.push_back({items.getColumn(0).getString(), items.getColumn(1).getInt64()});
  return kept;
}

/// The open run of this name, a new one if there is none.
Result<std::int64_t> open_run(SQLite::Database& database, const std::string& name, Time at,
                              const std::string& note) {
  if (const auto known = read_run(database, name)) {
    if (known->run.state == RunState::open) return known->id;
    return Problem{ProblemCode::duplicate_name, "",
                   quote(name) + ", which was " + std::string(state_name(known->run.state)),
                   "a new name, or an open run's"};
  }
  SQLite::Statement add(database, "INSERT INTO run (name, opened, note) VALUES (?, ?, ?)");
  add.bind(1, name);
  bind(add, 2, at);
  add.bind(3, note);
  add.exec();
  return database.getLastInsertRowid();
}

Result<Done> reserve_item(SQLite::Database& database, std::int64_t run, const RunItem& wanted) {
  const auto item = read_item(database, wanted.code);
  if (!item) return item.problem();
  const auto kind = kind_of(item->held.item);
  const std::int64_t free = item->held.level.free();
  if (wanted.amount < 1 || wanted.amount > free)
    return Problem{
        ProblemCode::out_of_range, wanted.code, amount_text(kind, wanted.amount),
        wanted.amount < 1 ? "more than nothing" : "at most " + amount_text(kind, free) + ", which is free"};
  SQLite::Statement add(database,
                        "INSERT INTO reservation (run, item, amount) VALUES (?, ?, ?) "
                        "ON CONFLICT (run, item) DO UPDATE SET amount = amount + excluded.amount");
  add.bind(1, run);
  add.bind(2, item->id);
  add.bind(3, wanted.amount);
  add.exec();
  return Done{};
}

}  // namespace

std::string_view state_name(RunState state) {
  switch (state) {
    case RunState::open:
      return "open";
    case RunState::taken:
      return "taken";
    case RunState::released:
      return "released";
  }
  return "released";
}

Result<std::vector<KeptRun>> read_runs(SQLite::Database& database) {
  std::vector<KeptRun> runs;
  SQLite::Statement rows(database, std::string(run_columns) + "ORDER BY id");
  while (rows.executeStep()) {
    auto run = run_of(database, rows);
    if (!run) return run.problem();
    runs.push_back(std::move(*run));
  }
  return runs;
}

Result<KeptRun> read_run(SQLite::Database& database, const std::string& name) {
  SQLite::Statement rows(database, std::string(run_columns) + "WHERE name = ?");
  rows.bind(1, name);
  if (!rows.executeStep()) return Problem{ProblemCode::unknown_name, "", quote(name), "the name of a run"};
  return run_of(database, rows);
}

Result<Run> reserve(SQLite::Database& database, const std::string& name, const std::vector<RunItem>& items,
                    Time at, const std::string& note) {
  if (const auto checked = check_key("run", name); !checked) return checked.problem();
  if (const auto checked = check_text("note", note); !checked) return checked.problem();
  if (items.empty())
    return Problem{ProblemCode::missing_field, "", "nothing to reserve", "codes and amounts"};
  const auto run = open_run(database, name, at, note);
  if (!run) return run.problem();
  for (const RunItem& item : items)
    if (const auto reserved = reserve_item(database, *run, item); !reserved) return reserved.problem();
  auto kept = read_run(database, name);
  if (!kept) return kept.problem();
  return std::move(kept->run);
}

Result<Run> close(SQLite::Database& database, const std::string& name, Time at, bool used) {
  const auto open = read_run(database, name);
  if (!open) return open.problem();
  if (open->run.state != RunState::open)
    return Problem{ProblemCode::unknown_name, "",
                   quote(name) + ", which was " + std::string(state_name(open->run.state)), "an open run"};
  SQLite::Statement update(database, "UPDATE run SET state = ?, closed = ? WHERE id = ?");
  update.bind(1, std::string(state_name(used ? RunState::taken : RunState::released)));
  bind(update, 2, at);
  update.bind(3, open->id);
  update.exec();
  if (used) {
    MovementWriter writer(database);
    for (const RunItem& reserved : open->run.items) {
      const auto item = read_item(database, reserved.code);
      if (!item) return item.problem();
      writer.add({item->id, Cause::used, -reserved.amount, at, "", open->id});
    }
  }
  auto kept = read_run(database, name);
  if (!kept) return kept.problem();
  return std::move(kept->run);
}

}  // namespace evencount::stockroom
