#include "project/supply_list.hpp"

#include "project/supply_list_counts.hpp"

namespace evencount::project {
namespace {

/// The legend with its counts.
Result<std::vector<materials::BeadNeed>> bead_needs(const Project& project,
                                                    const std::vector<std::int64_t>& counts) {
  std::vector<materials::BeadNeed> needs;
  for (std::size_t i = 0; i < project.legend.size(); ++i) {
    const LegendEntry& entry = project.legend[i];
    const auto size = size_of(project, entry);
    if (!size) return size.problem();
    materials::BeadNeed need;
    need.letter = entry.letter;
    need.name = entry.name;
    need.size = bead::trade_name(*size);
    need.count = counts[i];
    need.beads_per_gram = size->beads_per_gram;
    if (entry.pack) {
      need.pack_mass = entry.pack->mass;
      need.pack_price = entry.pack->price;
    }
    needs.push_back(std::move(need));
  }
  return needs;
}

}  // namespace

Result<std::vector<BandThread>> band_threads(const Project& project) {
  auto uses = band_uses(project);
  if (!uses) return uses.problem();
  std::vector<BandThread> threads;
  for (std::size_t i = 0; i < uses->size(); ++i)
    threads.push_back({project.bands[i].name, std::move((*uses)[i].thread)});
  return threads;
}

Result<SupplyList> supply_list(const Project& project, int kits, const std::string& size) {
  const auto uses = band_uses(project);
  if (!uses) return uses.problem();
  const auto counts = legend_counts(project, *uses);
  if (!counts) return counts.problem();
  const auto needs = bead_needs(project, *counts);
  if (!needs) return needs.problem();
  auto beads = materials::bead_supplies(*needs, kits, project.allowance);
  if (!beads) return beads.problem();
  const auto forms = form_counts(project);
  if (!forms) return forms.problem();

  SupplyList list;
  list.kits = kits;
  list.beads = std::move(*beads);
  for (const FormCount& form : *forms)
    list.forms.push_back({name_of(project.forms[form.form]), static_cast<double>(form.count * kits), ""});
  list.thread_name = project.thread.name;
  for (std::size_t i = 0; i < uses->size(); ++i)
    list.thread = list.thread + static_cast<double>(kits) * project.bands[i].copies * (*uses)[i].thread.cut;
  const auto others = other_supplies(project, size);
  if (!others) return others.problem();
  for (const OtherSupply& other : *others) list.findings.push_back({other.name, kits * other.count, other.unit});
  list.size = size_strung_for(project, size);
  list.tools = tools_for(project, *counts);
  return list;
}

}  // namespace evencount::project
