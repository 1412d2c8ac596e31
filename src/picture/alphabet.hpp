#pragma once
/// Alphabets drawn for columns every second of which lies half a bead further on (peyote, brick).
///
/// A drawing counts places `across` and lines `down` as one reads. Upright letters: a place is a column, a line half a bead along the
/// edge. Letters on their side, for text along the band: a place is half a bead along the edge, a line a column. Either way a
/// bead can lie exactly where across + down is even, so that one drawing serves wherever the first place of its first line is free:
/// from a shifted column the whole letter lies half a bead further on, with the same shape.
///
/// Every width is odd. With an odd number of places between letters all letters of a line then begin on columns that lie level, and
/// stand on one line.
///
/// Properties (tests/picture/alphabet_test.cpp):
///  (1) every bead has across + down even and lies in its box; every width is odd; no letter is empty
///  (2) any two letters or digits of an alphabet, accents included, differ in at least `beads_apart` beads (legibility.hpp); with
///      narrow forms in two
///  (3) capitals and digits stand from line 0 to line `height`, round ones of three columns from the next line to the one before
///  (4) an accented letter is its letter, with something more

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"

namespace evencount::picture {

enum class AlphabetName {
  five_columns,   ///< capitals, small letters, digits; capitals seven beads high
  three_columns,  ///< capitals and digits; small letters stand as capitals
};
[[nodiscard]] std::string_view alphabet_id(AlphabetName name);

/// Which way text runs.
enum class Running {
  across,  ///< from column 0 on, upright
  down,    ///< towards higher steps, the heads of the letters towards the last column: turned clockwise
  up,      ///< towards step 0, the heads towards column 0
};

/// A bead's place in a drawing.
struct Dot {
  int across = 0;
  int down = 0;
  auto operator<=>(const Dot&) const = default;
};

struct LetterDrawing {
  std::string character;   ///< UTF-8
  int width = 1;           ///< places
  int top = 0;             ///< first line of its beads; below 0 for accents
  int bottom = 0;          ///< last line of its beads; beyond the alphabet's height for tails
  std::vector<Dot> beads;  ///< in order
  bool operator==(const LetterDrawing&) const = default;
};

/// A letter with an accent: Ä is A with a diaeresis.
struct Composition {
  std::string whole, letter;
  std::string accent;  ///< as it follows the letter in decomposed text (U+0300 to U+0327)
};

/// A character that is drawn as others: a typographic apostrophe as the plain one, a small letter as its capital.
struct Substitute {
  std::string character, drawn_as;
};

struct Alphabet {
  std::string name;  ///< for people: "the five-column alphabet"
  int height = 12;   ///< the line that capitals stand on; they begin on line 0
  std::vector<LetterDrawing> letters;
  std::vector<LetterDrawing> narrow;  ///< forms of wide letters for where there is no room
  std::vector<Composition> compositions;
  std::vector<Substitute> substitutes;
};

/// The drawings of an alphabet for text that runs this way, or nothing: three columns are too few for letters on their side.
[[nodiscard]] const Alphabet* find_alphabet(AlphabetName name, Running running);

/// A character's drawing, or nothing. Not through substitutes. `narrow`: its narrow form where it has one.
[[nodiscard]] const LetterDrawing* find_letter(const Alphabet& alphabet, std::string_view character,
                                               bool narrow = false);

/// A letter or digit, rather than a sign.
[[nodiscard]] bool is_letter(const LetterDrawing& drawing);
[[nodiscard]] bool has_accent(const Alphabet& alphabet, const LetterDrawing& drawing);

/// One line of text in drawings; a space is a null pointer. Composed and decomposed accents are the same.
/// Errors: bad_text (not UTF-8: the byte), unknown_name (a character the alphabet has not).
[[nodiscard]] Result<std::vector<const LetterDrawing*>> letters_of(const Alphabet& alphabet,
                                                                   std::string_view line,
                                                                   bool narrow = false);

/// The characters of UTF-8 text, one code point each. The text must be UTF-8.
[[nodiscard]] std::vector<std::string_view> code_points(std::string_view text);

}  // namespace evencount::picture
