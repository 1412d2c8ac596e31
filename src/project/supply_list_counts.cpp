#include "project/supply_list_counts.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"
#include "project/strung_sizes.hpp"

namespace evencount::project {
namespace {

std::string band_place(const Band& band) {
  return "band " + band.name;
}

Problem unknown_name(std::string where, std::string_view what, std::string_view id) {
  return {ProblemCode::unknown_name, std::move(where), fmt::format("{} {}", what, quote(id)),
          fmt::format("a {} of the project", what)};
}

}  // namespace

Result<std::vector<BandUse>> band_uses(const Project& project) {
  std::vector<BandUse> uses;
  for (const Band& band : project.bands) {
    const bead::Size* size = find_bead(project, band.bead);
    if (!size) return unknown_name(band_place(band), "bead", band.bead);
    const auto plan = plan_of(band);
    if (!plan) return plan.problem();
    auto thread =
        weave::thread_use(*plan, *size, gauge_of(project, band), project.thread, project.thread_habits);
    if (!thread) return thread.problem().within(band_place(band));
    uses.push_back({weave::count_beads(*plan), std::move(*thread)});
  }
  return uses;
}

Result<std::vector<std::int64_t>> legend_counts(const Project& project, const std::vector<BandUse>& uses) {
  std::vector<std::int64_t> counts(project.legend.size(), 0);
  for (std::size_t b = 0; b < uses.size(); ++b) {
    const std::vector<int>& in_band = uses[b].beads;
    if (in_band.size() > counts.size())
      return unknown_name(band_place(project.bands[b]), "legend entry",
                          fmt::format("number {}", in_band.size()));
    for (std::size_t i = 0; i < in_band.size(); ++i)
      counts[i] += std::int64_t{project.bands[b].copies} * in_band[i];
  }
  return counts;
}

Result<std::vector<FormCount>> form_counts(const Project& project) {
  for (const Band& band : project.bands)
    if (band.form && !find_form(project, *band.form))
      return unknown_name(band_place(band), "form", *band.form);
  std::vector<FormCount> counts;
  for (std::size_t i = 0; i < project.forms.size(); ++i) {
    std::int64_t copies = 0;
    for (const Band& band : project.bands)
      if (band.form == project.forms[i].id) copies += band.copies;
    if (copies > 0) counts.push_back({i, copies});
  }
  return counts;
}

Result<std::vector<OtherSupply>> other_supplies(const Project& project, const std::string& size) {
  auto strung = strung_supplies(project, size);
  if (!strung) return strung.problem();
  std::vector<OtherSupply> supplies = project.findings;
  for (OtherSupply& one : *strung) {
    const auto same = std::find_if(supplies.begin(), supplies.end(),
                                   [&](const OtherSupply& other) { return other.name == one.name && other.unit == one.unit; });
    if (same != supplies.end())
      same->count += one.count;
    else
      supplies.push_back(std::move(one));
  }
  return supplies;
}

std::string size_strung_for(const Project& project, const std::string& size) {
  if (!project.strand) return "";
  const auto wearer = wearer_of(*project.strand, size);
  return wearer ? wearer->name : "";
}

std::string name_of(const FormEntry& entry) {
  return entry.name.empty() ? form::describe(entry.form) : entry.name;
}

std::vector<std::string> tools_for(const Project& project, const std::vector<std::int64_t>& counts) {
  std::optional<Length> smallest_hole;
  for (std::size_t i = 0; i < counts.size(); ++i)
    if (const bead::Size* size = find_bead(project, project.legend[i].bead); size && counts[i] > 0)
      smallest_hole = smallest_hole ? std::min(*smallest_hole, size->hole) : size->hole;
  std::vector<std::string> tools = project.tools;
  if (smallest_hole) tools.push_back("beading needle, size " + bead::needle_for(*smallest_hole).name);
  return tools;
}

Result<bead::Size> size_of(const Project& project, const LegendEntry& entry) {
  const bead::Size* size = find_bead(project, entry.bead);
  if (!size) return unknown_name("legend " + entry.letter, "bead", entry.bead);
  return *size;
}

}  // namespace evencount::project
