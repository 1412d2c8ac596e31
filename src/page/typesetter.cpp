#include "page/typesetter.hpp"

#include <fmt/format.h>
#include <fontconfig/fontconfig.h>
#include <pango/pangofc-fontmap.h>

#include <algorithm>
#include <array>
#include <map>
#include <mutex>

#include "base/text.hpp"

namespace evencount::page {
namespace {

using drawing::TextRole;

struct RoleFont {
  const char* family;
  PangoStyle style;
  PangoWeight weight;
};

// What the first family can't show is taken from the second: a mincho beside the old-style serif, a gothic beside the sans.
constexpr const char *serif = "EB Garamond,BIZ UDPMincho", *sans = "Lato,BIZ UDPGothic";

RoleFont font_of(TextRole role) {
  switch (role) {
    case TextRole::title:
    case TextRole::heading:
    case TextRole::body:
      return {serif, PANGO_STYLE_NORMAL, PANGO_WEIGHT_NORMAL};
    case TextRole::body_italic:
      return {serif, PANGO_STYLE_ITALIC, PANGO_WEIGHT_NORMAL};
    case TextRole::label:
      return {sans, PANGO_STYLE_NORMAL, PANGO_WEIGHT_NORMAL};
    case TextRole::label_bold:
      return {sans, PANGO_STYLE_NORMAL, PANGO_WEIGHT_BOLD};
  }
  return {sans, PANGO_STYLE_NORMAL, PANGO_WEIGHT_NORMAL};
}

std::string character_at(std::string_view text) {
  const char* next = g_utf8_find_next_char(text.data(), text.data() + text.size());
  return std::string(text.substr(0, next ? static_cast<std::size_t>(next - text.data()) : text.size()));
}

constexpr std::string_view no_break_space = "\u00A0";

/// The text with figures bound to the short word after them, so that "9 mm" stays on one line.
std::string bound(std::string_view text) {
  std::string result;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool after_figure = i > 0 && text[i - 1] >= '0' && text[i - 1] <= '9';
    const bool short_word = std::min(text.substr(i + 1, 3).find_first_of(" .,;)"), text.size() - i - 1) <= 2;
    if (text[i] == ' ' && after_figure && short_word)
      result += no_break_space;
    else
      result += text[i];
  }
  return result;
}

std::string unbound(std::string_view text) {
  std::string result(trim(text));
  for (std::size_t at = 0; (at = result.find(no_break_space, at)) != std::string::npos;)
    result.replace(at, no_break_space.size(), " ");
  return result;
}

/// The lines of a layout of a text that is bound.
std::vector<std::string> lines_of(PangoLayout* layout, std::string_view text) {
  std::vector<std::string> lines;
  for (GSList* item = pango_layout_get_lines_readonly(layout); item; item = item->next) {
    const auto* line = static_cast<const PangoLayoutLine*>(item->data);
    lines.push_back(unbound(
        text.substr(static_cast<std::size_t>(line->start_index), static_cast<std::size_t>(line->length))));
  }
  return lines;
}

/// The configuration that knows these fonts and no others: read once and kept for good, as a font map of pango 1.50 doesn't let go of the one
/// it was given, and a studio opens a typesetter for every drawing. Configurations may be read from any thread.
Result<FcConfig*> config_of(std::span<const FontFile> fonts) {
  static std::mutex mutex;
  static std::map<std::vector<std::string>, FcConfig*> known;
  std::vector<std::string> paths;
  for (const FontFile& font : fonts) paths.push_back(font.path);
  const std::lock_guard lock(mutex);
  if (const auto found = known.find(paths); found != known.end()) return found->second;
  std::unique_ptr<FcConfig, decltype(&FcConfigDestroy)> config(FcConfigCreate(), &FcConfigDestroy);
  for (const FontFile& font : fonts)
    if (!FcConfigAppFontAddFile(config.get(), reinterpret_cast<const FcChar8*>(font.path.c_str())))
      return Problem{ProblemCode::missing_font, font.path, "no such font",
                     fmt::format("the font from the Debian package {}", font.package)};
  return known[std::move(paths)] = config.release();
}

}  // namespace

Result<Typesetter> Typesetter::open(std::span<const FontFile> fonts) {
  const auto config = config_of(fonts);
  if (!config) return config.problem();
  const std::unique_ptr<PangoFontMap, Unref<PangoFontMap>> map(
      pango_cairo_font_map_new_for_font_type(CAIRO_FONT_TYPE_FT));
  pango_fc_font_map_set_config(PANGO_FC_FONT_MAP(map.get()), *config);
  pango_cairo_font_map_set_resolution(PANGO_CAIRO_FONT_MAP(map.get()), 72);

  ContextPointer context(pango_font_map_create_context(map.get()));
  cairo_font_options_t* options = cairo_font_options_create();
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options(context.get(), options);
  cairo_font_options_destroy(options);
  pango_context_set_round_glyph_positions(context.get(), FALSE);
  pango_context_set_language(context.get(), pango_language_from_string("en"));
  return Typesetter(std::move(context));
}

