#include "page/fonts.hpp"

#include <memory>

#include "page/typesetter.hpp"

namespace evencount::page {

Result<proof::FirstUnshown> first_unshown() {
  auto opened = Typesetter::open();
  if (!opened) return opened.problem();
  const auto typesetter = std::make_shared<const Typesetter>(std::move(*opened));
  return proof::FirstUnshown([typesetter](std::string_view text, proof::Typeface typeface) {
    using drawing::TextRole;
    switch (typeface) {
      case proof::Typeface::serif:
        return typesetter->first_unshown({TextRole::body}, text);
      case proof::Typeface::italic:
        return typesetter->first_unshown({TextRole::body_italic}, text);
      case proof::Typeface::sans:
        break;
    }
    return typesetter->first_unshown({TextRole::label}, text);
  });
}

}  // namespace evencount::page
