#include "stockroom/database.hpp"

#include <sqlite3.h>

namespace evencount::stockroom {

Problem problem_of(const SQLite::Exception& error, const std::string& file) {
  switch (error.getErrorCode()) {
    case SQLITE_NOTADB:
      return {ProblemCode::file_unreadable, file, "a file that is no database", "a stockroom"};
    case SQLITE_CORRUPT:
      return {ProblemCode::file_unreadable, file, "a damaged database",
              "a stockroom, or a copy of it from before"};
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return {ProblemCode::file_unwritable, file, "another program at work in it",
              "to be let in soon; nothing was changed"};
    case SQLITE_READONLY:
    case SQLITE_CANTOPEN:
    case SQLITE_PERM:
    case SQLITE_FULL:
    case SQLITE_IOERR:
      return {ProblemCode::file_unwritable, file, error.what(),
              "a place that can be read and written; nothing was changed"};
    default:
      return {ProblemCode::system_failure, file, error.what(), ""};
  }
}

void bind(SQLite::Statement& statement, int place, Time time) {
  statement.bind(place, static_cast<std::int64_t>(time.time_since_epoch().count()));
}

Time time_of(const SQLite::Column& column) {
  return Time{std::chrono::seconds{column.getInt64()}};
}

}  // namespace evencount::stockroom
