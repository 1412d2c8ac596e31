#pragma once
/// Text in the drawn letters, laid into a window of cells: a face of a closed band, or all of it.
///
/// Properties (tests/picture/lettering_test.cpp):
///  (1) every bead of the text lies in the window, and no two letters touch
///  (2) each letter has exactly the beads of its drawing, whichever column it begins on: a letter that begins on a shifted column
///      lies half a bead further on
///  (3) text that runs down and text that runs up are each other's half turn
///  (4) begin, middle and end leave the same room, on the left, on both sides (to within one column, or one bead and the shift), on
///      the right; top, middle and bottom likewise
///  (5) a stamp pressed onto a chart and copied from it again is the same stamp
///  (6) text that does not fit is refused with the figures, never cut

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"
#include "chart/edit.hpp"
#include "picture/alphabet.hpp"

namespace evencount::picture {

/// A rectangle of cells to write in. On a ring it may go past the last step.
struct Window {
  chart::Cell first;
  int columns = 0;
  int steps = 0;
  bool operator==(const Window&) const = default;
};

enum class LineAlign { begin, middle, end };    ///< along the line, as one reads: left, centre, right
enum class StackAlign { top, middle, bottom };  ///< of the lines on each other, as one reads

struct LetteringStyle {
  AlphabetName alphabet = AlphabetName::five_columns;
  Running running = Running::across;
  LineAlign line = LineAlign::middle;
  StackAlign stack = StackAlign::middle;
  /// Columns between letters across the band: an odd number, so that all letters of a line begin on level columns. Text
  /// along the band: beads, any number.
  int letter_space = 1;
  /// The same between words; 3 across and 2 along where it is not given.
  std::optional<int> word_space;
  /// Free beads between the boxes of two lines (columns, when text runs along the band). A line's box reaches from the top of its
  /// capitals to their foot, and further where the line has accents or tails.
  int line_space = 1;
  bool narrow =
      false;  ///< M, N and W of the three-column alphabet in three columns too; they are harder to tell from H then
  bool operator==(const LetteringStyle&) const = default;
};

struct PlacedLetter {
  std::string character;  ///< as drawn: a small letter of the three-column alphabet is its capital here
  int line = 0;           ///< of the text, from 0
  std::vector<chart::Cell> beads;  ///< on the chart, step after step
  bool operator==(const PlacedLetter&) const = default;
};

struct Lettering {
  chart::Stamp stamp;  ///< the smallest one that holds all letters
  chart::Cell at;      ///< where its first cell lies; on a ring its step may lie past the last
  std::vector<PlacedLetter> letters;
  bool operator==(const Lettering&) const = default;
};

/// Text, its lines parted by line feeds, in beads of one kind.
///
/// Errors: bad_text (no UTF-8; nothing but spaces), unknown_name (a character that the alphabet has not; letters on their side that
/// are not drawn), out_of_range (spaces below 0 or above 100, an even number of columns between letters or words, a window
/// without cells), wrong_size (columns that do not alternate; text that needs more columns or steps than the window has: both figures).
[[nodiscard]] Result<Lettering> letter(std::string_view text, const chart::Grid& grid, const Window& window,
                                       chart::Bead bead, const LetteringStyle& style = {});

/// The columns and steps that a text takes, from a column that is not shifted. The errors of `letter` but for the window's.
struct LetteringSize {
  int columns = 0, steps = 0;
  bool operator==(const LetteringSize&) const = default;
};
[[nodiscard]] Result<LetteringSize> lettering_size(std::string_view text, const LetteringStyle& style = {});

/// A chart with a text's stamp on it. Nothing of a text is lost: errors are out_of_range where it leaves the chart (along a ring it
/// goes on at the other end), wrong_size where it falls on a cell that holds no bead, and those of chart::press.
[[nodiscard]] Result<chart::Edit> press_text(const chart::Chart& chart, const chart::Grid& grid,
                                             const chart::Stamp& stamp, chart::Cell at);

/// Both in one.
[[nodiscard]] Result<chart::Edit> write_text(const chart::Chart& chart, const chart::Grid& grid,
                                             std::string_view text, const Window& window, chart::Bead bead,
                                             const LetteringStyle& style = {});

}  // namespace evencount::picture
