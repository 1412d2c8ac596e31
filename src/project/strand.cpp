#include "project/strand.hpp"

#include <algorithm>

#include "strand/two_cords.hpp"

namespace evencount::project {

std::vector<strand::Element> strand_catalogue(const Project& project) {
  std::vector<strand::Element> catalogue;
  const auto add = [&](Result<strand::Element> element) {
    if (element) catalogue.push_back(std::move(*element));
  };
  for (const Band& band : project.bands) {
    const FormEntry* entry = band.form ? find_form(project, *band.form) : nullptr;
    const bead::Size* size = find_bead(project, band.bead);
    if (!entry || !size || band.closure == weave::Closure::open) continue;
    const form::SlidingBand round{*size, gauge_of(project, band), band.chart.edge(), band.chart.columns()};
    add(strand::form_element(band.name, band.name, {entry->form, 1, round, band.use}));
  }
  for (const FormEntry& entry : project.forms)
    add(strand::form_element(entry.id, entry.name.empty() ? form::describe(entry.form) : entry.name,
                             {entry.form, 1, std::nullopt, form::Use::fixed}));
  for (const bead::Size& size : project.beads) add(strand::bead_element(size));
  return catalogue;
}

Result<strand::Strung> strung_of(const Project& project) {
  if (!project.strand)
    return Problem{ProblemCode::missing_field, "strand", "nothing", "a layout of what is strung"};
  const std::vector<strand::Element> catalogue = strand_catalogue(project);
  const auto layout = strand::parse_layout(project.strand->layout, catalogue);
  if (!layout) return layout.problem().within("strand");
  auto strung = strand::lay_strung(*layout, catalogue);
  if (!strung) return strung.problem().within("strand");
  return strung;
}

std::vector<strand::Wearer> wearers_of(const SavedStrand& saved) {
  std::vector<strand::Wearer> wearers;
  for (const WornSize& size : saved.sizes) wearers.push_back({size.name, saved.worn, size.measure, {}});
  const auto usual = saved.worn == strand::Worn::wrist ? strand::wrist_sizes() : strand::necklace_sizes();
  if (wearers.empty()) wearers.assign(usual.begin(), usual.end());
  for (strand::Wearer& wearer : wearers)
    wearer.ease = wearer.worn == strand::Worn::length ? Length{} : saved.ease;
  return wearers;
}

double lean_of(const SavedStrand& saved) {
  return saved.lean.value_or(saved.worn == strand::Worn::wrist ? strand::bracelet_lean
                                                               : strand::necklace_lean);
}

}  // namespace evencount::project
