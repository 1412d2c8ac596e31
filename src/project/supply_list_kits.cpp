#include "project/supply_list_kits.hpp"

#include <cmath>
#include <functional>
#include <map>

#include "project/supply_list_counts.hpp"

namespace evencount::project {
namespace {

Result<std::vector<KitBag>> bags_of(const Project& project, const std::vector<std::int64_t>& counts) {
  std::vector<KitBag> bags;
  for (std::size_t i = 0; i < project.legend.size(); ++i) {
    const LegendEntry& entry = project.legend[i];
    const auto size = size_of(project, entry);
    if (!size) return size.problem();
    if (counts[i] == 0) continue;
    const auto mass = materials::bag_mass({counts[i], size->beads_per_gram, project.allowance});
    if (!mass) return mass.problem().within("bead " + entry.letter);
    bags.push_back({entry.letter, entry.name, bead::trade_name(*size), entry.finish, entry.colour, counts[i],
                    materials::with_allowance(counts[i], project.allowance), *mass});
  }
  return bags;
}

std::vector<KitThread> threads_of(const Project& project, const std::vector<BandUse>& uses) {
  std::map<std::int64_t, std::int64_t, std::greater<>> count_of_cm;
  constexpr double rounding = 1e-6;  // the error of a sum of lengths in cm
  for (std::size_t i = 0; i < uses.size(); ++i) {
    const weave::ThreadUse& thread = uses[i].thread;
    const auto add = [&](Length length, std::int64_t count) {
      count_of_cm[static_cast<std::int64_t>(std::ceil(length.mm() / 10 - rounding))] +=
          count * project.bands[i].copies;
    };
    for (const Length length : thread.lengths) add(length, 1);
    if (thread.warps > 0) add(thread.warp_length, thread.warps);
  }
  std::vector<KitThread> threads;
  for (const auto& [cm, count] : count_of_cm)
    threads.push_back({centimetres(static_cast<double>(cm)), count});
  return threads;
}

}  // namespace

Result<Kit> kit_of(const Project& project, const std::string& size) {
  const auto uses = band_uses(project);
  if (!uses) return uses.problem();
  const auto counts = legend_counts(project, *uses);
  if (!counts) return counts.problem();
  auto bags = bags_of(project, *counts);
  if (!bags) return bags.problem();
  const auto forms = form_counts(project);
  if (!forms) return forms.problem();
  Kit kit;
  kit.title = project.title;
  kit.bags = std::move(*bags);
  for (const FormCount& form : *forms)
    kit.forms.push_back({name_of(project.forms[form.form]), static_cast<double>(form.count), ""});
  kit.thread_name = project.thread.name;
  kit.threads = threads_of(project, *uses);
  const auto others = other_supplies(project, size);
  if (!others) return others.problem();
  kit.size = size_strung_for(project, size);
  for (const OtherSupply& other : *others)
    kit.findings.push_back({other.name, other.count, other.unit});
  return kit;
}

}  // namespace evencount::project