LayoutPointer Typesetter::layout(Face face, std::string_view text) const {
  LayoutPointer layout(pango_layout_new(context_.get()));
  const RoleFont font = font_of(face.role);
  PangoFontDescription* description = pango_font_description_new();
  pango_font_description_set_family_static(description, font.family);
  pango_font_description_set_style(description, font.style);
  pango_font_description_set_weight(description, font.weight);
  pango_font_description_set_absolute_size(description, face.size_pt * PANGO_SCALE);
  pango_layout_set_font_description(layout.get(), description);
  pango_font_description_free(description);

  // Ligatures would come out of the PDF as other letters; figures of one width keep tables and rows straight.
  PangoAttrList* attributes = pango_attr_list_new();
  pango_attr_list_insert(attributes, pango_attr_font_features_new("liga=0, clig=0, dlig=0, tnum=1, lnum=1"));
  pango_attr_list_insert(attributes, pango_attr_insert_hyphens_new(FALSE));
  pango_layout_set_attributes(layout.get(), attributes);
  pango_attr_list_unref(attributes);
  pango_layout_set_text(layout.get(), text.data(), static_cast<int>(text.size()));
  return layout;
}

std::string Typesetter::first_unshown(Face face, std::string_view text) const {
  const auto all_shown = [&](std::string_view part) {
    return pango_layout_get_unknown_glyphs_count(layout(face, part).get()) == 0;
  };
  if (all_shown(text)) return {};
  for (std::string_view rest = text; !rest.empty();) {
    std::string character = character_at(rest);
    if (!all_shown(character)) return character;
    rest.remove_prefix(character.size());
  }
  // Each alone is shown: the shortest beginning that isn't, from where it isn't.
  std::size_t end = 0;
  while (end < text.size() && all_shown(text.substr(0, end))) end += character_at(text.substr(end)).size();
  std::size_t begin = 0;
  for (std::size_t next = 0; next < end && !all_shown(text.substr(next, end - next)); next += character_at(text.substr(next)).size()) begin = next;
  return std::string(text.substr(begin, end - begin));
}

Result<Done> Typesetter::check(Face face, std::string_view text) const {
  const std::string missing = first_unshown(face, text);
  if (missing.empty()) return Done{};
  return Problem{ProblemCode::missing_glyph, "text " + quote(text),
                 fmt::format("{} ({})", missing, code_point_name(missing)), "characters that EB Garamond, Lato or BIZ UD can show"};
}

double Typesetter::width_mm(Face face, std::string_view text) const {
  PangoRectangle logical;
  pango_layout_get_extents(layout(face, text).get(), nullptr, &logical);
  return logical.width * mm_per_pt / PANGO_SCALE;
}

std::vector<std::string> Typesetter::wrap(Face face, std::string_view text, double width_mm) const {
  std::vector<std::string> lines;
  for (const std::string_view part : split(text, '\n')) {
    const std::string paragraph = bound(one_line(part));
    const LayoutPointer set = layout(face, paragraph);
    pango_layout_set_wrap(set.get(), PANGO_WRAP_WORD_CHAR);
    const auto broken_at = [&](double share) {
      pango_layout_set_width(set.get(), static_cast<int>(share * width_mm / mm_per_pt * PANGO_SCALE));
      return lines_of(set.get(), paragraph);
    };
    const auto widowed = [](const std::vector<std::string>& all) {
      constexpr std::size_t short_word = 12;
      return all.size() > 1 && all.back().size() < short_word && all.back().find(' ') == std::string::npos;
    };
    std::vector<std::string> broken = broken_at(1);
    for (double share = 0.97; widowed(broken) && share > 0.8; share -= 0.03) {
      std::vector<std::string> narrower = broken_at(share);
      if (narrower.size() > broken.size()) break;
      if (!widowed(narrower)) broken = std::move(narrower);
    }
    lines.insert(lines.end(), broken.begin(), broken.end());
  }
  return lines;
}

std::string Typesetter::shortened(Face face, std::string_view text, double width_mm) const {
  const std::string whole = one_line(text);
  if (this->width_mm(face, whole) <= width_mm) return whole;
  const double room_mm = width_mm - this->width_mm(face, "…");
  return wrap(face, whole, std::max(room_mm, 1.0)).front() + "…";
}

drawing::Point Typesetter::origin(const drawing::Text& text) const {
  if (text.align == drawing::Align::left) return text.at;
  const double width = width_mm({text.role, text.size_pt}, text.text);
  return {text.at.x_mm - (text.align == drawing::Align::centre ? width / 2 : width), text.at.y_mm};
}

InkBox Typesetter::ink_box(const drawing::Text& text) const {
  PangoRectangle ink;
  const LayoutPointer set = layout({text.role, text.size_pt}, text.text);
  pango_layout_get_extents(set.get(), &ink, nullptr);
  const double baseline = pango_layout_get_baseline(set.get());
  const drawing::Point start = origin(text);
  constexpr double unit_mm = mm_per_pt / PANGO_SCALE;
  const double left = start.x_mm + ink.x * unit_mm, top = start.y_mm + (ink.y - baseline) * unit_mm;
  return {left, top, left + ink.width * unit_mm, top + ink.height * unit_mm};
}

std::string one_line(std::string_view text) {
  std::string line;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text.substr(i).starts_with("\u00AD")) {
      ++i;
      continue;
    }
    const char c = text[i];
    const auto byte = static_cast<unsigned char>(c);
    if (byte > 0x20 && byte != 0x7F)
      line += c;
    else if (!line.empty() && line.back() != ' ')
      line += ' ';
  }
  if (!line.empty() && line.back() == ' ') line.pop_back();
  return line;
}

}  // namespace evencount::page
