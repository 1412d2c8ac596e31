#pragma once
/// Items and their packs, in and out of the file. These functions throw SQLite::Exception, and stand in the caller's transaction.

#include <optional>
#include <string>
#include <vector>

#include "stockroom/database.hpp"
#include "stockroom/import.hpp"

namespace evencount::stockroom {

/// A held item with its key in the file.
struct KeptItem {
  std::int64_t id = 0;
  materials::StockedItem held;
};

/// By code. Errors: file_unreadable (text that this version doesn't know).
[[nodiscard]] Result<std::vector<KeptItem>> read_items(
    SQLite::Database& database, std::optional<materials::StockKind> kind = std::nullopt);
/// Errors: unknown_name.
[[nodiscard]] Result<KeptItem> read_item(SQLite::Database& database, const std::string& code);

/// Writes many items with the same few statements.
class ItemWriter {
 public:
  explicit ItemWriter(SQLite::Database& database);
  /// The new item's key.
  [[nodiscard]] std::int64_t add(const materials::StockItem& item);
  /// Everything of the item but its code, kind and quantities.
  void replace(std::int64_t id, const materials::StockItem& item);

 private:
  void add_packs(std::int64_t id, const materials::StockItem& item);
  SQLite::Database& database_;
  SQLite::Statement add_, replace_, remove_packs_, add_pack_;
};

}  // namespace evencount::stockroom
