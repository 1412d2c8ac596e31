#pragma once
/// Looking over a stockroom's file.

#include <string>
#include <vector>

#include "stockroom/database.hpp"

namespace evencount::stockroom {

/// Whatever is wrong, in words. Throws SQLite::Exception.
[[nodiscard]] std::vector<std::string> look_over(SQLite::Database& database);

}  // namespace evencount::stockroom
