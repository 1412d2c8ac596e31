#include "page/stitch_along.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "page/along_markup.hpp"
#include "page/along_parts.hpp"
#include "page/along_sources.hpp"

namespace evencount::page {
namespace {

using Counts = std::map<std::string, std::int64_t, std::less<>>;

/// The beads that the words of a line name: "(2)A, (1)B; dec".
void count_words(std::string_view beads, std::int64_t copies, Counts& counts) {
  while (true) {
    const std::size_t open = beads.find('(');
    if (open == std::string_view::npos) return;
    beads.remove_prefix(open + 1);
    const std::size_t close = beads.find(')'), end = std::min(beads.find_first_of(",;", close), beads.size());
    if (close == std::string_view::npos) return;
    std::int64_t count = 0;
    for (const char digit : beads.substr(0, close)) count = 10 * count + (digit - '0');
    counts[std::string(beads.substr(close + 1, end - close - 1))] += copies * count;
    beads.remove_prefix(end);
  }
}

Counts counts_in_rows(const Hand& hand, std::int64_t copies) {
  Counts counts;
  for (const WorkedLine& line : hand.lines) count_words(line.words.beads, copies, counts);
  return counts;
}

Counts counts_of_colours(const project::Project& project, const Hand& hand, std::int64_t copies) {
  Counts counts;
  const auto beads = weave::count_beads(hand.plan);
  for (std::size_t bead = 0; bead < beads.size(); ++bead)
    if (beads[bead] > 0) counts[project.legend[bead].letter] += copies * beads[bead];
  return counts;
}

/// What is counted in the rows' words, bead by bead off the plans, and bought: all the same, for either hand.
Result<Done> check_counts(const Subject& subject, const std::vector<AlongBand>& bands) {
  Counts in_rows, supplies;
  for (std::size_t i = 0; i < bands.size(); ++i) {
    const project::Band& band = *subject.bands[i].band;
    const Counts right = counts_in_rows(bands[i].right, band.copies);
    const bool colours_agree = right == counts_of_colours(subject.project, bands[i].right, band.copies);
    const bool hands_agree = !bands[i].left || right == counts_in_rows(*bands[i].left, band.copies);
    if (!colours_agree || !hands_agree)
      return Problem{ProblemCode::bad_plan, "band " + band.name, colours_agree ? "other beads for the left hand" : "other beads in its rows",
                     "the beads of its plan"};
    for (const auto& [letter, count] : right) in_rows[letter] += count;
  }
  for (const auto& bead : subject.supplies.beads.beads) supplies[bead.letter] += bead.count;
  if (in_rows != supplies) return Problem{ProblemCode::bad_plan, "supplies", "other beads than in the rows", "the beads of every row"};
  return Done{};
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

std::string page_of(const Subject& subject, const std::vector<AlongBand>& bands, const Parts& parts, const PageTexts& texts,
                    const nlohmann::json& design) {
  return filled(along_page, [&](std::string_view name) -> std::string {
    constexpr std::string_view text = "text:";
    if (name.starts_with(text)) return escaped(text_of(texts, name.substr(text.size())));
    if (name == "policy") return escaped(policy_of(parts.style, parts.script));
    if (name == "title") return shown(subject.project.title);
    if (name == "style") return parts.style;
    if (name == "head") return title_part(subject.project);
    if (name == "words") return words_part(subject, bands, texts);
    if (name == "steps") return parts.steps;
    if (name == "supplies") return supplies_part(subject, texts);
    if (name == "closing") return closing_part(subject.project, texts);
    if (name == "design") return for_script(design.dump(-1, ' ', true));
    if (name == "script") return parts.script;
    assert(false);  // the template is built in
    return {};
  });
}

}  // namespace

Result<StitchAlong> stitch_along(const project::Project& project) {
  if (auto ok = check_proof(project, "a stitch-along page"); !ok) return ok.problem();
  const BookletOptions options{.steps = false};
  const auto subject = make_subject(project, options);
  if (!subject) return subject.problem();

  StitchAlong along;
  std::vector<AlongBand> bands;
  bands.reserve(project.bands.size());
  for (const project::Band& band : project.bands) {
    auto right = make_hand(project, band, Side::right);
    if (!right) return right.problem();
    AlongBand both{std::move(*right), {}};
    auto left = make_hand(project, band, Side::left);
    if (left)
      both.left = std::move(*left);
    else if (left.problem().code == ProblemCode::bad_plan)
      return left.problem();
    else
      along.without_left_hand.push_back({band.name, message(left.problem())});
    bands.push_back(std::move(both));
  }
  if (auto ok = check_counts(*subject, bands); !ok) return ok.problem();

  const auto catalogue = nlohmann::json::parse(along_texts_en);
  const PageTexts texts = catalogue.get<PageTexts>();
  const auto steps = steps_part(*subject, bands, texts);
  if (!steps) return steps.problem();
  const Parts parts{*steps, std::string(along_style) + bead_rules(project), std::string(along_script)};
  along.html = page_of(*subject, bands, parts, texts, design_of(*subject, bands, catalogue));
  return along;
}

}  // namespace evencount::page
