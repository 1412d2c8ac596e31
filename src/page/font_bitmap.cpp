#include "page/font_bitmap.hpp"

#include <cairo.h>
#include <fmt/format.h>
#include <fontconfig/fontconfig.h>
#include <pango/pangocairo.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <optional>

#include "base/text.hpp"
#include "page/typesetter.hpp"

namespace evencount::page {
namespace {

using picture::Coverage;
using picture::LetterImage;

using ContextPointer = std::unique_ptr<PangoContext, Unref<PangoContext>>;
using SurfacePointer = std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)>;
using CanvasPointer = std::unique_ptr<cairo_t, decltype(&cairo_destroy)>;

/// A box of pixels, its left top corner counted from where the text's layout begins.
struct Pixels {
  int left = 0, top = 0, width = 0, height = 0;
};

/// The family as it calls itself.
Result<std::string> installed_family(std::string_view family) {
  const std::vector<std::string> families = font_families();
  const auto same = std::find_if(families.begin(), families.end(), [&](const std::string& name) {
    return lower_ascii(name) == lower_ascii(trim(family));
  });
  if (same != families.end()) return *same;
  constexpr std::size_t shown = 5;
  std::string some;
  for (std::size_t i = 0; i < std::min(shown, families.size()); ++i)
    some += (i > 0 ? ", " : "") + families[i];
  return Problem{ProblemCode::unknown_name, "font", quote(family),
                 families.empty() ? "a font family that is installed; there is none"
                                  : fmt::format("a font family that is installed: {}{}", some,
                                                families.size() > shown ? " …" : "")};
}

/// Sets text in one font at any number of pixels to the em.
class Setter {
 public:
  Setter(std::string family, const FontRequest& request)
      : family_(std::move(family)), bold_(request.bold), italic_(request.italic) {
    const std::unique_ptr<PangoFontMap, Unref<PangoFontMap>> map(pango_cairo_font_map_new());
    pango_cairo_font_map_set_resolution(PANGO_CAIRO_FONT_MAP(map.get()), 72);
    context_.reset(pango_font_map_create_context(map.get()));
    cairo_font_options_t* options = cairo_font_options_create();
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
    pango_cairo_context_set_font_options(context_.get(), options);
    cairo_font_options_destroy(options);
    pango_context_set_round_glyph_positions(context_.get(), FALSE);
  }

