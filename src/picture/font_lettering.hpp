#pragma once
/// Text in any font, laid onto the cells of a chart: a bead is of the letter where ink covers enough of it.
///
/// The pictures of the text come from elsewhere (page/font_bitmap.hpp); here is only what becomes of them on the true cells, each one
/// column wide and one bead long by the gauge, the shifted columns half a bead further on.
///
/// Properties (tests/picture/font_lettering_test.cpp):
///  (1) a picture that covers cells exactly gives exactly these cells, whatever its resolution
///  (2) a lower threshold never takes a bead away
///  (3) every bead lies in the window; text that does not fit is refused
///  (4) text that runs up is text that runs down turned by half a turn

#include <string>
#include <vector>

#include "base/result.hpp"
#include "bead/gauge.hpp"
#include "chart/edit.hpp"
#include "picture/ink_coverage.hpp"
#include "picture/lettering.hpp"

namespace evencount::picture {

/// One letter's own picture, cut to its ink.
struct LetterImage {
  std::string character;
  double left_mm = 0;  ///< of the ink, from the left side of the text's picture; 0 where it stands in no text
  double top_mm = 0;   ///< of the ink, from the baseline: below 0 above it
  double baseline_mm = 0;  ///< of its line, from the top of the text's picture; 0 where it stands in no text
  Coverage ink;
};

/// A text as a font shows it.
struct FontText {
  Coverage text;                     ///< upright, all lines
  std::vector<LetterImage> letters;  ///< the letters and digits of the text, in order
  std::vector<LetterImage>
      others;  ///< A to Z, a to z, 0 to 9, as far as the font has them and they leave ink
};

struct FontStyle {
  Running running = Running::across;
  LineAlign line = LineAlign::middle;
  StackAlign stack = StackAlign::middle;
  double threshold = 0.5;  ///< share of a cell from which on it is of the letter; above 0, at most 1
  bool operator==(const FontStyle&) const = default;
};

struct FontLettering {
  chart::Stamp stamp;
  chart::Cell at;  ///< where its first cell lies; on a ring its step may lie past the last
  // What it was sampled on, so that other letters can be put in the same place.
  BoxMm place;  ///< of the text's picture, turned, from the chart's corner
  chart::Grid grid;
  double column_mm = 0, edge_mm = 0;
  FontStyle style;
};

/// The ink is laid where `style` says and then moved by less than a bead to where it meets the beads most sharply: the least sum of
/// c (1 - c) over all cells, c the share of a cell that is covered, tried by eighths of a bead.
///
/// Errors: out_of_range (check(coverage); a threshold outside its range; a window without cells), bad_text (no ink, or too little of
/// it to colour a bead), wrong_size (a text larger than the window: both sizes).
[[nodiscard]] Result<FontLettering> letter_in_font(const FontText& text, const chart::Grid& grid,
                                                   const bead::Gauge& gauge, const Window& window,
                                                   chart::Bead bead, const FontStyle& style = {});

/// The cells that a picture covers by `threshold` or more, its left top corner there; step after step.
[[nodiscard]] std::vector<chart::Cell> covered_cells(const InkSums& ink, const BoxMm& place,
                                                     const chart::Grid& grid, double column_mm,
                                                     double edge_mm, double threshold);

/// A box in an upright picture of this size, where it lies when the picture is turned.
[[nodiscard]] BoxMm turned_box(const BoxMm& box, double width_mm, double height_mm, Running running);

}  // namespace evencount::picture
