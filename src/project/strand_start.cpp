#include "project/strand_start.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "base/text.hpp"
#include "project/strand.hpp"
#include "project/strung_sizes.hpp"
#include "strand/keeping.hpp"
#include "strand/layout_edit.hpp"

namespace evencount::project {
namespace {

/// Elastic that goes through an 8/0 bead; bracelets are mostly strung on 0.5 to 0.8 mm: from memory.
constexpr std::string_view elastic = "elastic 0.7mm";

/// What is strung: names and how often.
struct Strings {
  std::vector<std::pair<std::string, int>> names;
  int holes = 1;
  bool slides = false;
  Length stop;  ///< a stop bead that every sliding band needs
};

void add_band(const Project& project, const strand::Element& element, Strings& strings) {
  const auto band = std::find_if(project.bands.begin(), project.bands.end(),
                                 [&](const Band& one) { return one.name == element.id; });
  strings.names.emplace_back(element.id, band == project.bands.end() ? 1 : band->copies);
  strings.holes = std::max(strings.holes, element.holes);
  if (!element.carrier->band || element.carrier->use != form::Use::sliding) return;
  strings.slides = true;
  const auto holes = form::holes_of(element.carrier->form);
  if (!holes) return;
  const auto stop = form::smallest_stop_bead(element.carrier->form, *holes, *element.carrier->band);
  if (stop) strings.stop = std::max(strings.stop, stop->holds_bent);
}

Strings what_to_string(const Project& project) {
  Strings bands, forms;
  std::set<std::string> seen;
  for (const strand::Element& element : strand_catalogue(project)) {
    if (!element.carrier || !seen.insert(element.id).second) continue;
    add_band(project, element, element.carrier->band ? bands : forms);
  }
  return bands.names.empty() ? forms : bands;
}

std::string layout_of(const Strings& strings, int between, bool stops_between) {
  std::string list;
  for (const auto& [name, times] : strings.names) {
    strand::Item item;
    item.name = name, item.times = times;
    list += (list.empty() ? "" : ", ") + to_text(item);
  }
  const double stop_mm =
      std::ceil(2 * strings.stop.mm()) / 2;  // beads come in half millimetres: common practice, no source
  const std::string stop = strings.slides && stop_mm > 0 ? "stop, " : "",
                    after = stop.empty() ? "" : ", stop";
  const std::string unit = stops_between ? "(stop, round-8, stop)" : "round-8";
  return fmt::format(
      "cords {} of {}\n{}string fill sides with round-8, {}between gaps with {} from {} to {} ({}){}, fill "
      "sides with round-8",
      strings.holes, elastic,
      stop.empty()
          ? ""
          : fmt::format("bead stop {0}mm hole 1.5mm \"{0} mm round bead\"\n", plain_number(stop_mm, 1)),
      stop, unit, between, between, list, after);
}

/// Bands that come off, in the middle size.
std::optional<std::size_t> bands_lost(const Project& project) {
  const auto strung = strung_of(project);
  if (!strung) return std::nullopt;
  const auto wearer = wearer_of(*project.strand, "");
  if (!wearer) return std::nullopt;
  const auto sizes = strung_sizes(project, *strung, std::span(&*wearer, 1));
  if (!sizes) return std::nullopt;
  const auto& findings = sizes->sizes.front().findings;
  return static_cast<std::size_t>(std::count_if(
      findings.begin(), findings.end(),
      [](const strand::Finding& finding) { return finding.code == strand::FindingCode::band_not_held; }));
}

/// The layout's text, where it can be read.
std::optional<strand::Layout> layout_if_any(const Project& project) {
  if (!project.strand) return std::nullopt;
  auto layout = strand::parse_layout(project.strand->layout, strand_catalogue(project));
  if (!layout) return std::nullopt;
  return std::move(*layout);
}

/// Whether a name in the layout means a band of that name: no part of the layout, and a band that is strung.
bool means_band(const Project& project, const strand::Layout& layout, std::string_view name) {
  const auto called = [&](const strand::Element& element) { return element.id == name; };
  if (std::any_of(layout.parts.begin(), layout.parts.end(), called)) return false;
  const auto catalogue = strand_catalogue(project);
  const auto found = std::find_if(catalogue.begin(), catalogue.end(), called);
  return found != catalogue.end() && found->carrier && found->carrier->band;
}

}  // namespace

Result<SavedStrand> strand_to_begin_with(const Project& project, strand::Worn worn) {
  const Strings strings = what_to_string(project);
  if (strings.names.empty())
    return Problem{ProblemCode::missing_field, "/bands", "nothing that can be strung",
                   "a band that is closed round a form, or a form with a hole"};
  Project tried = project;
  SavedStrand best;
  std::optional<std::size_t> fewest;
  for (const bool stops_between : {false, true})
    for (const int between : {1, 2}) {
      if (stops_between && (!strings.slides || between > 1)) continue;
      tried.strand = SavedStrand{};
      tried.strand->worn = worn;
      if (worn != strand::Worn::length) tried.strand->ease = strand::ordinary_ease;
      tried.strand->layout = layout_of(strings, between, stops_between);
      const auto lost = bands_lost(tried);
      if (best.layout.empty() || (lost && (!fewest || *lost < *fewest))) {
        best = *tried.strand;
        fewest = lost;
      }
    }
  return best;
}

Result<Done> rename_on_strand(const Project& project, std::string_view before, std::string_view after,
                              Project& renamed) {
  const auto layout = layout_if_any(project);
  if (before == after || !layout || !means_band(project, *layout, before)) return Done{};
  const auto on_it = std::any_of(layout->items.begin(), layout->items.end(),
                                 [&](const strand::Item& item) { return strand::names(item, before); });
  if (!on_it) return Done{};
  if (std::any_of(layout->parts.begin(), layout->parts.end(),
                  [&](const strand::Element& part) { return part.id == after; }))
    return Problem{ProblemCode::duplicate_name, "/name", quote(after),
                   "a name that no part of the strand has"};
  auto text = strand::with_name(project.strand->layout, strand_catalogue(project), before, after);
  if (!text) return text.problem().within("strand");
  renamed.strand->layout = std::move(*text);
  return Done{};
}

bool take_off_strand(const Project& project, std::string_view name, Project& changed) {
  const auto layout = layout_if_any(project);
  if (!layout || !means_band(project, *layout, name) || !is_strung(project, name)) return false;
  const auto items = strand::without(layout->items, name);
  if (items.empty()) {
    changed.strand.reset();
    return true;
  }
  auto text = strand::with_items(project.strand->layout, items);
  if (!text) return false;
  changed.strand->layout = std::move(*text);
  return true;
}

bool is_strung(const Project& project, std::string_view name) {
  const auto layout = layout_if_any(project);
  return layout && (layout->closing == name ||
                    std::any_of(layout->items.begin(), layout->items.end(),
                                [&](const strand::Item& item) { return strand::names(item, name); }));
}

}  // namespace evencount::project
