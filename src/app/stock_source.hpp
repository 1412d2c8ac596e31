#pragma once
/// Where a verb's stock comes from: a stockroom's file, a table, a palette, or the designer's own stockroom.

#include <string>
#include <vector>

#include "materials/stock.hpp"

namespace evencount::app {

struct StockSource {
  std::string file;   ///< empty for none, or with `own` for the stockroom in the user's data folder
  bool own = false;
  [[nodiscard]] bool given() const { return own || !file.empty(); }
};

/// `size` is a palette's, which has none of its own. Nothing for no source.
/// Errors: those of read_file, stockroom::read_items, open_stock; each with the file's name.
[[nodiscard]] Result<std::vector<materials::StockedItem>> stock_items(const StockSource& source, const std::string& size);

}  // namespace evencount::app
