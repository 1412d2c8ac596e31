#pragma once
/// SQLite's exceptions end here: what the room gives back is a Problem.

#include <SQLiteCpp/SQLiteCpp.h>

#include <string>
#include <string_view>

#include "base/result.hpp"
#include "stockroom/time.hpp"

namespace evencount::stockroom {

/// The problem behind an exception, `where` being the file.
[[nodiscard]] Problem problem_of(const SQLite::Exception& error, const std::string& file);

/// What went wrong, in words. SQLite calls a full disk an I/O error where it happens to a file beside the database: it is looked at.
[[nodiscard]] std::string reason_of(const SQLite::Exception& error, const std::string& file);

/// work(), or the problem it threw.
template <typename Work>
auto guarded(const std::string& file, Work work) -> decltype(work()) {
  try {
    return work();
  } catch (const SQLite::Exception& error) {
    return problem_of(error, file);
  }
}

/// guarded, and all that `work` writes is one transaction: kept when it gives a value, undone when it gives a problem.
/// The lock is taken at once, so that what was read when deciding still holds when writing.
template <typename Work>
auto in_transaction(SQLite::Database& database, const std::string& file, Work work) -> decltype(work()) {
  return guarded(file, [&]() -> decltype(work()) {
    SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
    auto result = work();
    if (result) transaction.commit();
    return result;
  });
}

/// guarded, and all that `work` reads is of one moment.
template <typename Work>
auto in_snapshot(SQLite::Database& database, const std::string& file, Work work) -> decltype(work()) {
  return guarded(file, [&]() -> decltype(work()) {
    const SQLite::Transaction transaction(database, SQLite::TransactionBehavior::DEFERRED);
    return work();
  });
}

void bind(SQLite::Statement& statement, int place, Time time);
[[nodiscard]] Time time_of(const SQLite::Column& column);

}  // namespace evencount::stockroom
