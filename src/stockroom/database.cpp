#include "stockroom/database.hpp"

#include <fmt/format.h>
#include <sqlite3.h>
#include <sys/statvfs.h>

#include <cerrno>
#include <filesystem>
#include <system_error>

namespace evencount::stockroom {

std::string reason_of(const SQLite::Exception& error, const std::string& file) {
  // By so much the file that readers and writers share grows at a time (SQLite's os_unix.c, WALINDEX_PGSZ), and as much again.
  constexpr std::uint64_t least_bytes = 2 * 32'768;
  const std::string reason = error.what();
  constexpr int primary = 0xFF;  // extended codes keep the plain one in their lowest byte
  if ((error.getErrorCode() & primary) != SQLITE_IOERR) return reason;
  const std::string folder = std::filesystem::path(file).parent_path().string();
  struct statvfs disk {};
  const bool full = ::statvfs(folder.empty() ? "." : folder.c_str(), &disk) == 0 &&
                    static_cast<std::uint64_t>(disk.f_bavail) * disk.f_frsize < least_bytes;
  return full ? fmt::format("{} ({})", std::generic_category().message(ENOSPC), reason) : reason;
}

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
      return {ProblemCode::file_unwritable, file, reason_of(error, file),
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
