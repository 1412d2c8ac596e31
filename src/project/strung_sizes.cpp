#include "project/strung_sizes.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"

namespace evencount::project {

Result<StrungSizes> strung_sizes(const Project& project, const strand::Strung& strung,
                                 std::span<const strand::Wearer> wearers, bool allow_for_chain) {
  StrungSizes all{strung, lean_of(*project.strand), {}};
  strand::FitQuestion question;
  question.tolerance = project.strand->tolerance;
  question.allow_for_chain = allow_for_chain;
  auto fits = strand::fit_sizes(strung, wearers, question);
  if (!fits) return fits.problem();
  for (strand::StrandFit& fit : *fits) {
    auto curve = strand::two_cords(strung, fit.best.counts, all.lean);
    if (!curve) return curve.problem();
    auto cords = strand::cords_to_cut(strung, fit.best.counts, curve->given);
    if (!cords) return cords.problem();
    auto findings = strand::findings_of(strung, fit.best.counts);
    if (!findings) return findings.problem();
    all.sizes.push_back({std::move(fit), std::move(*curve), std::move(*cords), std::move(*findings)});
  }
  return all;
}

bool is_sound(const StrungSizes& sizes) {
  return std::all_of(sizes.sizes.begin(), sizes.sizes.end(),
                     [](const StrungSize& size) { return size.fit.closes && size.findings.empty(); });
}

std::vector<std::int64_t> uses_of(const strand::Strung& strung, const StrungSize& size) {
  std::vector<std::int64_t> use = strand::use_of(strung, size.fit.best.counts);
  for (const strand::OuterExtra& extra : size.curve.extras) use[static_cast<std::size_t>(extra.element)] += extra.count;
  return use;
}

Result<strand::Wearer> wearer_of(const SavedStrand& saved, const std::string& size) {
  const std::vector<strand::Wearer> wearers = wearers_of(saved);
  if (size.empty()) return wearers[wearers.size() / 2];
  std::string names;
  for (const strand::Wearer& wearer : wearers) {
    if (wearer.name == size) return wearer;
    names += (names.empty() ? "one of " : ", ") + wearer.name;
  }
  return Problem{ProblemCode::unknown_name, "size", quote(size), names};
}

Result<std::vector<OtherSupply>> strung_supplies(const Project& project, const std::string& size) {
  std::vector<OtherSupply> supplies;
  if (!project.strand) return supplies;
  const auto strung = strung_of(project);
  if (!strung) return strung.problem();
  const auto wearer = wearer_of(*project.strand, size);
  if (!wearer) return wearer.problem();
  const auto sizes = strung_sizes(project, *strung, std::span(&*wearer, 1));
  if (!sizes) return sizes.problem();
  const StrungSize& one = sizes->sizes.front();
  const std::vector<std::int64_t> uses = uses_of(*strung, one);
  for (std::size_t i = 0; i < uses.size(); ++i) {
    const strand::Element& element = strung->elements[i];
    // Forms are listed with their bands, and a knot is no supply.
    if (uses[i] == 0 || element.carrier || element.kind == strand::ElementKind::knot) continue;
    supplies.push_back({element.name.empty() ? element.id : element.name, static_cast<double>(uses[i]), "", {}});
  }
  Length cord;
  for (const strand::CutCord& cut : one.cords) cord = cord + cut.length.cut;
  if (cord > Length{})
    supplies.push_back({fmt::format("{} cord, {} mm", strand::cord_kind_name(strung->cord.kind), plain_number(strung->cord.diameter.mm())),
                        cord.mm() / 1000, "m", {}});
  return supplies;
}

}  // namespace evencount::project
