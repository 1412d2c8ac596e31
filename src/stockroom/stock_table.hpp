#pragma once
/// The stock as a table, the one that import.hpp reads.

#include <span>
#include <string>

#include "stockroom/import.hpp"

namespace evencount::stockroom {

struct ExportOptions {
  /// Semicolons between fields and decimal commas, as spreadsheets in much of Europe have them; otherwise commas and points.
  bool semicolons = false;
  bool byte_order_mark = false;  ///< by which some spreadsheets know UTF-8
};

/// One line an item and pack, in the order given: an item's further packs stand on lines that hold nothing else but its code. Items of
/// other kinds are left out. Lines end with CR LF (RFC 4180).
[[nodiscard]] std::string write_table(std::span<const materials::StockedItem> items, materials::StockKind kind,
                                      const ExportOptions& options = {});

}  // namespace evencount::stockroom
