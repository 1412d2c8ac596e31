#include "page/font_files.hpp"

#include <fmt/format.h>
#include <fontconfig/fontconfig.h>
#include <fontconfig/fcfreetype.h>

#include <array>
#include <memory>

namespace evencount::page {

std::span<const FontFile> booklet_fonts() {
  static const std::array<FontFile, 7> fonts{{
      {"/usr/share/fonts/opentype/ebgaramond/EBGaramond12-Regular.otf", "fonts-ebgaramond", "EB Garamond"},
      {"/usr/share/fonts/opentype/ebgaramond/EBGaramond12-Italic.otf", "fonts-ebgaramond", "EB Garamond"},
      {"/usr/share/fonts/truetype/lato/Lato-Regular.ttf", "fonts-lato", "Lato"},
      {"/usr/share/fonts/truetype/lato/Lato-Bold.ttf", "fonts-lato", "Lato"},
      {"/usr/share/fonts/truetype/bizud-mincho/BIZUDPMincho-Regular.ttf", "fonts-morisawa-bizud-mincho", "BIZ UDPMincho"},
      {"/usr/share/fonts/truetype/bizud-gothic/BIZUDPGothic-Regular.ttf", "fonts-morisawa-bizud-gothic", "BIZ UDPGothic"},
      {"/usr/share/fonts/truetype/bizud-gothic/BIZUDPGothic-Bold.ttf", "fonts-morisawa-bizud-gothic", "BIZ UDPGothic"},
  }};
  return fonts;
}

Result<Done> check_font(const FontFile& font) {
  int faces = 0;
  const std::unique_ptr<FcPattern, decltype(&FcPatternDestroy)> pattern(
      FcFreeTypeQuery(reinterpret_cast<const FcChar8*>(font.path.c_str()), 0, nullptr, &faces), &FcPatternDestroy);
  std::string found = "no such font";
  FcChar8* family = nullptr;
  for (int i = 0; pattern && FcPatternGetString(pattern.get(), FC_FAMILY, i, &family) == FcResultMatch; ++i) {
    found = fmt::format("a font of the family {}", reinterpret_cast<const char*>(family));
    if (font.family == reinterpret_cast<const char*>(family)) return Done{};
  }
  return Problem{ProblemCode::missing_font, font.path, found, fmt::format("the font from the Debian package {}", font.package)};
}

}  // namespace evencount::page
