#pragma once
/// Items from whatever a designer has at hand: a palette of colours or a table, as a file's text.

#include <string>
#include <string_view>
#include <vector>

#include "stockroom/csv_table.hpp"
#include "stockroom/import.hpp"
#include "stockroom/palette.hpp"

namespace evencount::stockroom {

/// True for a table with a column of codes; anything else is taken for a palette.
[[nodiscard]] bool is_table(std::string_view text);

/// A palette as a table of beads of one size: each name is a code and a name, and the finish is opaque or what an item has already.
/// Errors: those of parse_palette.
[[nodiscard]] Result<CsvTable> table_of_palette(std::string_view text, const std::string& size);

/// The items of a file's text: of a table all of them, with what it says was counted; of a palette beads of this size, of which
/// there are none, their names for codes.
/// Errors: those of parse_palette, or read_csv and plan_import (a table's first fault).
[[nodiscard]] Result<std::vector<materials::StockedItem>> read_items(std::string_view text, const std::string& size);

}  // namespace evencount::stockroom
