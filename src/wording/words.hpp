#pragma once
/// The word chart: a plan written row by row, as the trade writes it.
///
///     Word chart: New moon
///     Flat peyote, even count: 6 columns, 24 beads along the edge, 48 rows, zipped.
///     Rows 1–2 (L): (2)A, (1)B, (3)A
///     Row 3 (R): (3)A
///
/// Rows 1 and 2 of peyote are one line, as they are strung together; then a line a row or round. A run
/// is a count and a letter; neighbouring runs of a line differ. (L) and (R) say which way the needle travels
/// with column 0 on the left, (D) and (U) which way a row runs that is worked along the edge, down from step 0 or up to it. What a
/// row's ends do beyond the technique's custom follows: "Row 5 (R), decrease at the beginning: (3)A". `dec` stands where a round strings no
/// bead and goes through the next two; right-angle weave's units are parted by semicolons. Where the designer asks, repeats are folded:
///
///     Row 6 (L): (1)B, *(2)A, (1)B* × 6
///     Rows 13–28: work rows 5–12 twice
///
/// Source: common practice; facetjewelry.com/bead-buzz/how-to/2016/09/how-to-read-an-even-count-peyote-pattern.

#include <span>
#include <string>
#include <vector>

#include "language/language.hpp"
#include "weave/plan.hpp"

namespace evencount::wording {

/// One line of the chart, in its parts, so that a page can set them apart.
struct WordLine {
  std::string label;  ///< "Rows 1–2 (L)", "Row 3 (R)"
  std::string beads;  ///< "(2)A, (1)B"
  int first_row = 1;
  int last_row = 1;
  int count = 0;  ///< beads in the line
  bool operator==(const WordLine&) const = default;
};

struct WordChart {
  std::string heading;  ///< "Word chart: New moon"
  std::string facts;    ///< the technique and the size, one sentence
  std::vector<WordLine> lines;
  bool operator==(const WordChart&) const = default;
};

/// The language, and what is folded. Reading unfolds it.
struct WordStyle {
  bool fold_runs = false;  ///< "*(2)A, (1)B* × 6" within a row
  bool fold_rows = false;  ///< "work rows 5–12 twice"
  const language::Language* language = &language::english();
  bool operator==(const WordStyle&) const = default;
};

/// The words of a plan. `letters[bead]` names each bead and must reach as far as the plan's highest bead.
/// Property: reading the text back gives the chart that the plan stitches.
[[nodiscard]] WordChart write_words(const weave::Plan& plan, std::span<const std::string> letters,
                                    std::string_view band_name, const WordStyle& style = {});

/// A label as it stands before its beads: "Row 3 (R):".
[[nodiscard]] std::string ended(const std::string& label, const language::Language& language = language::english());

/// One line after another, "LABEL: BEADS", each ended by a newline.
[[nodiscard]] std::string to_text(const WordChart& words, const language::Language& language = language::english());

/// What the maker must know of the technique beyond the rows; may be empty.
[[nodiscard]] std::string technique_note(const weave::Plan& plan,
                                         const language::Language& language = language::english());

/// How the ends of a band are joined, in a sentence or two, from its plan; empty for an open or round one.
[[nodiscard]] std::string closing_note(const weave::Plan& plan,
                                       const language::Language& language = language::english());

/// What the maker must know at the turns of this plan (figure-8, loops); empty when every turn is plain.
[[nodiscard]] std::string turn_note(const weave::Plan& plan,
                                    const language::Language& language = language::english());

/// The name of the plan's technique in small letters, as printed.
[[nodiscard]] std::string technique_name(const weave::Plan& plan,
                                         const language::Language& language = language::english());
/// "6 columns" and "24 beads along the edge".
[[nodiscard]] std::pair<std::string, std::string> sizes_text(const weave::Plan& plan,
                                                             const language::Language& language = language::english());
/// "48 rows".
[[nodiscard]] std::string rows_text(const weave::Plan& plan,
                                    const language::Language& language = language::english());

}  // namespace evencount::wording
