#include "page/sign_writer.hpp"

#include <cairo-ft.h>
#include <fontconfig/fontconfig.h>
#include <ft2build.h>
#include FT_FREETYPE_H
#include <pango/pangofc-font.h>

namespace evencount::page {
namespace {

/// A font file as FreeType has it, with a library of its own: no two documents share one, whatever thread they are made in.
class OpenFont {
 public:
  explicit OpenFont(const std::string& path) {
    if (FT_Init_FreeType(&library_) != 0) return;
    if (FT_New_Face(library_, path.c_str(), 0, &face_) != 0) return;
    // Without a map from characters cairo can't tell what a glyph reads as, and believes what it is told.
    face_->charmap = nullptr;
  }
  ~OpenFont() {
    if (face_) FT_Done_Face(face_);
    if (library_) FT_Done_FreeType(library_);
  }
  OpenFont(const OpenFont&) = delete;
  OpenFont& operator=(const OpenFont&) = delete;

  [[nodiscard]] FT_Face face() const { return face_; }

 private:
  FT_Library library_ = nullptr;
  FT_Face face_ = nullptr;
};

std::string file_of(PangoFont* font) {
  FcChar8* path = nullptr;
  FcPatternGetString(pango_fc_font_get_pattern(PANGO_FC_FONT(font)), FC_FILE, 0, &path);
  return path ? reinterpret_cast<const char*>(path) : "";
}

}  // namespace

Result<cairo_font_face_t*> SignWriter::face_of(const std::string& path) {
  if (const auto found = faces_.find(path); found != faces_.end()) return found->second.get();
  auto font = std::make_unique<OpenFont>(path);
  if (!font->face()) return Problem{ProblemCode::missing_font, path, "no such font", "a font of the booklet"};
  FontFace face(cairo_ft_font_face_create_for_ft_face(font->face(), FT_LOAD_NO_HINTING));
  static const cairo_user_data_key_t key{};
  // Cairo keeps a face longer than we do; the file goes with it.
  const auto status = cairo_font_face_set_user_data(face.get(), &key, font.get(), [](void* owned) { delete static_cast<OpenFont*>(owned); });
  if (status != CAIRO_STATUS_SUCCESS) return Problem{ProblemCode::system_failure, path, cairo_status_to_string(status), "a font of the booklet"};
  static_cast<void>(font.release());
  return faces_.emplace(path, std::move(face)).first->second.get();
}

SignKey key_of(const drawing::Text& sign) {
  return {sign.role, sign.size_pt, sign.align, sign.text};
}

Result<SetSign> set_sign(const drawing::Text& sign, const Typesetter& typesetter) {
  const Face face{sign.role, sign.size_pt};
  if (auto ok = typesetter.check(face, sign.text); !ok) return ok.problem();
  drawing::Text at_origin = sign;
  at_origin.at = {};
  return SetSign{typesetter.layout(face, sign.text), typesetter.origin(at_origin).x_mm / mm_per_pt};
}

Result<std::vector<SignWriter::Run>> SignWriter::runs_of(const drawing::Text& sign) {
  const auto set = set_sign(sign, typesetter_);
  if (!set) return set.problem();
  double x_pt = set->left_pt;
  std::vector<Run> runs;
  for (GSList* item = pango_layout_get_line_readonly(set->layout.get(), 0)->runs; item; item = item->next) {
    const auto* shaped = static_cast<const PangoGlyphItem*>(item->data);
    const auto font = face_of(file_of(shaped->item->analysis.font));
    if (!font) return font.problem();
    Run run{*font, {}};
    for (int i = 0; i < shaped->glyphs->num_glyphs; ++i) {
      const PangoGlyphInfo& info = shaped->glyphs->glyphs[i];
      constexpr double unit = 1.0 / PANGO_SCALE;
      run.glyphs.push_back({info.glyph, x_pt + unit * info.geometry.x_offset, unit * info.geometry.y_offset});
      x_pt += unit * info.geometry.width;
    }
    runs.push_back(std::move(run));
  }
  return runs;
}

Result<Done> SignWriter::add(const drawing::Text& sign) {
  SignKey key = key_of(sign);
  auto found = known_.find(key);
  if (found == known_.end()) {
    auto runs = runs_of(sign);
    if (!runs) return runs.problem();
    found = known_.emplace(std::move(key), std::move(*runs)).first;
  }
  for (const Run& run : found->second) {
    if (run.face != pending_.face || sign.size_pt != pending_size_pt_ || sign.ink != pending_ink_) flush();
    pending_.face = run.face, pending_size_pt_ = sign.size_pt, pending_ink_ = sign.ink;
    for (const cairo_glyph_t& glyph : run.glyphs)
      pending_.glyphs.push_back({glyph.index, sign.at.x_mm / mm_per_pt + glyph.x, sign.at.y_mm / mm_per_pt + glyph.y});
  }
  return Done{};
}

void SignWriter::flush() {
  if (pending_.glyphs.empty()) return;
  const auto count = static_cast<int>(pending_.glyphs.size());
  std::string read_as;
  for (int i = 0; i < count; ++i) read_as += sign_reads_as;
  const std::vector<cairo_text_cluster_t> clusters(pending_.glyphs.size(), {static_cast<int>(sign_reads_as.size()), 1});
  cairo_set_source_rgb(canvas_, pending_ink_.red / 255.0, pending_ink_.green / 255.0, pending_ink_.blue / 255.0);
  cairo_set_font_face(canvas_, pending_.face);
  cairo_set_font_size(canvas_, pending_size_pt_);
  cairo_show_text_glyphs(canvas_, read_as.c_str(), static_cast<int>(read_as.size()), pending_.glyphs.data(), count, clusters.data(),
                         count, cairo_text_cluster_flags_t{});
  pending_.glyphs.clear();
}

}  // namespace evencount::page
