#include "project/supply_list.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"
#include "project/json_fields.hpp"
#include "weave/plan.hpp"

namespace evencount::project {
namespace {

std::string band_place(const Band& band) {
  return "band " + band.name;
}

Problem unknown_name(std::string where, std::string_view what, std::string_view id) {
  return {ProblemCode::unknown_name, std::move(where), fmt::format("{} {}", what, quoted(id)),
          fmt::format("a {} of the project", what)};
}

/// How many of each legend entry one piece takes.
Result<std::vector<std::int64_t>> count_legend(const Project& project) {
  std::vector<std::int64_t> counts(project.legend.size(), 0);
  for (const Band& band : project.bands) {
    const auto plan = plan_of(band);
    if (!plan) return plan.problem();
    const std::vector<int> in_band = weave::count_beads(*plan);
    if (in_band.size() > counts.size())
      return unknown_name(band_place(band), "legend entry", fmt::format("number {}", in_band.size()));
    for (std::size_t i = 0; i < in_band.size(); ++i) counts[i] += std::int64_t{band.copies} * in_band[i];
  }
  return counts;
}

/// The legend with its counts, and the smallest hole of a bead that is used.
Result<std::vector<materials::BeadNeed>> bead_needs(const Project& project,
                                                    std::optional<Length>& smallest_hole) {
  const auto counts = count_legend(project);
  if (!counts) return counts.problem();
  std::vector<materials::BeadNeed> needs;
  for (std::size_t i = 0; i < project.legend.size(); ++i) {
    const LegendEntry& entry = project.legend[i];
    const bead::Size* size = find_bead(project, entry.bead);
    if (!size) return unknown_name("legend " + entry.letter, "bead", entry.bead);
    materials::BeadNeed need;
    need.letter = entry.letter;
    need.name = entry.name;
    need.size = bead::trade_name(*size);
    need.count = (*counts)[i];
    need.beads_per_gram = size->beads_per_gram;
    if (entry.pack) {
      need.pack_mass = entry.pack->mass;
      need.pack_price = entry.pack->price;
    }
    if (need.count > 0) smallest_hole = smallest_hole ? std::min(*smallest_hole, size->hole) : size->hole;
    needs.push_back(std::move(need));
  }
  return needs;
}

Result<std::vector<CountedSupply>> count_forms(const Project& project, int kits) {
  std::vector<CountedSupply> forms;
  for (const FormEntry& entry : project.forms) {
    std::int64_t copies = 0;
    for (const Band& band : project.bands)
      if (band.form == entry.id) copies += band.copies;
    if (copies == 0) continue;
    forms.push_back({entry.name.empty() ? form::describe(entry.form) : entry.name,
                     static_cast<double>(copies * kits), ""});
  }
  for (const Band& band : project.bands)
    if (band.form && !find_form(project, *band.form))
      return unknown_name(band_place(band), "form", *band.form);
  return forms;
}

}  // namespace

Result<std::vector<BandThread>> band_threads(const Project& project) {
  std::vector<BandThread> threads;
  for (const Band& band : project.bands) {
    const bead::Size* size = find_bead(project, band.bead);
    if (!size) return unknown_name(band_place(band), "bead", band.bead);
    const auto plan = plan_of(band);
    if (!plan) return plan.problem();
    auto use =
        weave::thread_use(*plan, *size, gauge_of(project, band), project.thread, project.thread_habits);
    if (!use) return use.problem().within(band_place(band));
    threads.push_back({band.name, std::move(*use)});
  }
  return threads;
}

Result<SupplyList> supply_list(const Project& project, int kits) {
  std::optional<Length> smallest_hole;
  const auto needs = bead_needs(project, smallest_hole);
  if (!needs) return needs.problem();
  auto beads = materials::bead_supplies(*needs, kits, project.allowance);
  if (!beads) return beads.problem();
  const auto threads = band_threads(project);
  if (!threads) return threads.problem();
  auto forms = count_forms(project, kits);
  if (!forms) return forms.problem();

  SupplyList list;
  list.kits = kits;
  list.beads = std::move(*beads);
  list.forms = std::move(*forms);
  list.thread_name = project.thread.name;
  for (std::size_t i = 0; i < threads->size(); ++i)
    list.thread = list.thread + static_cast<double>(kits) * project.bands[i].copies * (*threads)[i].use.cut;
  for (const OtherSupply& other : project.findings)
    list.findings.push_back({other.name, kits * other.count, other.unit});
  list.tools = project.tools;
  if (smallest_hole) list.tools.push_back("beading needle, size " + bead::needle_for(*smallest_hole).name);
  return list;
}

}  // namespace evencount::project
