#pragma once
/// Which field of a table's lines is which of our columns.

#include <optional>
#include <string>
#include <vector>

#include "stockroom/columns.hpp"
#include "stockroom/import.hpp"

namespace evencount::stockroom {

struct Field {
  const Column* column = nullptr;
  std::optional<std::size_t> at;  ///< the place in a row; none for a constant
  std::string constant;
  [[nodiscard]] bool is_constant() const { return !at; }
};

struct Layout {
  materials::StockKind kind = materials::StockKind::beads;
  std::vector<Field> fields;
  std::size_t code_at = 0;
  bool has_packs = false;  ///< the table has a column of packs
  std::string missing;     ///< the columns it lacks that a new item needs; empty when it has all
};

/// Errors: see plan_import.
[[nodiscard]] Result<Layout> lay_out(const CsvTable& table, const ImportOptions& options);

}  // namespace evencount::stockroom
