#include "picture/legibility.hpp"

#include <algorithm>
#include <iterator>
#include <limits>
#include <optional>

#include "base/text.hpp"
#include "picture/lettering_cells.hpp"

namespace evencount::picture {
namespace {

using chart::Cell;

template <typename Range, typename Less>
int symmetric_difference(const Range& a, const Range& b, Less less) {
  typename Range::const_iterator i = a.begin(), j = b.begin();
  int both = 0;
  while (i != a.end() && j != b.end()) {
    if (less(*i, *j)) {
      ++i;
    } else if (less(*j, *i)) {
      ++j;
    } else {
      ++both, ++i, ++j;
    }
  }
  return static_cast<int>(std::ssize(a) + std::ssize(b)) - 2 * both;
}

/// Adds what a letter is likest to, or the worse of it and what is there already.
void note(std::vector<Likeness>& letters, Likeness likeness) {
  const auto there = std::find_if(letters.begin(), letters.end(),
                                  [&](const Likeness& l) { return l.letter == likeness.letter; });
  if (there == letters.end())
    letters.push_back(std::move(likeness));
  else if (likeness.beads < there->beads)
    *there = std::move(likeness);
}

Legibility sorted(std::vector<Likeness> letters) {
  std::stable_sort(letters.begin(), letters.end(),
                   [](const Likeness& a, const Likeness& b) { return a.beads < b.beads; });
  return {std::move(letters)};
}

/// Puts pictures of letters where a text in a font stands.
class PlaceOnBeads {
 public:
  PlaceOnBeads(const FontText& text, const FontLettering& lettering) : text_(text), lettering_(lettering) {}

  /// The cells of a letter whose ink begins where that of `there` does.
  [[nodiscard]] std::vector<Cell> cells(const LetterImage& letter, const LetterImage& there) const {
    const BoxMm upright{there.left_mm, there.baseline_mm + letter.top_mm, letter.ink.width_mm,
                        letter.ink.height_mm};
    BoxMm box = turned_box(upright, text_.text.width_mm, text_.text.height_mm, lettering_.style.running);
    box.left += lettering_.place.left;
    box.top += lettering_.place.top;
    const InkSums ink(rotated(letter.ink, lettering_.style.running));
    return covered_cells(ink, box, lettering_.grid, lettering_.column_mm, lettering_.edge_mm,
                         lettering_.style.threshold);
  }

 private:
  const FontText& text_;
  const FontLettering& lettering_;
};

}  // namespace

std::vector<Likeness> Legibility::doubtful() const {
  std::vector<Likeness> found;
  std::copy_if(letters.begin(), letters.end(), std::back_inserter(found),
               [](const Likeness& l) { return l.beads < beads_apart; });
  return found;
}

int difference(const LetterDrawing& a, const LetterDrawing& b) {
  return symmetric_difference(a.beads, b.beads, std::less<>());
}

Likeness likest(const Alphabet& alphabet, const LetterDrawing& drawing, bool narrow) {
  Likeness found{drawing.character, "", std::numeric_limits<int>::max()};
  for (const LetterDrawing& letter : alphabet.letters) {
    if (letter.character == drawing.character || !is_letter(letter)) continue;
    const LetterDrawing& other = *find_letter(alphabet, letter.character, narrow);
    if (const int beads = difference(drawing, other); beads < found.beads)
      found = {drawing.character, other.character, beads};
  }
  return found;
}

Result<Legibility> legibility(std::string_view text, const LetteringStyle& style) {
  const auto alphabet = alphabet_for(style);
  if (!alphabet) return alphabet.problem();
  std::vector<Likeness> letters;
  for (const std::string_view line : split(text, '\n')) {
    const auto drawings = letters_of(**alphabet, line, style.narrow);
    if (!drawings) return drawings.problem();
    for (const LetterDrawing* drawing : *drawings)
      if (drawing && is_letter(*drawing)) note(letters, likest(**alphabet, *drawing, style.narrow));
  }
  return sorted(std::move(letters));
}

Legibility legibility(const FontText& text, const FontLettering& lettering) {
  const PlaceOnBeads place(text, lettering);
  std::vector<Likeness> letters;
  for (const LetterImage& letter : text.letters) {
    const std::vector<Cell> own = place.cells(letter, letter);
    std::optional<Likeness> found;
    for (const LetterImage& other : text.others) {
      if (other.character == letter.character) continue;
      const int beads = symmetric_difference(own, place.cells(other, letter), step_after_step);
      if (!found || beads < found->beads) found = Likeness{letter.character, other.character, beads};
    }
    if (found) note(letters, *found);
  }
  return sorted(std::move(letters));
}

}  // namespace evencount::picture
