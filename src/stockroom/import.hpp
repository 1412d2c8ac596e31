#pragma once
/// A table read into the stock: what it would change, and which of its lines can't be read.
///
/// A line is an item, known by its code. A column that is left out leaves what an item has as it is; an empty field is nothing (or
/// the default). A further line with an item's code and nothing else but a pack's columns adds a pack; the packs of a table take the
/// place of those an item had. A counted amount makes a movement of the difference; an empty one leaves the quantity as it is.
///
/// Properties (tests/stockroom/import_test.cpp, round_trip_test.cpp):
///  (1) importing what was exported changes nothing, into an empty stockroom gives the same items and quantities, and exporting that
///      gives the same bytes
///  (2) what a dry run lists is what the import then does
///  (3) with any fault nothing is written, unless faulty lines are to be skipped; then whole items are

#include <map>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "materials/stock.hpp"
#include "stockroom/csv_table.hpp"

namespace evencount::stockroom {

struct ImportOptions {
  std::optional<materials::StockKind> kind;  ///< told by the table's own columns if left out
  std::map<std::string, std::string>
      column_of;  ///< their header to our column; an empty column leaves theirs out
  std::map<std::string, std::string>
      constants;                 ///< our column to what it holds on every line; the table must not have it
  std::string currency = "EUR";  ///< of prices that stand without one
  bool skip_bad = false;
  bool dry_run = false;
  std::string note;  ///< of the movements
};

struct FieldChange {
  std::string field;  ///< our column; "packs" for all of them
  std::string before, after;
  bool operator==(const FieldChange&) const = default;
};

enum class ImportEffect { added, changed, unchanged };

struct ImportedItem {
  int line = 0;  ///< its first
  ImportEffect effect = ImportEffect::unchanged;
  materials::StockItem item;         ///< as it is afterwards
  std::int64_t movement = 0;         ///< by which the quantity changes
  std::vector<FieldChange> changes;  ///< of an item that was there
};

inline constexpr std::size_t most_faults = 50;  ///< that are listed

struct ImportReport {
  materials::StockKind kind = materials::StockKind::beads;
  std::vector<ImportedItem> items;  ///< in the table's order, without those that have a faulty line
  std::vector<LineFault> faults;    ///< by line, the first most_faults of them
  std::size_t fault_count = 0;
  bool written = false;

  [[nodiscard]] std::size_t count(ImportEffect effect) const;
};

using ItemsByCode = std::unordered_map<std::string, materials::StockedItem>;

/// What a table would change in a stock of these items. Pure: nothing is written.
/// Errors, `where` naming the line: unknown_name (a column, a kind), missing_field (a column that new items need), duplicate_name (a
/// column given twice), bad_usage (the kind can't be told from the columns). Whatever is wrong with a single line is a fault of the report.
[[nodiscard]] Result<ImportReport> plan_import(const CsvTable& table, const ItemsByCode& held,
                                               const ImportOptions& options);

}  // namespace evencount::stockroom
