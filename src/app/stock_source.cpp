#include "app/stock_source.hpp"

#include "app/files.hpp"
#include "app/verbs/stock_text.hpp"
#include "stockroom/stock_file.hpp"

namespace evencount::app {

Result<std::vector<materials::StockedItem>> stock_items(const StockSource& source, const std::string& size) {
  if (!source.given()) return std::vector<materials::StockedItem>{};
  if (!source.file.empty()) {
    const auto text = read_file(source.file);
    if (!text) return text.problem();
    if (!text->starts_with("SQLite format 3")) {  // how its files begin: sqlite.org/fileformat2.html
      auto items = stockroom::read_items(*text, size);
      if (!items) return items.problem().within(source.file);
      return items;
    }
  }
  const auto stock = open_stock(source.file);
  if (!stock) return stock.problem();
  return stock->items();
}

}  // namespace evencount::app
