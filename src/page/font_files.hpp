#pragma once
/// The fonts that everything printed is set in: exactly these files, so that no other font on the machine can change a page.

#include <span>
#include <string>

#include "base/result.hpp"

namespace evencount::page {

struct FontFile {
  std::string path;
  std::string package;  ///< the Debian package that holds it
  std::string family;   ///< as the typesetter asks for it
};

[[nodiscard]] std::span<const FontFile> booklet_fonts();

/// Whether the file is there and holds a font of its family.
/// Errors: missing_font, as `Typesetter::open` gives it.
[[nodiscard]] Result<Done> check_font(const FontFile& font);

}  // namespace evencount::page
