#pragma once
/// A list of bead colours as a text file.
///
/// One colour a line: `#rrggbb NAME`, or `R G B NAME` with numbers from 0 to 255, as plain palette files (GPL) have them, whose header lines
/// ("GIMP Palette", "Name:", "Columns:") are passed over. Lines that begin with # and no colour are comments.

#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"
#include "colour/srgb.hpp"

namespace evencount::app {

struct NamedColour {
  std::string name;  ///< the colour's own digits where the file has none
  colour::Rgb colour;
  bool operator==(const NamedColour&) const = default;
};

/// Errors: bad_text, naming the line; missing_field when there is no colour in it.
[[nodiscard]] Result<std::vector<NamedColour>> parse_stock(std::string_view text);

}  // namespace evencount::app
