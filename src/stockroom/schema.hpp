#pragma once
/// The file's tables, and how a file of an older format becomes one of today's.

#include <cstdint>
#include <span>
#include <string>
#include <string_view>

#include "base/result.hpp"

namespace SQLite {
class Database;
}

namespace evencount::stockroom {

inline constexpr std::int32_t application_id = 0x45764353;  ///< "EvCS", at byte 68 of every stockroom

/// The scripts that bring a file from version 0 (nothing) to 1, from 1 to 2, and so on. What was once released is never edited.
[[nodiscard]] std::span<const char* const> migrations();

/// Makes an opened database a stockroom of the version that the last script leads to; all scripts in one transaction. Nothing is
/// written when it is one already. Two processes may do this at once.
/// Errors, `where` being the file: file_unreadable (another program's database), newer_format. Throws SQLite::Exception.
[[nodiscard]] Result<Done> bring_up_to_date(SQLite::Database& database, const std::string& file,
                                            std::span<const char* const> scripts);

}  // namespace evencount::stockroom
