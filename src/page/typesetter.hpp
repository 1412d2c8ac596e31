#pragma once
/// Fonts and the measuring of text: private to this room.
///
/// The fonts are exactly the files of font_files.hpp, in a font configuration of our own, so that no other font on the
/// machine can change a page. All measures are taken at 72 dots per inch without hinting and hold for every
/// device.

#include <cairo.h>
#include <pango/pangocairo.h>

#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "drawing/marks.hpp"
#include "page/font_files.hpp"

namespace evencount::page {

inline constexpr double mm_per_pt = 25.4 / 72;  // exact, by the definition of the PostScript point

/// How a run of text is set.
struct Face {
  drawing::TextRole role = drawing::TextRole::body;
  double size_pt = 10;
  bool operator==(const Face&) const = default;
};

/// The box that the ink of a text covers, on its sheet.
struct InkBox {
  double left_mm = 0, top_mm = 0, right_mm = 0, bottom_mm = 0;
  [[nodiscard]] bool empty() const { return left_mm >= right_mm || top_mm >= bottom_mm; }
};

template <typename T>
struct Unref {
  void operator()(T* object) const { g_object_unref(object); }
};
using LayoutPointer = std::unique_ptr<PangoLayout, Unref<PangoLayout>>;

class Typesetter {
 public:
  /// Errors: missing_font.
  static Result<Typesetter> open(std::span<const FontFile> fonts = booklet_fonts());

  /// One paragraph, at a scale of a point to the unit.
  [[nodiscard]] LayoutPointer layout(Face face, std::string_view text) const;

  /// The first character that the face's fonts can't show, or of those that can be shown alone the first few that can't together; empty
  /// where they show all.
  [[nodiscard]] std::string first_unshown(Face face, std::string_view text) const;

  /// Errors: missing_glyph.
  [[nodiscard]] Result<Done> check(Face face, std::string_view text) const;

  [[nodiscard]] double width_mm(Face face, std::string_view text) const;

  /// A paragraph in lines of at most `width_mm`, without hyphenation: broken between words, and within a word only
  /// where it alone is wider. A last line of a single short word takes another one down with it, where that costs no
  /// line. Line ends in the text end paragraphs. Never empty. Property: the lines joined by spaces are the words of
  /// the text (but for words broken within).
  [[nodiscard]] std::vector<std::string> wrap(Face face, std::string_view text, double width_mm) const;

  /// The text, or as much of its beginning with "…" as fits.
  [[nodiscard]] std::string shortened(Face face, std::string_view text, double width_mm) const;

  /// Where the layout of a text begins: left end of its baseline.
  [[nodiscard]] drawing::Point origin(const drawing::Text& text) const;
  [[nodiscard]] InkBox ink_box(const drawing::Text& text) const;

 private:
  using ContextPointer = std::unique_ptr<PangoContext, Unref<PangoContext>>;
  explicit Typesetter(ContextPointer context) : context_(std::move(context)) {}

  ContextPointer context_;
};

/// The text on one line: white space and control characters as single spaces, none at the ends; no soft hyphens, as no word is hyphenated.
[[nodiscard]] std::string one_line(std::string_view text);

}  // namespace evencount::page
