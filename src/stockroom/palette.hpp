#pragma once
/// A list of colours as a text file.
///
/// One colour a line: `#rrggbb NAME`, or `R G B NAME` with numbers from 0 to 255, as plain palette files (GPL) have them, whose header lines
/// ("GIMP Palette", "Name:", "Columns:") are passed over. Lines that begin with # and no colour are comments.
///
/// Property (tests/stockroom/palette_test.cpp): parse_palette(write_palette(colours)) == colours, names on one line each, none empty and
/// none beginning with a comma or semicolon.

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"
#include "colour/srgb.hpp"

namespace evencount::stockroom {

struct NamedColour {
  std::string name;  ///< the colour's own digits where the file has none
  colour::Rgb colour;
  int line = 0;  ///< in the file it was read from, 0 for none
  bool operator==(const NamedColour&) const = default;
};

/// Errors: bad_text, naming the line; missing_field when there is no colour in it.
[[nodiscard]] Result<std::vector<NamedColour>> parse_palette(std::string_view text);

/// A plain palette file (GPL). Line ends and tabs in names become blanks.
[[nodiscard]] std::string write_palette(std::span<const NamedColour> colours, std::string_view title);

}  // namespace evencount::stockroom
