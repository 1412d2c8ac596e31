#pragma once
/// Whether letters can be taken for each other: how many beads tell one from the other at the same place.
///
/// Properties (tests/picture/legibility_test.cpp):
///  (1) difference(a, b) == difference(b, a), 0 only for equal drawings, never more than difference(a, c) + difference(c, b)
///  (2) the likest letter that `legibility` names differs by the figure it gives, and no other by less

#include <string>
#include <string_view>
#include <vector>

#include "picture/font_lettering.hpp"
#include "picture/lettering.hpp"

namespace evencount::picture {

/// Fewest beads by which a letter should differ from every other. With three, a letter with one bead wrong still differs by one from
/// itself and by two or more from all others, so that it is read right: the distance at which a code corrects one error
/// (coding theory, from memory). With two, one wrong bead leaves it halfway.
inline constexpr int beads_apart = 3;

/// A letter and the one that it is likest to.
struct Likeness {
  std::string letter, other;
  int beads = 0;  ///< by which they differ
  bool operator==(const Likeness&) const = default;
};

struct Legibility {
  std::vector<Likeness> letters;  ///< each letter of a text once, the ones that are hardest to tell first
  bool operator==(const Legibility&) const = default;

  /// A warning: letters of the text that can be taken for another.
  [[nodiscard]] std::vector<Likeness> doubtful() const;
};

/// Beads that lie in one drawing and not in the other, both at the same place.
[[nodiscard]] int difference(const LetterDrawing& a, const LetterDrawing& b);

/// The letter or digit of the alphabet that is likest to a drawing; the first of several. The alphabet must have another.
[[nodiscard]] Likeness likest(const Alphabet& alphabet, const LetterDrawing& drawing, bool narrow = false);

/// The letters and digits of a text against all others of its alphabet; signs and spaces are left out.
/// Errors: bad_text, unknown_name, as `letter`.
[[nodiscard]] Result<Legibility> legibility(std::string_view text, const LetteringStyle& style = {});

/// The same for text in a font: each letter and digit, at its own place in the window, against those of the font's other letters and
/// digits that would stand there instead, from the same left side and on the same line. A letter that the beads are too coarse to
/// show at all differs by no bead from one that leaves none. Several times in a text, it counts where it is hardest to tell.
[[nodiscard]] Legibility legibility(const FontText& text, const FontLettering& lettering);

}  // namespace evencount::picture
