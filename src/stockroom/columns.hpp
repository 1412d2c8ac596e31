#pragma once
/// The columns of each kind's table: how each is read into an item and written from one. docs/stock.md describes them for people.

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "materials/stock.hpp"

namespace evencount::stockroom {

/// Reads numbers of one file: it has a decimal comma or a decimal point, but never both, so that a mark between thousands is noticed.
class Numbers {
 public:
  /// The line that is read next.
  int line = 0;

  /// A decimal number, 0 or more, times 10^decimals, exactly. Errors: bad_text, out_of_range (above `most`).
  [[nodiscard]] Result<std::int64_t> scaled(std::string_view text, int decimals, std::int64_t most);
  /// Errors: bad_text.
  [[nodiscard]] Result<double> real(std::string_view text);

 private:
  [[nodiscard]] Result<Done> keep_to_one_sign(std::string_view text);
  char sign_ = 0;
  int first_line_ = 0;
};

/// An item while its line is read.
struct Draft {
  materials::StockItem item;
  std::optional<std::int64_t> counted;
  materials::PackOffer pack;
  std::optional<std::int64_t> price;
  std::string currency;
};

/// A line to be written: an item, and one of its packs (none for an item without).
struct Line {
  const materials::StockItem& item;
  std::int64_t on_hand = 0;
  const materials::PackOffer* pack = nullptr;
};

enum class ColumnPart { code, item, counted, pack };

struct Column {
  std::string_view name;
  ColumnPart part = ColumnPart::item;
  bool required = false;  ///< of a new item
  bool written = true;    ///< in exports; otherwise another way of giving the column before it
  bool number = false;    ///< with a decimal sign
  Result<Done> (*read)(Draft& draft, std::string_view text,
                       Numbers& numbers) = nullptr;  ///< empty text is nothing, or the default
  std::string (*write)(const Line& line) = nullptr;
};

[[nodiscard]] std::span<const Column> columns_of(materials::StockKind kind);
/// nullptr when there is none of this name.
[[nodiscard]] const Column* find_column(materials::StockKind kind, std::string_view name);

/// The column that only this kind has and needs: size, form, thread, cord, finding.
[[nodiscard]] std::string_view own_column(materials::StockKind kind);

/// An item of this kind with nothing in it.
[[nodiscard]] materials::StockItem empty_item(materials::StockKind kind);

}  // namespace evencount::stockroom
