#pragma once
/// Movements, in and out of the file. These functions throw SQLite::Exception, and stand in the caller's transaction.

#include "stockroom/database.hpp"
#include "stockroom/stockroom.hpp"

namespace evencount::stockroom {

/// What is written down of a movement.
struct NewMovement {
  std::int64_t item = 0;
  Cause cause = Cause::counted_in;
  std::int64_t amount = 0;
  Time at;
  std::string note;
  std::optional<std::int64_t> run;
};

/// Writes many movements with the same statement.
class MovementWriter {
 public:
  explicit MovementWriter(SQLite::Database& database);
  /// The movement's number.
  std::int64_t add(const NewMovement& movement);

 private:
  SQLite::Database& database_;
  SQLite::Statement add_;
};

/// All, those of one item, those of one run, or those of both.
[[nodiscard]] Result<std::vector<Movement>> read_movements(SQLite::Database& database,
                                                           std::optional<std::int64_t> item,
                                                           std::optional<std::int64_t> run);

}  // namespace evencount::stockroom
