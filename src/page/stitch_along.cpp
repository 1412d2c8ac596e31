#include "page/stitch_along.hpp"

#include <fmt/format.h>

#include <cassert>
#include <nlohmann/json.hpp>

#include "language/texts.hpp"
#include "page/along_markup.hpp"
#include "page/along_parts.hpp"
#include "page/along_sources.hpp"
#include "page/counts.hpp"

namespace evencount::page {
namespace {

/// What is counted in the rows' words for either hand: the same. That it is what the plans hold and what is bought, make_subject has
/// seen.
Result<Done> check_hands(const std::vector<AlongBand>& bands) {
  for (const AlongBand& band : bands)
    if (band.left && counts_in_words(band.right.words) != counts_in_words(band.left->words))
      return Problem{ProblemCode::bad_plan, "band " + band.right.band.name, "other beads for the left hand",
                     "the beads of its plan"};
  return Done{};
}

/// A text of the template by its name; the template is built in.
language::Text text_named(std::string_view name) {
  for (const language::NamedText& named : language::named_texts())
    if (named.name == name) return named.text;
  assert(false);
  return &language::Texts::stitch_along;
}

std::string bead_rules(const project::Project& project) {
  std::string rules;
  for (std::size_t i = 0; i < project.legend.size(); ++i) {
    const colour::Rgb colour = project.legend[i].colour;
    rules += fmt::format(".bead-{} {{ --bead: rgb({} {} {}) }}\n", i, colour.red, colour.green, colour.blue);
  }
  return rules;
}

std::string policy_of(const std::string& style, const std::string& script) {
  return fmt::format("default-src 'none'; img-src data:; style-src 'sha256-{}'; script-src 'sha256-{}'; base-uri 'none'; form-action 'none'",
                     sha256_base64(style), sha256_base64(script));
}

struct Parts {
  std::string steps, style, script;
};

std::string page_of(const Subject& subject, const std::vector<AlongBand>& bands, const Parts& parts) {
  return filled(along_page, [&](std::string_view name) -> std::string {
    constexpr std::string_view text = "text:";
    if (name.starts_with(text)) return escaped(subject.language.text(text_named(name.substr(text.size()))));
    if (name == "language") return std::string(subject.language.tag);
    if (name == "policy") return escaped(policy_of(parts.style, parts.script));
    if (name == "title") return shown(subject.project.title);
    if (name == "style") return parts.style;
    if (name == "head") return title_part(subject.project);
    if (name == "words") return words_part(subject, bands);
    if (name == "steps") return parts.steps;
    if (name == "supplies") return supplies_part(subject);
    if (name == "closing") return closing_part(subject);
    if (name == "design") return for_script(design_of(subject, bands).dump(-1, ' ', true));
    if (name == "script") return parts.script;
    assert(false);  // the template is built in
    return {};
  });
}

}  // namespace

Result<StitchAlong> stitch_along(const project::Project& project, const language::Language& language) {
  if (auto ok = check_proof(project, "a stitch-along page", false); !ok) return ok.problem();
  const BookletOptions options{.steps = false, .language = &language};
  const auto subject = make_subject(project, options);
  if (!subject) return subject.problem();

  StitchAlong along;
  std::vector<AlongBand> bands;
  bands.reserve(project.bands.size());
  for (const project::Band& band : project.bands) {
    auto right = make_hand(project, band, Side::right, language);
    if (!right) return right.problem();
    AlongBand both{std::move(*right), {}};
    auto left = make_hand(project, band, Side::left, language);
    if (left)
      both.left = std::move(*left);
    else if (left.problem().code == ProblemCode::bad_plan)
      return left.problem();
    else
      along.without_left_hand.push_back({band.name, message(left.problem())});
    bands.push_back(std::move(both));
  }
  if (auto ok = check_hands(bands); !ok) return ok.problem();

  const auto steps = steps_part(*subject, bands);
  if (!steps) return steps.problem();
  const Parts parts{*steps, std::string(along_style) + bead_rules(project), std::string(along_script)};
  along.html = page_of(*subject, bands, parts);
  return along;
}

}  // namespace evencount::page