  [[nodiscard]] LayoutPointer set(std::string_view text, double em, double letter_space = 0) const {
    LayoutPointer layout(pango_layout_new(context_.get()));
    PangoFontDescription* description = pango_font_description_new();
    pango_font_description_set_family(description, family_.c_str());
    pango_font_description_set_weight(description, bold_ ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
    pango_font_description_set_style(description, italic_ ? PANGO_STYLE_ITALIC : PANGO_STYLE_NORMAL);
    pango_font_description_set_absolute_size(description, em * PANGO_SCALE);
    pango_layout_set_font_description(layout.get(), description);
    pango_font_description_free(description);
    // Without fallback a character that the family has not is an unknown glyph, not a letter of another font.
    PangoAttrList* attributes = pango_attr_list_new();
    pango_attr_list_insert(attributes, pango_attr_fallback_new(FALSE));
    // A ligature is no letter that can be told from others.
    pango_attr_list_insert(attributes, pango_attr_font_features_new("liga=0, clig=0, dlig=0"));
    if (letter_space > 0)
      pango_attr_list_insert(attributes,
                             pango_attr_letter_spacing_new(static_cast<int>(letter_space * PANGO_SCALE)));
    pango_layout_set_attributes(layout.get(), attributes);
    pango_attr_list_unref(attributes);
    pango_layout_set_alignment(layout.get(), PANGO_ALIGN_CENTER);
    pango_layout_set_text(layout.get(), text.data(), static_cast<int>(text.size()));
    return layout;
  }

  [[nodiscard]] bool has(std::string_view text) const {
    constexpr double any_em = 100;
    return pango_layout_get_unknown_glyphs_count(set(text, any_em).get()) == 0;
  }

  /// Height of a capital H in ems.
  [[nodiscard]] double capital_height() const {
    constexpr double em = 1000;
    PangoRectangle ink;
    pango_layout_get_extents(set("H", em).get(), &ink, nullptr);
    return ink.height / (em * PANGO_SCALE);
  }

 private:
  ContextPointer context_;
  std::string family_;
  bool bold_, italic_;
};

Pixels ink_pixels(PangoLayout* layout) {
  PangoRectangle ink;
  pango_layout_get_pixel_extents(layout, &ink, nullptr);
  // A pixel more on every side: extents are rounded, ink of slanted letters is not always within.
  return {ink.x - 1, ink.y - 1, ink.width + 2, ink.height + 2};
}

/// The ink within a box of pixels; `shift` moves it by part of a pixel.
Coverage drawn(PangoLayout* layout, const Pixels& pixels, double dots_per_mm, double shift = 0) {
  const SurfacePointer surface(cairo_image_surface_create(CAIRO_FORMAT_A8, pixels.width, pixels.height),
                               &cairo_surface_destroy);
  {
    const CanvasPointer canvas(cairo_create(surface.get()), &cairo_destroy);
    cairo_move_to(canvas.get(), shift - pixels.left, -pixels.top);
    pango_cairo_show_layout(canvas.get(), layout);
  }
  cairo_surface_flush(surface.get());
  Coverage coverage{pixels.width, pixels.height, pixels.width / dots_per_mm, pixels.height / dots_per_mm, {}};
  const unsigned char* data = cairo_image_surface_get_data(surface.get());
  const int stride = cairo_image_surface_get_stride(surface.get());
  coverage.shares.reserve(static_cast<std::size_t>(pixels.width) * pixels.height);
  for (int y = 0; y < pixels.height; ++y)
    for (int x = 0; x < pixels.width; ++x)
      coverage.shares.push_back(static_cast<float>(data[static_cast<std::ptrdiff_t>(y) * stride + x]) /
                                255.0f);
  return coverage;
}

/// Cut to its ink; `pixels` follows. Nothing where there is no ink.
std::optional<Coverage> cropped(const Coverage& coverage, Pixels& pixels, double dots_per_mm) {
  int left = coverage.width, top = coverage.height, right = 0, bottom = 0;
  for (int y = 0; y < coverage.height; ++y)
    for (int x = 0; x < coverage.width; ++x)
      if (coverage.at(x, y) > 0) {
        left = std::min(left, x), right = std::max(right, x + 1);
        top = std::min(top, y), bottom = std::max(bottom, y + 1);
      }
  if (right <= left) return std::nullopt;
  const int width = right - left, height = bottom - top;
  Coverage cut{width, height, width / dots_per_mm, height / dots_per_mm, {}};
  for (int y = top; y < bottom; ++y)
    for (int x = left; x < right; ++x) cut.shares.push_back(coverage.at(x, y));
  pixels = {pixels.left + left, pixels.top + top, width, height};
  return cut;
}

bool is_letter_or_digit(std::string_view character) {
  const gunichar code = g_utf8_get_char(std::string(character).c_str());
  return g_unichar_isalpha(code) || g_unichar_isdigit(code);
}

/// A letter alone: its left side and its line at 0. Nothing where it leaves no ink.
std::optional<LetterImage> letter_alone(const Setter& setter, std::string_view character, double em,
                                        double dots_per_mm, double shift = 0) {
  const LayoutPointer layout = setter.set(character, em);
  const double baseline = static_cast<double>(pango_layout_get_baseline(layout.get())) / PANGO_SCALE;
  Pixels pixels = ink_pixels(layout.get());
  ++pixels.width;  // for the shift
  auto ink = cropped(drawn(layout.get(), pixels, dots_per_mm, shift), pixels, dots_per_mm);
  if (!ink) return std::nullopt;
  return LetterImage{std::string(character), pixels.left / dots_per_mm, (pixels.top - baseline) / dots_per_mm,
                     0, std::move(*ink)};
}

PangoRectangle ink_of(PangoLayout* layout) {
  PangoRectangle ink;
  pango_layout_get_extents(layout, &ink, nullptr);
  return ink;
}

/// The letters of a text where its layout puts them: an accent that is a character of its own is part of its letter.
std::vector<LetterImage> letters_of(const Setter& setter, PangoLayout* layout, std::string_view text,
                                    const Pixels& whole, double em, double dots_per_mm) {
  std::vector<LetterImage> letters;
  const std::unique_ptr<PangoLayoutIter, decltype(&pango_layout_iter_free)> iter(
      pango_layout_get_iter(layout), &pango_layout_iter_free);
  std::vector<std::pair<int, PangoRectangle>> clusters;
  do {
    PangoRectangle ink;
    pango_layout_iter_get_cluster_extents(iter.get(), &ink, nullptr);
    clusters.emplace_back(pango_layout_iter_get_index(iter.get()), ink);
  } while (pango_layout_iter_next_cluster(iter.get()));
  std::sort(clusters.begin(), clusters.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  for (std::size_t i = 0; i < clusters.size(); ++i) {
    const auto begin = static_cast<std::size_t>(clusters[i].first);
    const auto end = i + 1 < clusters.size() ? static_cast<std::size_t>(clusters[i + 1].first) : text.size();
    if (begin >= end || !is_letter_or_digit(text.substr(begin, end - begin))) continue;
    const std::string_view character = trim(text.substr(begin, end - begin));
    const LayoutPointer alone = setter.set(character, em);
    const PangoRectangle ink = ink_of(alone.get());
    const double right = static_cast<double>(clusters[i].second.x - ink.x) / PANGO_SCALE,
                 whole_dots = std::floor(right);
    const double down = static_cast<double>(clusters[i].second.y - ink.y) / PANGO_SCALE;
    auto letter = letter_alone(setter, character, em, dots_per_mm, right - whole_dots);
    if (!letter) continue;
    letter->left_mm += (whole_dots - whole.left) / dots_per_mm;
    letter->baseline_mm =
        (down + static_cast<double>(pango_layout_get_baseline(alone.get())) / PANGO_SCALE - whole.top) /
        dots_per_mm;
    letters.push_back(std::move(*letter));
  }
  return letters;
}

std::vector<LetterImage> all_letters(const Setter& setter, double em, double dots_per_mm) {
  std::vector<LetterImage> letters;
  for (const auto& [first, last] : {std::pair{'A', 'Z'}, std::pair{'a', 'z'}, std::pair{'0', '9'}})
    for (char character = first; character <= last; ++character) {
      const std::string text(1, character);
      if (!setter.has(text)) continue;
      if (auto letter = letter_alone(setter, text, em, dots_per_mm)) {
        letter->left_mm = 0;
        letters.push_back(std::move(*letter));
      }
    }
  return letters;
}

Result<Done> check(std::string_view text, const FontRequest& request) {
  if (!is_utf8(text))
    return Problem{ProblemCode::bad_text, "text in a font", "bytes that are not UTF-8", "UTF-8"};
  const double height_mm = request.capital_height.mm();
  if (!(height_mm >= 0.5 && height_mm <= 500))
    return Problem{ProblemCode::out_of_range, "height of capitals", plain_number(height_mm) + " mm",
                   "0.5 to 500 mm"};
  if (const double space_mm = request.letter_space.mm(); !(space_mm >= 0 && space_mm <= 100))
    return Problem{ProblemCode::out_of_range, "space between letters", plain_number(space_mm) + " mm",
                   "0 to 100 mm"};
  if (!(request.dots_per_mm >= 1 && request.dots_per_mm <= 100))
    return Problem{ProblemCode::out_of_range, "dots to a millimetre", plain_number(request.dots_per_mm),
                   "1 to 100"};
  return Done{};
}

Result<Done> check_characters(const Setter& setter, const std::string& family, std::string_view text) {
  for (const std::string_view character : picture::code_points(text))
    if (character != "\n" &&
        (g_unichar_iscntrl(g_utf8_get_char(std::string(character).c_str())) || !setter.has(character)))
      return Problem{ProblemCode::missing_glyph, "text in a font",
                     fmt::format("{} (U+{:04X})", character, g_utf8_get_char(std::string(character).c_str())),
                     "characters of " + family};
  if (!setter.has("H") || setter.capital_height() <= 0)
    return Problem{ProblemCode::missing_glyph, "font " + family, "no capital H",
                   "one to measure the height of its capitals by"};
  return Done{};
}

}  // namespace

std::vector<std::string> font_families() {
  const std::unique_ptr<FcPattern, decltype(&FcPatternDestroy)> all(FcPatternCreate(), &FcPatternDestroy);
  const std::unique_ptr<FcObjectSet, decltype(&FcObjectSetDestroy)> fields(
      FcObjectSetBuild(FC_FAMILY, nullptr), &FcObjectSetDestroy);
  const std::unique_ptr<FcFontSet, decltype(&FcFontSetDestroy)> fonts(
      FcFontList(nullptr, all.get(), fields.get()), &FcFontSetDestroy);
  std::vector<std::string> families;
  for (int i = 0; fonts && i < fonts->nfont; ++i) {
    FcChar8* name = nullptr;
    for (int k = 0; FcPatternGetString(fonts->fonts[i], FC_FAMILY, k, &name) == FcResultMatch; ++k)
      families.emplace_back(reinterpret_cast<const char*>(name));
  }
  std::sort(families.begin(), families.end());
  families.erase(std::unique(families.begin(), families.end()), families.end());
  return families;
}

Result<picture::FontText> font_text(std::string_view text, const FontRequest& request) {
  if (auto good = check(text, request); !good) return good.problem();
  const auto family = installed_family(request.family);
  if (!family) return family.problem();
  const Setter setter(*family, request);
  if (auto good = check_characters(setter, *family, text); !good) return good.problem();
  const double dots = request.dots_per_mm;
  const double em = request.capital_height.mm() * dots / setter.capital_height();
  const LayoutPointer layout = setter.set(text, em, request.letter_space.mm() * dots);
  const Pixels whole = ink_pixels(layout.get());
  constexpr double most_pixels = 1e8;   // as picture::check
  constexpr int longest_side = 32'767;  // cairo's limit for an image
  if (static_cast<double>(whole.width) * whole.height > most_pixels || whole.width > longest_side ||
      whole.height > longest_side)
    return Problem{ProblemCode::out_of_range, "text in a font",
                   fmt::format("{} by {} dots", whole.width, whole.height),
                   "at most 100 million dots: fewer of them to a millimetre, or a shorter text"};
  picture::FontText pictures;
  pictures.text = drawn(layout.get(), whole, dots);
  if (picture::InkSums(pictures.text).ink().width <= 0)
    return Problem{ProblemCode::bad_text, "text in a font", "no ink", "letters"};
  pictures.letters = letters_of(setter, layout.get(), text, whole, em, dots);
  pictures.others = all_letters(setter, em, dots);
  return pictures;
}

}  // namespace evencount::page
