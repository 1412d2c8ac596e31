#include "page/fonts.hpp"

#include <algorithm>
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

std::vector<proof::Finding> proof_for_print(const project::Project& project, std::span<const materials::StockedItem> stock) {
  const auto fonts = first_unshown();
  if (fonts) return proof::proof(project, {stock, *fonts});
  std::vector<proof::Finding> findings = proof::proof(project, {stock, nullptr});
  const auto first_note = std::find_if(findings.begin(), findings.end(),
                                       [](const proof::Finding& finding) { return finding.severity == proof::Severity::note; });
  findings.insert(first_note, {proof::Severity::warning, "glyphs", "project",
                               "Whether every character can be printed was not checked: " + message(fonts.problem()) + "."});
  return findings;
}

}  // namespace evencount::page
