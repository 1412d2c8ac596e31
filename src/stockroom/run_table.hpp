#pragma once
/// Runs of kits and what they reserve, in and out of the file. These functions throw SQLite::Exception, and stand in the
/// caller's transaction.

#include "stockroom/database.hpp"
#include "stockroom/stockroom.hpp"

namespace evencount::stockroom {

struct KeptRun {
  std::int64_t id = 0;
  Run run;
};

/// In the order they were opened.
[[nodiscard]] Result<std::vector<KeptRun>> read_runs(SQLite::Database& database);
/// Errors: unknown_name.
[[nodiscard]] Result<KeptRun> read_run(SQLite::Database& database, const std::string& name);

/// The contracts of Stockroom's functions of these names.
[[nodiscard]] Result<Run> reserve(SQLite::Database& database, const std::string& name,
                                  const std::vector<RunItem>& items, Time at, const std::string& note);
/// `used`: taken, else released.
[[nodiscard]] Result<Run> close(SQLite::Database& database, const std::string& name, Time at, bool used);

}  // namespace evencount::stockroom
