#pragma once
/// Text as pictures in a font that is installed on this machine, for picture/font_lettering.hpp to lay onto beads.
///
/// A booklet's own fonts are fixed (typesetter.hpp); these are the designer's choice, and what is installed differs from machine
/// to machine, so the beads are what a project keeps, never the name of the font alone. A family that isn't installed, or has not all
/// characters, is a problem: no other font steps in.
///
/// Properties (tests/page/font_bitmap_test.cpp):
///  (1) capitals are as high as asked, to a pixel
///  (2) the letters' pictures, each at its place, add up to the text's where no two of them touch
///  (3) the same request gives the same pictures

#include <string>
#include <string_view>
#include <vector>

#include "base/units.hpp"
#include "picture/font_lettering.hpp"

namespace evencount::page {

struct FontRequest {
  std::string family;  ///< as font_families lists it; case does not matter
  bool bold = false;   ///< the family's own bold, or one made from it
  bool italic = false;
  Length capital_height = millimetres(11.6);  ///< of a capital H: seven 11/0 cylinder beads
  Length letter_space;      ///< more between letters than the font has: a column keeps them apart on beads
  double dots_per_mm = 16;  ///< about 20 by 26 pixels to an 11/0 cylinder bead; 1 to 100
};

/// The families that are installed, sorted.
[[nodiscard]] std::vector<std::string> font_families();

/// A text, lines parted by line feeds and centred on each other.
/// Errors: unknown_name (no such family: names some that there are), missing_glyph (a character that the family has not, or has no
/// capital H to measure), bad_text (not UTF-8, or no ink), out_of_range (a height outside 0.5 to 500 mm, dots outside their range, a
/// text of more than 100 million pixels).
[[nodiscard]] Result<picture::FontText> font_text(std::string_view text, const FontRequest& request);

}  // namespace evencount::page
