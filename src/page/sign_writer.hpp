#pragma once
/// Signs of drawings in a PDF. Private to this room.
///
/// A chart's letters and numbers must not come out among the words when the text is taken from a page, and a panel has a hundred thousand of
/// them. They are written as glyphs, many at a time, of fonts of their own in which every glyph reads as white space.

#include <map>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

#include "page/typesetter.hpp"

namespace evencount::page {

/// What each glyph of a sign reads as. A plain space would do, but has a code of its own in every font that is cut down for a PDF.
inline constexpr std::string_view sign_reads_as = "\u2003";

/// What makes one sign another, wherever it stands and in whatever ink.
using SignKey = std::tuple<drawing::TextRole, double, drawing::Align, std::string>;
[[nodiscard]] SignKey key_of(const drawing::Text& sign);

/// A sign's text, and where it begins on its baseline, from its place.
struct SetSign {
  LayoutPointer layout;
  double left_pt = 0;
};
/// Errors: missing_glyph.
[[nodiscard]] Result<SetSign> set_sign(const drawing::Text& sign, const Typesetter& typesetter);

class SignWriter {
 public:
  /// For a context of a PDF, whose unit is a point. Both must outlive it.
  SignWriter(cairo_t* canvas, const Typesetter& typesetter) : canvas_(canvas), typesetter_(typesetter) {}

  /// Shown with the next `flush`, or before. Errors: missing_glyph, missing_font, system_failure.
  [[nodiscard]] Result<Done> add(const drawing::Text& sign);
  void flush();

 private:
  struct FaceEnd {
    void operator()(cairo_font_face_t* face) const { cairo_font_face_destroy(face); }
  };
  using FontFace = std::unique_ptr<cairo_font_face_t, FaceEnd>;
  struct Run {
    cairo_font_face_t* face = nullptr;
    std::vector<cairo_glyph_t> glyphs;  ///< from the place of the sign, in points
  };

  Result<cairo_font_face_t*> face_of(const std::string& path);
  Result<std::vector<Run>> runs_of(const drawing::Text& sign);

  cairo_t* canvas_;
  const Typesetter& typesetter_;
  std::map<std::string, FontFace> faces_;  ///< by their files
  std::map<SignKey, std::vector<Run>> known_;
  Run pending_;
  double pending_size_pt_ = 0;
  colour::Rgb pending_ink_;
};

}  // namespace evencount::page
