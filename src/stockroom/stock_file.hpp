#pragma once
/// Colours of beads from whatever a designer has at hand: a palette, a table of beads, a stockroom.

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

/// The beads of this size that have a colour, by their names.
[[nodiscard]] std::vector<NamedColour> colours_of(const std::vector<HeldItem>& items,
                                                  const std::string& size);

/// The colours that a file's text offers for beads of this size: all of a palette; of a table the beads of this size that have a colour.
/// Errors: those of parse_palette, or read_csv and plan_import (a table's first fault); missing_field when there is no colour.
[[nodiscard]] Result<std::vector<NamedColour>> read_colours(std::string_view text, const std::string& size);

}  // namespace evencount::stockroom
