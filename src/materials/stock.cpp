#include "materials/stock.hpp"

#include "base/text.hpp"

namespace evencount::materials {

std::string_view kind_name(StockKind kind) {
  switch (kind) {
    case StockKind::beads:
      return "beads";
    case StockKind::forms:
      return "forms";
    case StockKind::thread:
      return "thread";
    case StockKind::cord:
      return "cord";
    case StockKind::findings:
      return "findings";
  }
  return "findings";
}

Result<StockKind> parse_stock_kind(std::string_view name) {
  std::string known;
  for (const StockKind kind : stock_kinds) {
    if (name == kind_name(kind)) return kind;
    known += (known.empty() ? "one of " : ", ") + std::string(kind_name(kind));
  }
  return Problem{ProblemCode::unknown_name, "", quote(name), known};
}

std::string_view unit_of(StockKind kind) {
  switch (kind) {
    case StockKind::beads:
      return "mg";
    case StockKind::forms:
    case StockKind::findings:
      return "pieces";
    case StockKind::thread:
    case StockKind::cord:
      return "mm";
  }
  return "pieces";
}

StockKind kind_of(const StockItem& item) {
  return stock_kinds[item.what.index()];  // the variant's order is the kinds'
}

}  // namespace evencount::materials
