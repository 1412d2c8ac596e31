#include "page/alternative.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "language/texts.hpp"
#include "page/sections.hpp"

namespace evencount::page {
namespace {

using language::Language;
using language::Texts;

constexpr std::size_t most_named = 6;

/// The first few, and how many more there are.
std::string listed(const Language& language, std::vector<std::string> items) {
  if (items.size() <= most_named) return language.list(items);
  const std::size_t more = items.size() - (most_named - 1);
  items.resize(most_named - 1);
  std::string first;
  for (const std::string& item : items) {
    if (!first.empty()) first += language.text(&Texts::list_comma);
    first += item;
  }
  return language.say(&Texts::alt_more, {{"list", first}, {"n", more}});
}

/// The beads of a plan by the legend's names, the most frequent first.
std::vector<std::string> colours_of(const project::Project& project, const weave::Plan& plan, const Language& language) {
  const auto counts = weave::count_beads(plan);
  std::vector<std::size_t> beads;
  for (std::size_t bead = 0; bead < std::min(counts.size(), project.legend.size()); ++bead)
    if (counts[bead] > 0) beads.push_back(bead);
  std::stable_sort(beads.begin(), beads.end(), [&](std::size_t a, std::size_t b) { return counts[a] > counts[b]; });
  std::vector<std::string> names;
  for (const std::size_t bead : beads)
    names.push_back(fmt::format("{} ({})", one_line(project.legend[bead].name), language.count(counts[bead])));
  return names;
}

std::string beads_text(const Language& language, std::int64_t beads) {
  return language.say(&Texts::beads_counted, {language.counted("n", beads)});
}

std::string colours_text(const Language& language, std::size_t colours) {
  return language.say(&Texts::colours_counted, {language.counted("n", static_cast<std::int64_t>(colours))});
}

std::string of_piece(const project::Project& project, std::int64_t beads, std::size_t colours,
                     const Language& language) {
  std::vector<std::string> names;
  std::int64_t bands = 0;
  for (const project::Band& band : project.bands) {
    names.push_back(one_line(band.name));
    bands += band.copies;
  }
  return language.say(&Texts::alt_piece,
                      {{"title", one_line(project.title)},
                       {"bands", language.say(&Texts::bands_counted, {language.counted("n", bands)})},
                       {"list", listed(language, std::move(names))},
                       {"beads", beads_text(language, beads)},
                       {"colours", colours_text(language, colours)}});
}

}  // namespace

std::string alternative_of_chart(const project::Project& project, const project::Band& band, const weave::Plan& plan,
                                 const Language& language) {
  const auto colours = colours_of(project, plan, language);
  const auto [across, along] = wording::sizes_text(plan, language);
  return language.say(&Texts::alt_chart, {{"name", one_line(band.name)},
                                          {"technique", wording::technique_name(plan, language)},
                                          {"across", across},
                                          {"along", along},
                                          {"beads", beads_text(language, beads_in(plan))},
                                          {"colours", colours_text(language, colours.size())},
                                          {"list", listed(language, colours)}});
}

std::string alternative_of_band(const project::Project& project, const project::Band& band, const weave::Plan& plan,
                                const Language& language) {
  const auto colours = colours_of(project, plan, language);
  BandSheet sheet;
  sheet.plan = plan;
  sheet.gauge = project::gauge_of(project, band);
  return language.say(&Texts::alt_band, {{"name", one_line(band.name)},
                                         {"size", band_size(language, sheet)},
                                         {"beads", beads_text(language, beads_in(plan))},
                                         {"colours", colours_text(language, colours.size())},
                                         {"list", listed(language, colours)}});
}

Result<std::string> alternative_of_piece(const project::Project& project, const Language& language) {
  std::vector<bool> used(project.legend.size(), false);
  std::int64_t beads = 0;
  for (const project::Band& band : project.bands) {
    const auto plan = project::plan_of(band);
    if (!plan) return plan.problem();
    const auto counts = weave::count_beads(*plan);
    for (std::size_t bead = 0; bead < std::min(counts.size(), used.size()); ++bead)
      used[bead] = used[bead] || counts[bead] > 0;
    beads += band.copies * beads_in(*plan);
  }
  return of_piece(project, beads, static_cast<std::size_t>(std::count(used.begin(), used.end(), true)), language);
}

std::string alternative_of_piece(const Subject& subject) {
  return of_piece(subject.project, beads_in_all(subject), subject.supplies.beads.beads.size(), subject.language);
}

}  // namespace evencount::page
