#include "stockroom/journal_table.hpp"

#include <array>

namespace evencount::stockroom {
namespace {

constexpr std::array causes{Cause::counted_in, Cause::used, Cause::corrected};

std::optional<Cause> cause_of(std::string_view name) {
  for (const Cause cause : causes)
    if (name == cause_name(cause)) return cause;
  return std::nullopt;
}

}  // namespace

std::string_view cause_name(Cause cause) {
  switch (cause) {
    case Cause::counted_in:
      return "counted in";
    case Cause::used:
      return "used";
    case Cause::corrected:
      return "corrected";
  }
  return "corrected";
}

MovementWriter::MovementWriter(SQLite::Database& database)
    : database_(database),
      add_(database, "INSERT INTO movement (item, cause, amount, at, run, note) VALUES (?, ?, ?, ?, ?, ?)") {}

std::int64_t MovementWriter::add(const NewMovement& movement) {
  add_.reset();
  add_.clearBindings();
  add_.bind(1, movement.item);
  add_.bind(2, std::string(cause_name(movement.cause)));
  add_.bind(3, movement.amount);
  bind(add_, 4, movement.at);
  if (movement.run) add_.bind(5, *movement.run);
  add_.bind(6, movement.note);
  add_.exec();
  return database_.getLastInsertRowid();
}

Result<std::vector<Movement>> read_movements(SQLite::Database& database, std::optional<std::int64_t> item,
                                             std::optional<std::int64_t> run) {
  SQLite::Statement rows(database,
                         "SELECT movement.id, at, code, kind, cause, amount, coalesce(run.name, ''), "
                         "movement.note FROM movement "
                         "JOIN item ON item.id = movement.item LEFT JOIN run ON run.id = movement.run "
                         "WHERE movement.item = coalesce(?1, movement.item) AND (?2 IS NULL OR movement.run "
                         "= ?2) ORDER BY movement.id");
  if (item) rows.bind(1, *item);
  if (run) rows.bind(2, *run);
  std::vector<Movement> movements;
  while (rows.executeStep()) {
    const auto kind = materials::parse_stock_kind(rows.getColumn(3).getString());
    const auto cause = cause_of(rows.getColumn(4).getString());
    if (!kind || !cause)
      return Problem{ProblemCode::file_unreadable, "", "a movement that this version doesn't know",
                     "a stockroom"};
    movements.push_back({.number = rows.getColumn(0).getInt64(),
                         .at = time_of(rows.getColumn(1)),
                         .code = rows.getColumn(2).getString(),
                         .kind = *kind,
                         .cause = *cause,
                         .amount = rows.getColumn(5).getInt64(),
                         .run = rows.getColumn(6).getString(),
                         .note = rows.getColumn(7).getString()});
  }
  return movements;
}

}  // namespace evencount::stockroom
