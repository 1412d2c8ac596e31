#include "project/project.hpp"

#include <algorithm>

#include "base/text.hpp"
#include "chart/letters.hpp"
#include "project/json_fields.hpp"
#include "weave/technique.hpp"

namespace evencount::project {
namespace {

template <typename Entries>
auto find_by_id(const Entries& entries, std::string_view id) {
  const auto found = std::find_if(entries.begin(), entries.end(), [&](const auto& e) { return e.id == id; });
  return found == entries.end() ? nullptr : &*found;
}

}  // namespace

const bead::Size* find_bead(const Project& project, std::string_view id) {
  return find_by_id(project.beads, id);
}

const FormEntry* find_form(const Project& project, std::string_view id) {
  return find_by_id(project.forms, id);
}

Result<Band> find_band(const Project& project, std::string_view name) {
  std::vector<std::string> names;
  for (const Band& band : project.bands) {
    if (band.name == name) return band;
    names.push_back(quote(band.name));
  }
  return Problem{ProblemCode::unknown_name, "band", quote(name), json::one_of(names)};
}

std::vector<std::string> letters_of(const Project& project) {
  std::vector<std::string> letters;
  letters.reserve(project.legend.size());
  for (const LegendEntry& entry : project.legend) letters.push_back(entry.letter);
  return letters;
}

bead::Gauge gauge_of(const Project& project, const Band& band) {
  if (band.gauge) return *band.gauge;
  const auto technique = weave::find_technique(band.technique);
  const auto usual = technique ? technique->gauge : &bead::default_gauge;
  // A saved gauge was measured on peyote: it says nothing of a technique that lies otherwise.
  for (const SavedGauge& saved : project.gauges)
    if (usual == &bead::default_gauge && saved.named.bead == band.bead && saved.named.thread == project.thread.id) return saved.named.gauge;
  const bead::Size* size = find_bead(project, band.bead);
  assert(size);
  return usual(*size, project.thread);
}

Result<weave::Plan> plan_of(const Band& band) {
  auto plan = weave::make_plan(band.technique, band.chart, {band.closure, band.begin_at});
  if (!plan) return plan.problem().within("band " + band.name);
  return plan;
}

}  // namespace evencount::project
